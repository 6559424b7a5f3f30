namespace MakerStudio.Core.Workings;

/// <summary>Where a value or a rule is from, and how well we know it.</summary>
/// <param name="Text">The text and the place in it, as in "CLP Annex I, Table 3.2.3".</param>
public sealed record Citation(string Text, DataStatus Status)
{
    /// <summary>What a screen adds to a value; null when the named text itself was read.</summary>
    public string? Caution => Status switch
    {
        DataStatus.Read => null,
        DataStatus.Secondary => "limit read in a secondary account: check before relying on it",
        DataStatus.Memory => "limit from memory of the text: check before relying on it",
        DataStatus.Derived => "worked out from the wording of the rule",
        _ => "common practice, no source",
    };
}
