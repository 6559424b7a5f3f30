using MakerStudio.Core.Materials;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>Everything the weigh sheet of one batch shows. Masses are milligrams.</summary>
/// <param name="CurrentLineId">The first line in order of addition that is not done; null when all are.</param>
public sealed record WeighSheet(
    Guid BatchId, string Code, BatchState State, string ScentName, int VersionNumber, string ProductName, string ClockStartsAt,
    long TargetMilligrams, long RecordedMilligrams, int? PlannedUnits, string? SizeName, string? ScaleName, long ReadabilityMilligrams,
    decimal TolerancePercent, int ToleranceDivisions, string? Place, decimal? RoomCelsius, int CureMinHours, int CureIdealHours,
    Guid? WeighingById, string? WeighingBy, DateTimeOffset? WeighingSince, DateTimeOffset? LastRecordedAt, DateTimeOffset? ClockStartedAt,
    Guid? CurrentLineId, IReadOnlyList<SheetLine> Lines, IReadOnlyList<SheetDeviation> Deviations)
{
    public SheetLine? Current => Lines.FirstOrDefault(l => l.LineId == CurrentLineId);
}

/// <param name="ToleranceMilligrams">How far the sum may lie from the target.</param>
/// <param name="RecordedMilligrams">The sum of what stands, reversed weighings not counted.</param>
/// <param name="Suggested">Where to weigh from next: first expired first, an open lot before an unopened one.</param>
/// <param name="ShortBy">What the usable lots do not hold of the rest; 0 when they do.</param>
/// <param name="ReservedBefore">Of the usable lots, what batches planned earlier still need.</param>
public sealed record SheetLine(
    Guid LineId, int Position, Guid MaterialId, string MaterialName, MaterialKind Kind, string? Method, long PlannedMilligrams, long TargetMilligrams,
    long ToleranceMilligrams, long RecordedMilligrams, DateTimeOffset? DoneAt, SheetLot? Suggested, IReadOnlyList<SheetLot> Lots,
    long ShortBy, long ReservedBefore, IReadOnlyList<string> ReservedBy, IReadOnlyList<SheetWeighing> Weighings)
{
    public bool IsDone => DoneAt is not null;

    /// <summary>The target of the next reading.</summary>
    public long RemainingMilligrams => Math.Max(0, TargetMilligrams - RecordedMilligrams);

    /// <summary>More is wanted after an accepted correction of another line.</summary>
    public bool IsTopUp => !IsDone && RecordedMilligrams > 0 && TargetMilligrams > PlannedMilligrams;
}

/// <param name="WhyNot">Why it may not be weighed from, e.g. "in quarantine"; null when it may.</param>
public sealed record SheetLot(
    Guid LotId, string Code, LotStatus Status, long OnHandMilligrams, DateOnly? ExpiresOn, ExpiryReason? ExpiryReason, bool IsOpen,
    string? Shelf, long? TareMilligrams, string? WhyNot);

/// <param name="LotCode">Null when the receipt is still to follow.</param>
public sealed record SheetWeighing(
    Guid WeighingId, string? LotCode, long NetMilligrams, long? TareMilligrams, DateTimeOffset At, string By, string Initials,
    DateTimeOffset? ReversedAt, string? ReversedReason);

public sealed record SheetDeviation(Guid? LineId, DeviationChoice Choice, string What, decimal Factor, string? Reason, string By, DateTimeOffset At);
