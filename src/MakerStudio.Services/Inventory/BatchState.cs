namespace MakerStudio.Services.Inventory;

/// <summary>
/// Stored state of a batch. "Due for check" is not stored: a resting batch becomes due when its minimum has passed.
/// </summary>
public enum BatchState { Planned, Weighing, Resting, Ready, Filled, Closed, Discarded }

public static class BatchStates
{
    /// <summary>The state as a word on its own: "Being weighed".</summary>
    public static string Name(BatchState state) => Say(state) is var said ? char.ToUpperInvariant(said[0]) + said[1..] : "";

    /// <summary>The state as it stands in a sentence: "RS-2 is being weighed".</summary>
    public static string Say(BatchState state) => state switch
    {
        BatchState.Planned => "planned",
        BatchState.Weighing => "being weighed",
        BatchState.Resting => "resting",
        BatchState.Ready => "ready",
        BatchState.Filled => "filled",
        BatchState.Closed => "closed",
        BatchState.Discarded => "discarded",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };
}

public enum CheckVerdict { Passed, RestLonger, Hold }

public enum Clarity { Clear, Haze, Sediment, NotApplicable }

public enum DeviationChoice { Accepted, Corrected, ClockKept }
