using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;
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

        var weighed = await db.Weighings.Where(w => w.BatchId == batch.Id && w.ReversedAt == null).SumAsync(w => w.NetMilligrams, cancel);
        var parts = await PartsAsync(db, batch, cancel);
        var obstacles = batch.State == BatchState.Resting
            ? await CureShelf.ObstaclesAsync(db, batch, store.Clock.GetUtcNow(), cancel) : [];
        var material = await MadeMaterialAsync(db, batch, cancel);
        return new FillForm(
            batch.Id, batch.Code, batch.ScentName, batch.VersionNumber, batch.ProductKind, batch.State, obstacles, weighed, batch.FillMilligrams,
            batch.NominalMillilitres, batch.NominalMilligrams, batch.SizeName, batch.PlannedUnits, batch.DensityUsed, parts, material?.Name);
    }

    private static async Task<List<FillPart>> PartsAsync(StudioDb db, Batch batch, CancellationToken cancel)
    {
        var ids = batch.Parts.Select(p => p.MaterialId).ToArray();
        var onHand = await db.Lots.Where(l => ids.Contains(l.MaterialId) && l.Status == Core.Stock.LotStatus.Released)
            .GroupBy(l => l.MaterialId).Select(g => new { g.Key, Sum = g.Sum(l => l.Balance!.OnHand) }).ToDictionaryAsync(g => g.Key, g => g.Sum, cancel);
        return [.. batch.Parts.Select(p => new FillPart(p.MaterialId, p.Material!.Name, p.CountPerUnit, onHand.GetValueOrDefault(p.MaterialId)))];
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
public sealed record FillForm(
    Guid BatchId, string Code, string ScentName, int VersionNumber, string ProductKind, BatchState State, IReadOnlyList<ReadyObstacle> Obstacles,
    long WeighedMilligrams, long? FillMilligrams, decimal? NominalMillilitres, long? NominalMilligrams, string? SizeName, int? PlannedUnits,
    decimal? DensityUsed, IReadOnlyList<FillPart> Parts, string? MakesMaterial);

/// <param name="OnHand">Released pieces on the shelf.</param>
public sealed record FillPart(Guid MaterialId, string Name, int CountPerUnit, long OnHand);
