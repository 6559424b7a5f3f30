using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What the batches of one formula yielded, oldest first.</summary>
public sealed record FormulaYields(Guid FormulaId, string ScentName, string ProductKind, IReadOnlyList<YieldRow> Rows)
{
    /// <summary>All that is in units or jars, of all that was weighed in; null while nothing was.</summary>
    public decimal? Mean => Rows.Sum(r => r.WeighedMilligrams) is > 0 and var weighed ? (decimal)Rows.Sum(r => r.KeptMilligrams) / weighed : null;
}

/// <summary>Where the mass of one batch went: kept + left over + abnormal + normal loss is what was weighed in.</summary>
/// <param name="KeptMilligrams">In the units that were filled, or in the lot a pre-blend became.</param>
/// <param name="LeftMilligrams">Reached filling and is in no unit.</param>
/// <param name="AbnormalMilligrams">Recorded as an accident and expensed.</param>
/// <param name="ExpectedLossPercent">Of the version it was made from.</param>
public sealed record YieldRow(
    string Code, DateTimeOffset At, int VersionNumber, string? SizeName, long WeighedMilligrams, long KeptMilligrams, long LeftMilligrams, long AbnormalMilligrams,
    decimal ExpectedLossPercent)
{
    /// <summary>Stayed in filter, vessel and hose. Below zero when what was lost in an accident was weighed too high.</summary>
    public long NormalMilligrams => WeighedMilligrams - KeptMilligrams - LeftMilligrams - AbnormalMilligrams;

    /// <summary>A fraction of what was weighed in.</summary>
    public decimal Yield => Part(KeptMilligrams);

    public decimal Part(long milligrams) => (decimal)milligrams / WeighedMilligrams;
}

public sealed partial class BatchRecords
{
    /// <summary>Batches told in one reading; own bound, the newest count.</summary>
    private const int MostYields = 200;

    /// <summary>Null when there is no such formula.</summary>
    public async Task<FormulaYields?> YieldsAsync(Guid formulaId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var formula = await db.Formulas.Where(f => f.Id == formulaId).Select(f => new { f.Name, f.ProductKind }).SingleOrDefaultAsync(cancel);
        if (formula is null)
        {
            return null;
        }

        var rows = await (
            from batch in db.Batches
            where batch.FormulaVersion!.FormulaId == formulaId && batch.FilledAt != null
            orderby batch.FilledAt descending, batch.Code descending
            select new
            {
                batch.Code, At = batch.FilledAt!.Value, batch.VersionNumber, batch.SizeName, batch.FormulaVersion!.ExpectedLossPercent,
                Weighed = db.Weighings.Where(w => w.BatchId == batch.Id && w.ReversedAt == null).Sum(w => w.NetMilligrams),
                Fill = db.Fills.Where(f => f.BatchId == batch.Id).Select(f => new { f.ToFillingMilligrams, f.FillMilligrams, f.Filled }).FirstOrDefault(),
                Made = db.Movements.Where(m => m.BatchId == batch.Id && m.Kind == Core.Stock.MovementKind.Made).Sum(m => m.Change),
                Abnormal = db.BatchLosses.Where(l => l.BatchId == batch.Id).Sum(l => l.Milligrams),
            }).Take(MostYields).ToListAsync(cancel);
        return new FormulaYields(formulaId, formula.Name, formula.ProductKind,
        [
            .. rows.Where(r => r.Weighed > 0).Reverse().Select(r =>
            {
                var kept = r.Fill is { } fill ? fill.FillMilligrams * fill.Filled : r.Made;
                return new YieldRow(r.Code, r.At, r.VersionNumber, r.SizeName, r.Weighed, kept, r.Fill is { } f ? f.ToFillingMilligrams - kept : 0, r.Abnormal, r.ExpectedLossPercent);
            }),
        ]);
    }
}
