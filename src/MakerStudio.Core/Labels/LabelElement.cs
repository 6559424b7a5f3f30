using MakerStudio.Core.Hazards;

namespace MakerStudio.Core.Labels;

public enum ElementState
{
    /// <summary>It stands on the label.</summary>
    There,

    /// <summary>It should, and does not: the note says what to do.</summary>
    Missing,

    /// <summary>This label does without: the note says why.</summary>
    NotNeeded,
}

/// <param name="IsBold">Codes, signal words, names of things.</param>
/// <param name="IsCode">The code of a statement with the space behind it: no law asks for it, so a full label may go without.</param>
public sealed record LabelRun(string Text, bool IsBold = false, bool IsCode = false);

/// <summary>A line or paragraph of the label.</summary>
public sealed record LabelText(IReadOnlyList<LabelRun> Runs)
{
    public static LabelText Of(string text, bool isBold = false) => new([new(text, isBold)]);

    public LabelText WithoutCodes() => new([.. Runs.Where(run => !run.IsCode)]);

    public override string ToString() => string.Concat(Runs.Select(run => run.Text));
}

/// <summary>One element of a label: what it says, where from, and whether it is there.</summary>
/// <param name="Key">Of its rule.</param>
/// <param name="From">Where the words came from, in a few words.</param>
/// <param name="Texts">Empty unless it is there.</param>
/// <param name="Note">What to do, or why it is not needed; for what is there, what a reader should know, or null.</param>
public sealed record LabelElement(
    string Key, string Title, string From, ElementState State, IReadOnlyList<LabelText> Texts, string? Note = null)
{
    /// <summary>Drawn beside the words; empty for all elements but one.</summary>
    public IReadOnlyList<Pictogram> Pictograms { get; init; } = [];

    /// <summary>The safety alert triangle stands before the words.</summary>
    public bool HasSafetyAlert { get; init; }

    public string Says => string.Join(' ', Texts.Select(text => text.ToString()));
}
