namespace MakerStudio.Services.Inventory;

/// <summary>
/// Stored state of a batch. "Due for check" is not stored: a resting batch becomes due when its minimum has passed.
/// </summary>
public enum BatchState { Planned, Weighing, Resting, Ready, Filled, Closed, Discarded }

public enum CheckVerdict { Passed, RestLonger, Hold }

public enum Clarity { Clear, Haze, Sediment, NotApplicable }

public enum DeviationChoice { Accepted, Corrected, ClockKept }

public enum UnitStatus { Saleable, Rejected, Retained }
