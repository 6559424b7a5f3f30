using MakerStudio.Core.Finished;

namespace MakerStudio.Services.Inventory;

/// <summary>What is sold: a formula in a size. Batches of one product may be sold for one another.</summary>
public sealed record Product(Guid FormulaId, string ScentName, string ProductKind, string? SizeName)
{
    /// <summary>"Fig, 100 mL".</summary>
    public string Name => SizeName is null ? ScentName : $"{ScentName}, {SizeName}";
}

/// <summary>Units of one batch at one place in one status, above zero.</summary>
/// <param name="UnitCost">Of one saleable unit, not rounded; null when none was saleable.</param>
public sealed record GoodsRow(
    Guid BatchId, string Code, Product Product, DateOnly? BestBefore, bool IsOnHold, DateTimeOffset FilledAt,
    Guid PlaceId, string PlaceName, UnitStatus Status, int Count, decimal? UnitCost)
{
    public BatchOnShelf OnShelf() => new(BatchId, Code, Count, BestBefore, DateOnly.FromDateTime(FilledAt.UtcDateTime), IsOnHold);
}

/// <summary>One act on units as its history tells it.</summary>
/// <param name="Units">Units it moved.</param>
public sealed record UnitEntryRow(
    Guid EntryId, IReadOnlyList<UnitMoveKind> Kinds, DateTimeOffset At, string Initials, string Batches, int Units, string Place, string? Reason, string? SaleCode,
    bool IsReversal, bool IsTakenBack)
{
    /// <summary>It can still be reversed by itself; what filling and kits did belongs to them.</summary>
    public bool MayTakeBack => !IsTakenBack && !IsReversal && !Kinds.Any(FinishedGoods.BelongsElsewhere);
}

/// <summary>Units of a batch that are out of the door and who has them.</summary>
/// <param name="Who">A customer, or how it was sold when nobody told a name.</param>
public sealed record HolderRow(string Who, string? SaleCode, string Channel, DateOnly SoldOn, int Units, bool IsNamed);
