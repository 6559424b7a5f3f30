namespace MakerStudio.Core.Sources;

/// <summary>How a stated value came to us.</summary>
public enum SourceStatus
{
    /// <summary>Read in a copy or mirror of the named text.</summary>
    Read,

    /// <summary>Read in somebody else's account of the named text.</summary>
    Secondary,

    /// <summary>Written down from memory of the named text and not read again.</summary>
    Memory,

    /// <summary>Worked out from the wording of a rule.</summary>
    Derived,

    /// <summary>What the trade usually does; no source stands behind it.</summary>
    CommonPractice,
}

/// <summary>Where a value or a rule is from, and how well we know it.</summary>
/// <param name="Text">The text and the place in it, as in "CLP Annex I, Table 3.2.3".</param>
public sealed record Citation(string Text, SourceStatus Status)
{
    /// <summary>What a screen adds to a value; null when the named text itself was read.</summary>
    public string? Caution => Status switch
    {
        SourceStatus.Read => null,
        SourceStatus.Secondary => "limit read in a secondary account: check before relying on it",
        SourceStatus.Memory => "limit from memory of the text: check before relying on it",
        SourceStatus.Derived => "worked out from the wording of the rule",
        _ => "common practice, no source",
    };
}
