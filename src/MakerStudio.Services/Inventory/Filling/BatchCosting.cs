using MakerStudio.Core.Costing;
using MakerStudio.Core.Curing;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What a batch took, to be opened: each lot's share, and why it cost something else than planned.</summary>
public sealed class BatchCosting(StudioStore store)
{
    /// <summary>What stands for the lot of a receipt to follow until it is matched.</summary>
    public const string ToFollow = "receipt to follow";

    /// <summary>Null when there is no such batch, or nothing was weighed into it.</summary>
    public async Task<CostToOpen?> FindAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.AsNoTracking().SingleOrDefaultAsync(b => b.Code == code, cancel);
        if (batch is null || await MaterialsAsync(db, batch.Id, cancel) is not { Count: > 0 } materials)
        {
            return null;
        }

        var fill = await db.Fills.AsNoTracking().Include(f => f.Batch).SingleOrDefaultAsync(f => f.BatchId == batch.Id, cancel);
        var lost = Mass.FromMilligrams(await Fills.LostAsync(db, batch.Id, cancel)).Grams;
        if (fill is null)
        {
            var made = await db.Movements.Where(m => m.BatchId == batch.Id && m.Kind == MovementKind.Made).SumAsync(m => (long?)m.Change, cancel);
            return new CostToOpen(
                new BatchInputs(materials, [], 0m, 0m, batch.ConversionCost ?? 0m, 0m, 0, 0, 0, made is { } kept ? Mass.FromMilligrams(kept).Grams : null, 0m, lost), null);
        }

        var packaging = await db.Movements.Where(m => m.FillId == fill.Id).OrderBy(m => m.Id)
            .Select(m => new LotUse(m.Lot!.MaterialId, m.Lot.Material!.Name, m.Lot.Code, -m.Change, m.UnitCost)).ToListAsync(cancel);
        var inputs = new BatchInputs(
            materials, packaging, fill.LabourMinutes, fill.LabourRatePerHour, fill.OverheadPerBatch, fill.OverheadPerUnit, fill.Filled, fill.Rejected, fill.Retained,
            Mass.FromMilligrams(fill.ToFillingMilligrams).Grams, Mass.FromMilligrams(fill.FillMilligrams * fill.Filled).Grams, lost);
        return new CostToOpen(inputs, batch.PlannedUnits is > 0 and var units ? await PlanAsync(db, fill, units, inputs, cancel) : null);
    }

    private static async Task<List<LotUse>> MaterialsAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        var rows = await (
            from weighing in db.Weighings
            join line in db.BatchLines on weighing.BatchLineId equals line.Id
            where weighing.BatchId == batchId && weighing.ReversedAt == null
            orderby line.Position, weighing.At
            select new { line.MaterialId, line.MaterialName, Lot = weighing.Lot == null ? null : weighing.Lot.Code, weighing.NetMilligrams, weighing.UnitCost }).ToListAsync(cancel);
        return [.. rows.Select(w => new LotUse(w.MaterialId, w.MaterialName, w.Lot ?? ToFollow, Mass.FromMilligrams(w.NetMilligrams).Grams, w.UnitCost))];
    }

    /// <summary>
    /// As planned: the formula's masses and the size's packaging at the newest purchase prices of that day, the rates of
    /// the filling, and the minutes of the filling before it; where nothing was known then, as it came.
    /// </summary>
    private static async Task<Core.Costing.PlannedBatch> PlanAsync(StudioDb db, Fill fill, int units, BatchInputs actual, CancellationToken cancel)
    {
        var batch = fill.Batch!;
        var lines = await db.BatchLines.Where(l => l.BatchId == batch.Id).OrderBy(l => l.Position).ToListAsync(cancel);
        var parts = await db.BatchParts.Where(p => p.BatchId == batch.Id).Select(p => new { p.MaterialId, p.Material!.Name, p.CountPerUnit }).ToListAsync(cancel);
        var day = StudioTime.Today(batch.PlannedAt, await StudioDay.ZoneAsync(db, cancel));
        var ids = lines.Select(l => l.MaterialId).Concat(parts.Select(p => p.MaterialId)).ToArray();
        var prices = await db.Lots.Where(l => ids.Contains(l.MaterialId) && l.ReceivedOn <= day).GroupBy(l => l.MaterialId)
            .Select(g => new { g.Key, g.OrderByDescending(l => l.ReceivedOn).ThenByDescending(l => l.Id).First().UnitCost }).ToDictionaryAsync(p => p.Key, p => p.UnitCost, cancel);
        var minutes = await db.Fills.Where(f => f.At < fill.At && f.Batch!.SizeName == batch.SizeName && f.Batch.FormulaVersion!.FormulaId ==
                db.FormulaVersions.Where(v => v.Id == batch.FormulaVersionId).Select(v => v.FormulaId).First())
            .OrderByDescending(f => f.At).Select(f => (decimal?)f.LabourMinutes).FirstOrDefaultAsync(cancel);
        decimal PriceOf(Guid material) => prices.TryGetValue(material, out var known) ? known
            : actual.Materials.Concat(actual.Packaging).Where(u => u.MaterialId == material).Select(u => u.UnitCost).DefaultIfEmpty(0m).First();
        return new Core.Costing.PlannedBatch(
            [
                .. lines.Select(l => new PlannedLine(new(CostKind.Material, l.MaterialId), l.MaterialName, Mass.FromMilligrams(l.PlannedMilligrams).Grams, PriceOf(l.MaterialId))),
                .. parts.Select(p => new PlannedLine(new(CostKind.Packaging, p.MaterialId), p.Name, p.CountPerUnit, PriceOf(p.MaterialId), true)),
                new(new(CostKind.Labour), "Labour, minutes", minutes ?? fill.LabourMinutes, fill.LabourRatePerHour / 60m),
                new(new(CostKind.OverheadOfBatch), "Overhead of the batch", 1m, fill.OverheadPerBatch),
                new(new(CostKind.OverheadOfUnits), "Overhead of units filled", 1m, fill.OverheadPerUnit, true),
            ],
            units, units);
    }
}

/// <summary>Plain, so that a page can carry it over; the sums are Core's.</summary>
/// <param name="Plan">Null where no number of units was planned.</param>
public sealed record CostToOpen(BatchInputs Inputs, Core.Costing.PlannedBatch? Plan)
{
    /// <summary>Part of it was used ahead of its receipt, at an estimate.</summary>
    public bool IsEstimate => Inputs.Materials.Any(m => m.Lot == BatchCosting.ToFollow);

    public BatchRollUp RollUp() => BatchRollUp.Of(Inputs);

    public BatchVariance? Variance() => Plan is null ? null : BatchVariance.Of(Plan, RollUp());
}
