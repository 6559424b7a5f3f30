using MakerStudio.Core.Costing;
using MakerStudio.Core.Curing;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>From a ready batch to counted bottles and their cost: one file a use case in this folder.</summary>
public sealed partial class Fills(StudioStore store)
{
    /// <summary>What the filling form starts from, or null when there is no such batch.</summary>
    public async Task<FillForm?> FormAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.Include(b => b.Parts).ThenInclude(p => p.Material).SingleOrDefaultAsync(b => b.Code == code, cancel);
        if (batch is null)
        {
            return null;
        }

        var studio = await db.Studio.SingleAsync(cancel);
        var now = store.Clock.GetUtcNow();
        var uses = await MaterialUsesAsync(db, batch.Id, cancel);
        var obstacles = await ObstaclesAsync(db, batch, now, cancel);
        var material = await MadeMaterialAsync(db, batch, cancel);
        return new FillForm(
            batch.Id, batch.Code, batch.ScentName, batch.VersionNumber, batch.ProductKind, batch.State, obstacles,
            Mass.FromGrams(uses.Sum(u => u.Quantity)).Milligrams, batch.FillMilligrams, batch.NominalMillilitres, batch.NominalMilligrams,
            batch.SizeName, batch.PlannedUnits, batch.DensityUsed, await PartsAsync(db, batch, cancel), material?.Name,
            new FillCosts(Kept(uses, await LostAsync(db, batch.Id, cancel), null), studio.LabourRatePerHour, studio.OverheadPerBatch, studio.OverheadPerUnit),
            StudioTime.Today(now, TimeZoneInfo.FindSystemTimeZoneById(studio.TimeZone)), await DraftAsync(db, batch.Id, cancel));
    }

    /// <summary>What a resting batch still lacks; in any other state the state itself says it.</summary>
    private static async Task<IReadOnlyList<ReadyObstacle>> ObstaclesAsync(StudioDb db, Batch batch, DateTimeOffset now, CancellationToken cancel) =>
        batch.State == BatchState.Resting ? await CureShelf.ObstaclesAsync(db, batch, now, cancel) : [];

    /// <summary>Null when the batch may leave the shelf: it is ready, or rests with nothing lacking.</summary>
    private static async Task<NotReady?> WhyNotReadyAsync(Command command, Batch batch, CancellationToken cancel)
    {
        var obstacles = await ObstaclesAsync(command.Db, batch, command.Now, cancel);
        return batch.State == BatchState.Ready || (batch.State == BatchState.Resting && obstacles.Count == 0)
            ? null
            : new NotReady(batch.Code, obstacles, batch.State);
    }

    /// <summary>A check passed before the minimum makes nobody sign when the time comes: whoever takes the batch off the shelf does.</summary>
    private static void SignReady(Command command, Batch batch) =>
        (batch.ReadyAt, batch.ReadyById) = (batch.ReadyAt ?? command.Now, batch.ReadyById ?? command.PersonId);

    private static async Task<List<FillPart>> PartsAsync(StudioDb db, Batch batch, CancellationToken cancel)
    {
        var lots = await Shelf.LotsOfAsync(db, batch.Parts.Select(p => p.MaterialId), cancel);
        var byMaterial = lots.ToLookup(l => l.MaterialId, l => PricedLot.Of(l.Lot, l.UnitCost));
        return [.. batch.Parts.Select(p => new FillPart(p.MaterialId, p.Material!.Name, p.CountPerUnit, [.. byMaterial[p.MaterialId]])).OrderBy(p => p.Name, StringComparer.Ordinal)];
    }

    private static Task<Material?> MadeMaterialAsync(StudioDb db, Batch batch, CancellationToken cancel) => (
        from version in db.FormulaVersions
        join formula in db.Formulas on version.FormulaId equals formula.Id
        join material in db.Materials on formula.MakesMaterialId equals material.Id
        where version.Id == batch.FormulaVersionId
        select material).SingleOrDefaultAsync(cancel);

    /// <summary>What went in, lot by lot, at each lot's own landed cost.</summary>
    internal static async Task<List<CostedUse>> MaterialUsesAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        var rows = await (
            from weighing in db.Weighings
            join line in db.BatchLines on weighing.BatchLineId equals line.Id
            where weighing.BatchId == batchId && weighing.ReversedAt == null
            orderby line.Position, weighing.At
            select new { line.MaterialName, weighing.NetMilligrams, weighing.UnitCost }).ToListAsync(cancel);
        return [.. rows.Select(r => new CostedUse(r.MaterialName, Mass.FromMilligrams(r.NetMilligrams).Grams, r.UnitCost))];
    }

    /// <summary>What was used up of packaging for this batch, at each lot's own landed cost.</summary>
    internal static async Task<List<CostedUse>> PackagingUsesAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        var rows = await (
            from movement in db.Movements
            join lot in db.Lots on movement.LotId equals lot.Id
            join material in db.Materials on lot.MaterialId equals material.Id
            where movement.BatchId == batchId && movement.FillId != null
            orderby movement.Id
            select new { material.Name, movement.Change, movement.UnitCost }).ToListAsync(cancel);
        return [.. rows.Select(r => new CostedUse(r.Name, -r.Change, r.UnitCost))];
    }
}

