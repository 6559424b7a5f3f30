using MudBlazor;

namespace MakerStudio.Web.Shell.Parts;

/// <summary>
/// A question asked before an act that reaches others or that one line cannot reverse.
/// </summary>
/// <param name="Title">The act: "Put P-2 on hold?"</param>
/// <param name="Body">Counts what is touched and says what can be lifted.</param>
/// <param name="Act">Verb and object, on the button: "Hold P-2 and 49 units".</param>
/// <param name="Quiet">The choice that changes nothing; focus starts there.</param>
/// <param name="Reason">Label of the reason field, or null when the record needs none.</param>
public sealed record QuestionText(
    string Title, string Body, string Act, string Quiet = "Leave as it is", string? Reason = null,
    bool Danger = false, string? Glyph = null);

/// <summary>What was chosen, with the reason where one was asked for.</summary>
public sealed record Answer(bool Chosen, string? Reason)
{
    public static Answer Left { get; } = new(false, null);
}

public static class Asking
{
    private static readonly DialogOptions Options = new() { BackdropClick = false, CloseOnEscapeKey = true, NoHeader = true };

    /// <summary>Shows the question and waits; leaving by Escape is the quiet choice.</summary>
    public static async Task<Answer> AskAsync(this IDialogService dialogs, QuestionText question)
    {
        var parameters = new DialogParameters<Question> { { q => q.Text, question } };
        var shown = await dialogs.ShowAsync<Question>(question.Title, parameters, Options);
        var result = await shown.Result;
        return result is { Canceled: false, Data: Answer answer } ? answer : Answer.Left;
    }
}
