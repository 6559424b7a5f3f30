using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels;

/// <summary>A label whose element is known, to read beside the rule; a test works it through.</summary>
/// <param name="Says">The case in a sentence.</param>
/// <param name="Gives">What the element then says; empty where it is not there.</param>
public sealed record LabelExample(string Says, LabelFacts Facts, ElementState State, string Gives);

/// <summary>
/// One rule of what a label says, in a file of its own and one line in <see cref="LabelRules"/>. Pure: the same facts
/// give the same words in every culture.
/// </summary>
public abstract class LabelRule
{
    /// <summary>Lower-case words with hyphens; never changed once released.</summary>
    public abstract string Key { get; }

    public abstract string Title { get; }

    /// <summary>What asks for the element.</summary>
    public abstract IReadOnlyList<Citation> Sources { get; }

    public abstract LabelExample Example { get; }

    public abstract LabelElement Judge(LabelFacts facts);

    protected LabelElement There(string from, IReadOnlyList<LabelText> texts, string? note = null) =>
        new(Key, Title, from, ElementState.There, texts, note);

    protected LabelElement There(string from, string text, string? note = null) => There(from, [LabelText.Of(text)], note);

    protected LabelElement Missing(string from, string toDo) => new(Key, Title, from, ElementState.Missing, [], toDo);

    protected LabelElement NotNeeded(string from, string why) => new(Key, Title, from, ElementState.NotNeeded, [], why);
}
