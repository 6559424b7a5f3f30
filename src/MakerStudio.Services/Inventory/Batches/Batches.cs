using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Batches until their last addition: planned, changed, given up, opened for weighing. One file a use case.</summary>
public sealed partial class Batches(StudioStore store)
{
    /// <summary>Batches being weighed or planned, the ones being weighed first, then in the order they were planned.</summary>
    public async Task<IReadOnlyList<BenchRow>> OnTheBenchAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var shortages = await Shortages.ByBatchAsync(db, today, cancel: cancel);
        var rows = await db.Batches.Where(b => b.State == BatchState.Planned || b.State == BatchState.Weighing)
            .OrderBy(b => b.PlannedAt).ThenBy(b => b.Id)
            .Select(b => new
            {
                b.Id, b.Code, b.ScentName, b.VersionNumber, b.ProductKind, b.State, b.TargetMilligrams, b.PlannedUnits, b.SizeName, b.PlannedAt,
                PlannedBy = db.Users.Where(p => p.Id == b.PlannedById).Select(p => p.DisplayName).First(),
                WeighingBy = db.Users.Where(p => p.Id == b.WeighingById).Select(p => p.DisplayName).FirstOrDefault(),
                b.WeighingSince, Lines = b.Lines.Count, LinesDone = b.Lines.Count(l => l.DoneAt != null),
                Recorded = db.Weighings.Where(w => w.BatchId == b.Id && w.ReversedAt == null).Sum(w => (long?)w.NetMilligrams) ?? 0,
            })
            .ToListAsync(cancel);
        return [.. rows.OrderByDescending(b => b.State == BatchState.Weighing).Select(b => new BenchRow(
            b.Id, b.Code, b.ScentName, b.VersionNumber, ProductKinds.Get(b.ProductKind).Name, b.State, b.TargetMilligrams, b.PlannedUnits, b.SizeName,
            b.PlannedBy, b.PlannedAt, b.WeighingBy, b.WeighingSince, b.Lines, b.LinesDone, b.Recorded, shortages.GetValueOrDefault(b.Id) ?? []))];
    }

    /// <summary>What can be planned: released versions of formulas in use with their sizes, newest version first, and the scales.</summary>
    public async Task<Plannable> PlannableAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var versions = await db.FormulaVersions.Where(v => v.State == FormulaState.Released && v.Formula!.ArchivedAt == null)
            .OrderBy(v => v.Formula!.Name).ThenByDescending(v => v.Number)
            .Select(v => new { v.Id, v.Formula!.Name, v.Number, v.Formula.ProductKind, v.FormulaId })
            .ToListAsync(cancel);
        var sizes = await db.FormulaSizes.Where(s => s.RetiredAt == null).OrderBy(s => s.NominalMillilitres).ThenBy(s => s.NominalMilligrams)
            .Select(s => new { s.FormulaId, Size = new PlannableSize(s.Id, s.Name) }).ToListAsync(cancel);
        var scales = await db.Scales.Where(s => s.RetiredAt == null).OrderBy(s => s.Name)
            .Select(s => new PlannableScale(s.Id, s.Name, s.ReadabilityMilligrams)).ToListAsync(cancel);
        return new(
            [.. versions.Select(v => new PlannableVersion(
                v.Id, v.Name, v.Number, ProductKinds.Get(v.ProductKind).Name, [.. sizes.Where(s => s.FormulaId == v.FormulaId).Select(s => s.Size)]))],
            scales);
    }

    /// <summary>Everything the plan of one batch shows, whatever its state; null when there is no such batch.</summary>
    public async Task<BatchPlan?> PlanOfAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.Where(b => b.Code == code)
            .Select(b => new
            {
                Batch = b, Lines = b.Lines.OrderBy(l => l.Position).Select(l => new BatchPlanLine(
                    l.Id, l.Position, l.MaterialId, l.MaterialName, l.Material!.Kind, l.Fraction, l.PlannedMilligrams, l.TargetMilligrams, l.Method,
                    db.Weighings.Where(w => w.BatchLineId == l.Id && w.ReversedAt == null).Sum(w => (long?)w.NetMilligrams) ?? 0, l.DoneAt)).ToList(),
                Parts = b.Parts.OrderBy(p => p.Material!.Name).Select(p => new BatchPlanPart(p.MaterialId, p.Material!.Name, p.CountPerUnit)).ToList(),
                PlannedBy = db.Users.Where(p => p.Id == b.PlannedById).Select(p => p.DisplayName).First(),
                WeighingBy = db.Users.Where(p => p.Id == b.WeighingById).Select(p => p.DisplayName).FirstOrDefault(),
                ScaleName = b.Scale!.Name,
            })
            .SingleOrDefaultAsync(cancel);
        if (batch is null)
        {
            return null;
        }

        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var it = batch.Batch;
        return new(
            it.Id, it.Code, it.ScentName, it.VersionNumber, ProductKinds.Get(it.ProductKind).Name, it.State, it.TargetMilligrams, it.PlannedUnits, it.SizeName,
            it.FillMilligrams, it.ExpectedLossPercent, it.CureMinHours, it.CureIdealHours, it.TolerancePercent, it.ToleranceDivisions, it.ReadabilityMilligrams,
            batch.ScaleName, it.Place, it.Note, it.Method, batch.PlannedBy, it.PlannedAt, batch.WeighingBy, it.WeighingSince, it.DiscardReason,
            batch.Lines, batch.Parts, await Shortages.OfAsync(db, it.Id, today, cancel));
    }
}

