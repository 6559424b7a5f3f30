namespace MakerStudio.Core.Stock;

/// <summary>What a movement in the stock ledger is.</summary>
public enum MovementKind
{
    Receipt,

    /// <summary>What was on the shelf already when the studio began to keep this ledger.</summary>
    Opening,

    /// <summary>Weighed into a batch.</summary>
    Use,

    /// <summary>Bottles, sprayers, labels used at filling.</summary>
    Packaging,
    Adjustment,
    Return,

    /// <summary>Put on the shelf by a batch of our own, e.g. a pre-blend.</summary>
    Made,

    /// <summary>Undoes an earlier movement and names it.</summary>
    Reversal,
}

/// <summary>Why stock was adjusted. Evaporation has its own reason so that shrinkage stays visible.</summary>
public enum AdjustmentReason
{
    Count,
    Spill,
    Evaporation,
    Breakage,
    Sample,
    Tester,
    Gift,
    TheftOrUnknown,
    CorrectionOfEntry,
    Disposal,
}
