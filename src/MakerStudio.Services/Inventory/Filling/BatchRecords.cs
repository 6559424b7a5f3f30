using MakerStudio.Core.Finished;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>The finished room: every made batch, and the record that proves what was made and what it cost.</summary>
public sealed partial class BatchRecords(StudioStore store)
{
    /// <summary>Batches that were filled or taken into stock, newest first, with what is left of them.</summary>
    /// <param name="after">The last row of the page before; null for the first page.</param>
    /// <param name="take">1 to 200 rows.</param>
    public async Task<IReadOnlyList<FinishedRow>> FinishedAsync(FinishedRow? after = null, int take = 50, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batches = db.Batches.Where(b => b.FilledAt != null);
        if (after is not null)
        {
            batches = batches.Where(b => EF.Functions.LessThan(
                ValueTuple.Create(b.FilledAt!.Value, b.Code), ValueTuple.Create(after.FilledAt, after.Code)));
        }

        return await (
            from batch in batches
            join filling in db.Fills on batch.Id equals filling.BatchId into fillings
            from fill in fillings.DefaultIfEmpty()
            orderby batch.FilledAt descending, batch.Code descending
            select new FinishedRow(
                batch.Code, batch.ScentName, batch.VersionNumber, batch.ProductKind, batch.SizeName, batch.State, batch.FilledAt!.Value,
                fill == null ? 0 : fill.Filled,
                db.UnitMovements.Where(m => m.BatchId == batch.Id && m.Status == UnitStatus.Saleable).Sum(m => m.Change),
                fill == null ? 0 : fill.Retained, fill == null ? 0 : fill.Rejected, fill == null ? null : fill.TotalCost,
                fill != null && fill.Filled - fill.Rejected - fill.Retained > 0 ? fill.TotalCost / (fill.Filled - fill.Rejected - fill.Retained) : null,
                db.Lots.Where(l => l.MadeByBatchId == batch.Id).Select(l => l.Code).FirstOrDefault()))
            .Take(Math.Clamp(take, 1, 200)).ToListAsync(cancel);
    }

    /// <summary>All of them, newest first, read page by page.</summary>
    public async IAsyncEnumerable<FinishedRow> AllFinishedAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel = default)
    {
        const int page = 200;
        for (var rows = await FinishedAsync(null, page, cancel); rows.Count > 0; rows = await FinishedAsync(rows[^1], page, cancel))
        {
            foreach (var row in rows)
            {
                yield return row;
            }
        }
    }

    /// <summary>Everything known of one batch, or null when there is none of that code.</summary>
    public async Task<BatchRecord?> FindAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.SingleOrDefaultAsync(b => b.Code == code, cancel);
        if (batch is null)
        {
            return null;
        }

        var fill = await db.Fills.SingleOrDefaultAsync(f => f.BatchId == batch.Id, cancel);
        var scale = await db.Scales.Where(s => s.Id == batch.ScaleId).Select(s => s.Name).SingleOrDefaultAsync(cancel);
        var material = await db.Lots.Where(l => l.MadeByBatchId == batch.Id)
            .Select(l => new MadeLot(l.Code, l.Material!.Name, l.UnitCost, db.Movements.Where(m => m.LotId == l.Id && m.BatchId == batch.Id && m.Kind == MovementKind.Made).Sum(m => m.Change)))
            .SingleOrDefaultAsync(cancel);
        var formula = await db.FormulaVersions.Where(v => v.Id == batch.FormulaVersionId).Select(v => v.FormulaId).SingleAsync(cancel);
        return new BatchRecord(
            batch.Id, formula, batch.Code, batch.ScentName, batch.VersionNumber, batch.ProductKind, batch.SizeName, batch.State, batch.PlannedAt,
            batch.ClockStartedAt, batch.ReadyAt, batch.EarlyReason, batch.DiscardReason, batch.TargetMilligrams, batch.ReadabilityMilligrams, batch.Place,
            await WeighedAsync(db, batch, cancel), fill is null ? null : FillOf(fill), await PackagingAsync(db, batch, cancel),
            await HappenedAsync(db, batch, cancel), material, scale,
            await db.Deviations.CountAsync(d => d.BatchId == batch.Id, cancel), await UnitsAsync(db, batch.Id, cancel));
    }

    private static async Task<UnitsLeft> UnitsAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        var left = await db.UnitMovements.Where(m => m.BatchId == batchId).GroupBy(m => m.Status)
            .Select(g => new { g.Key, Sum = g.Sum(m => m.Change) }).ToDictionaryAsync(g => g.Key, g => g.Sum, cancel);
        return new UnitsLeft(left.GetValueOrDefault(UnitStatus.Saleable), left.GetValueOrDefault(UnitStatus.Rejected), left.GetValueOrDefault(UnitStatus.Retained));
    }

    private static Task<List<WeighedRow>> WeighedAsync(StudioDb db, Batch batch, CancellationToken cancel) => (
        from weighing in db.Weighings
        join line in db.BatchLines on weighing.BatchLineId equals line.Id
        join person in db.Users on weighing.PersonId equals person.Id
        where weighing.BatchId == batch.Id && weighing.ReversedAt == null
        orderby line.Position, weighing.At
        select new WeighedRow(
            line.Position, line.MaterialName, weighing.Lot == null ? null : weighing.Lot.Code, line.PlannedMilligrams, line.TargetMilligrams,
            weighing.NetMilligrams, weighing.UnitCost, weighing.At, person.Initials, line.Material!.Kind)).ToListAsync(cancel);

    private static Task<List<PackagingRow>> PackagingAsync(StudioDb db, Batch batch, CancellationToken cancel) => (
        from movement in db.Movements
        join lot in db.Lots on movement.LotId equals lot.Id
        join material in db.Materials on lot.MaterialId equals material.Id
        where movement.BatchId == batch.Id && movement.FillId != null
        orderby movement.Id
        select new PackagingRow(material.Name, lot.Code, -movement.Change, movement.UnitCost)).ToListAsync(cancel);

    /// <summary>Acts, checks and deviations in the order they happened.</summary>
    private static async Task<List<HappenedRow>> HappenedAsync(StudioDb db, Batch batch, CancellationToken cancel)
    {
        var acts = await (
            from act in db.Acts
            join person in db.Users on act.PersonId equals person.Id
            where act.Subject == "batch" && act.SubjectId == batch.Id
            select new HappenedRow(act.At, act.What, null, person.Initials)).ToListAsync(cancel);
        var checks = await (
            from check in db.CureChecks
            join person in db.Users on check.PersonId equals person.Id
            where check.BatchId == batch.Id
            select new { check.At, check.Character, check.Note, person.Initials }).ToListAsync(cancel);
        var deviations = await (
            from deviation in db.Deviations
            join person in db.Users on deviation.PersonId equals person.Id
            where deviation.BatchId == batch.Id
            select new HappenedRow(deviation.At, deviation.What, deviation.Reason, person.Initials)).ToListAsync(cancel);
        var notes = checks.ToLookup(c => c.At, c => string.Join("; ", new[] { c.Character, c.Note }.Where(t => !string.IsNullOrWhiteSpace(t))));
        return
        [
            .. acts.Select(a => notes[a.At].FirstOrDefault() is { Length: > 0 } note && a.What.StartsWith("Checked", StringComparison.Ordinal) ? a with { Detail = note } : a)
                .Concat(deviations).OrderBy(h => h.At),
        ];
    }

    private static FilledRow FillOf(Fill fill) => new(
        fill.At, fill.ToFillingMilligrams, fill.FillMilligrams, fill.Filled, fill.Rejected, fill.Retained, fill.CheckWeights, fill.LabourMinutes,
        fill.LabourRatePerHour, fill.OverheadPerBatch, fill.OverheadPerUnit, fill.MaterialsCost, fill.PackagingCost, fill.LabourCost, fill.OverheadCost, fill.TotalCost, fill.Note);
}