public sealed record BenchRow(
    Guid BatchId, string Code, string ScentName, int VersionNumber, string ProductName, BatchState State, long TargetMilligrams, int? PlannedUnits,
    string? SizeName, string PlannedBy, DateTimeOffset PlannedAt, string? WeighingBy, DateTimeOffset? WeighingSince, int Lines, int LinesDone,
    long RecordedMilligrams, IReadOnlyList<Shortage> Shortages);

public sealed record Plannable(IReadOnlyList<PlannableVersion> Versions, IReadOnlyList<PlannableScale> Scales);

public sealed record PlannableVersion(Guid VersionId, string ScentName, int Number, string ProductName, IReadOnlyList<PlannableSize> Sizes);

public sealed record PlannableSize(Guid SizeId, string Name);

public sealed record PlannableScale(Guid ScaleId, string Name, long ReadabilityMilligrams);

public sealed record BatchPlan(
    Guid BatchId, string Code, string ScentName, int VersionNumber, string ProductName, BatchState State, long TargetMilligrams, int? PlannedUnits,
    string? SizeName, long? FillMilligrams, decimal ExpectedLossPercent, int CureMinHours, int CureIdealHours, decimal TolerancePercent,
    int ToleranceDivisions, long ReadabilityMilligrams, string? ScaleName, string? Place, string? Note, string? Method, string PlannedBy,
    DateTimeOffset PlannedAt, string? WeighingBy, DateTimeOffset? WeighingSince, string? DiscardReason,
    IReadOnlyList<BatchPlanLine> Lines, IReadOnlyList<BatchPlanPart> Parts, IReadOnlyList<Shortage> Shortages)
{
    /// <summary>How far the weighing of a line may lie from its target, milligrams.</summary>
    public long ToleranceOf(BatchPlanLine line) => Core.Bench.WeighTolerance.Of(
        Mass.FromMilligrams(line.TargetMilligrams), Mass.FromMilligrams(ReadabilityMilligrams), TolerancePercent, ToleranceDivisions).Milligrams;
}

public sealed record BatchPlanLine(
    Guid LineId, int Position, Guid MaterialId, string MaterialName, MaterialKind Kind, decimal Fraction, long PlannedMilligrams, long TargetMilligrams,
    string? Method, long RecordedMilligrams, DateTimeOffset? DoneAt);

public sealed record BatchPlanPart(Guid MaterialId, string MaterialName, int CountPerUnit);