/// <param name="WeighedMilligrams">Mass that went into the vessel.</param>
/// <param name="FillMilligrams">Set point of one fill, when planned for bottles.</param>
/// <param name="MakesMaterial">Name of the material a pre-blend becomes; null for what is filled into units.</param>
/// <param name="Today">In the studio's time zone.</param>
/// <param name="Draft">What was typed before and not recorded.</param>
public sealed record FillForm(
    Guid BatchId, string Code, string ScentName, int VersionNumber, string ProductKind, BatchState State, IReadOnlyList<ReadyObstacle> Obstacles,
    long WeighedMilligrams, long? FillMilligrams, decimal? NominalMillilitres, long? NominalMilligrams, string? SizeName, int? PlannedUnits,
    decimal? DensityUsed, IReadOnlyList<FillPart> Parts, string? MakesMaterial, FillCosts Costs, DateOnly Today, FillDraft? Draft)
{
    public bool CanFill => State == BatchState.Ready || (State == BatchState.Resting && Obstacles.Count == 0);

    /// <summary>Content on the label as a mass; null when neither mass nor density is known.</summary>
    public Mass? NominalMass => FillChecks.NominalMass(NominalMilligrams, NominalMillilitres, DensityUsed);

    /// <summary>What is filled over nominal; null when either is not known.</summary>
    public Mass? Overfill => FillMilligrams is { } fill && NominalMass is { } nominal ? Mass.FromMilligrams(fill) - nominal : null;
}

/// <summary>What the cost of this filling is made from.</summary>
/// <param name="Materials">Grams that went in, at each lot's own landed cost.</param>
public sealed record FillCosts(IReadOnlyList<CostedUse> Materials, decimal LabourRatePerHour, decimal OverheadPerBatch, decimal OverheadPerUnit)
{
    /// <summary>Of one gram weighed in; 0 when nothing was.</summary>
    public decimal PerGram => Materials.Sum(m => m.Quantity) is > 0 and var grams ? Materials.Sum(m => m.Cost) / grams : 0m;
}

/// <param name="Lots">Every lot with something on hand, released or not.</param>
public sealed record FillPart(Guid MaterialId, string Name, int CountPerUnit, IReadOnlyList<PricedLot> Lots)
{
    /// <summary>Pieces that may be used today.</summary>
    public long Usable(DateOnly today) => Lots.Where(l => LotChoice.WhyNot(l.OnShelf(), today) is null).Sum(l => l.Pieces);
}

/// <summary>A lot of packaging with its price; plain, so that a page can carry it over from its first drawing.</summary>
public sealed record PricedLot(
    Guid LotId, string Code, LotStatus Status, long Pieces, DateOnly? EffectiveExpiry, bool IsOpen, DateOnly ReceivedOn, decimal UnitCost)
{
    internal static PricedLot Of(LotOnShelf lot, decimal unitCost) =>
        new(lot.LotId, lot.Code, lot.Status, lot.OnHand.Units, lot.EffectiveExpiry, lot.IsOpen, lot.ReceivedOn, unitCost);

    internal LotOnShelf OnShelf() => new(LotId, Code, Status, new StockAmount(Pieces, StockUnit.Each), EffectiveExpiry, IsOpen, ReceivedOn);
}
