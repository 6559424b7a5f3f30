namespace MakerStudio.Core.Stock;

/// <summary>
/// Whether a lot may be used. "Used up" is no status: it is a lot with nothing on hand.
/// </summary>
public enum LotStatus
{
    /// <summary>Received, papers or checks still open.</summary>
    Quarantine,

    /// <summary>The only status from which stock may be weighed.</summary>
    Released,

    OnHold,

    /// <summary>Final; no override lets a rejected lot be used.</summary>
    Rejected,
}