/// <param name="Saleable">Units left that may be sold.</param>
/// <param name="Filled">0 for a pre-blend, which becomes a lot and no units.</param>
/// <param name="PerSaleable">Cost of one; null when none was left to sell.</param>
/// <param name="MadeLot">Code of the lot that a pre-blend became.</param>
public sealed record FinishedRow(
    string Code, string ScentName, int VersionNumber, string ProductKind, string? SizeName, BatchState State, DateTimeOffset FilledAt, int Filled,
    int Saleable, int Retained, int Rejected, decimal? TotalCost, decimal? PerSaleable, string? MadeLot);

public sealed record BatchRecord(
    Guid BatchId, Guid FormulaId, string Code, string ScentName, int VersionNumber, string ProductKind, string? SizeName, BatchState State, DateTimeOffset PlannedAt,
    DateTimeOffset? ClockStartedAt, DateTimeOffset? ReadyAt, string? EarlyReason, string? DiscardReason, long TargetMilligrams, long ReadabilityMilligrams, string? Place,
    IReadOnlyList<WeighedRow> Weighed, FilledRow? Fill, IReadOnlyList<PackagingRow> Packaging, IReadOnlyList<HappenedRow> Happened, MadeLot? MadeLot,
    string? ScaleName, int Deviations, UnitsLeft Units)
{
    public long WeighedMilligrams => Weighed.Sum(w => w.NetMilligrams);
}

/// <summary>Units as they are now.</summary>
public sealed record UnitsLeft(int Saleable, int Rejected, int Retained);

/// <summary>The lot that a pre-blend became.</summary>
/// <param name="UnitCost">Of one gram.</param>
public sealed record MadeLot(string Code, string Material, decimal UnitCost, long Milligrams);

/// <param name="LotCode">Null while its receipt is to follow.</param>
/// <param name="UnitCost">Of one gram.</param>
public sealed record WeighedRow(
    int Position, string Material, string? LotCode, long PlannedMilligrams, long TargetMilligrams, long NetMilligrams, decimal UnitCost, DateTimeOffset At, string Initials, MaterialKind Kind)
{
    public decimal Cost => NetMilligrams / 1000m * UnitCost;
}

public sealed record PackagingRow(string Material, string LotCode, long Pieces, decimal UnitCost)
{
    public decimal Cost => Pieces * UnitCost;
}

public sealed record HappenedRow(DateTimeOffset At, string What, string? Detail, string Initials);

/// <summary>One filling with its unrounded roll-up.</summary>
public sealed record FilledRow(
    DateTimeOffset At, long ToFillingMilligrams, long FillMilligrams, int Filled, int Rejected, int Retained, IReadOnlyList<long> CheckWeights, decimal LabourMinutes,
    decimal LabourRatePerHour, decimal OverheadPerBatch, decimal OverheadPerUnit, decimal Materials, decimal Packaging, decimal Labour, decimal Overhead, decimal Total, string? Note)
{
    public int Saleable => Filled - Rejected - Retained;
    public decimal PerFilled => Total / Filled;
    public decimal? PerSaleable => Saleable > 0 ? Total / Saleable : null;

    /// <summary>Mass yield: what is in the bottles, of what was weighed in.</summary>
    public decimal MassYield(long weighedMilligrams) => weighedMilligrams == 0 ? 0 : (decimal)FillMilligrams * Filled / weighedMilligrams;
}
