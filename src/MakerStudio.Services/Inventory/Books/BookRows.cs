using MakerStudio.Core.Books;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Reads the ledgers as the books see them.</summary>
internal static class BookRows
{
    public static async Task<BookFacts> FactsAsync(StudioDb db, CancellationToken cancel) => new(
        await MovementsAsync(db, cancel), [.. await BatchesAsync(db, cancel), .. await UnitRows.KitLotsAsync(db, cancel)], await UnitRows.OfAsync(db, cancel), await DownsAsync(db, cancel));

    /// <summary>The key of a product: a formula in a size of that name.</summary>
    public static string KeyOf(Guid formulaId, string? sizeName) => $"{formulaId:n}|{sizeName}";

    private static async Task<List<BookMovement>> MovementsAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await db.Movements.Select(m => new
        {
            m.Id, m.At, m.Lot!.MaterialId, m.Lot.Code, m.Lot.Material!.StockedIn, m.Change, m.UnitCost, m.Kind, BatchId = m.BatchId ?? m.KitLotId, m.ReversesId,
        }).ToListAsync(cancel);
        return [.. rows.Select(m => new BookMovement(
            m.Id, m.At, m.MaterialId, m.Code, m.Change,
            m.Change > 0 && m.Kind != MovementKind.Made ? new StockAmount(m.Change, m.StockedIn).Display * m.UnitCost : null,
            m.BatchId, m.ReversesId, m.Kind == MovementKind.Packaging))];
    }

    private static async Task<List<BookBatch>> BatchesAsync(StudioDb db, CancellationToken cancel)
    {
        var losses = (await db.BatchLosses.OrderBy(l => l.Id).ToListAsync(cancel)).ToLookup(l => l.BatchId);
        var estimates = await EstimatesAsync(db, cancel);
        var rows = await (
            from batch in db.Batches
            join fill in db.Fills on batch.Id equals fill.BatchId into fills
            from fill in fills.DefaultIfEmpty()
            select new
            {
                batch.Id, FilledAt = fill == null ? batch.FilledAt : fill.At, batch.DiscardedAt, batch.ConversionCost, Labour = fill == null ? 0m : fill.LabourCost, Overhead = fill == null ? 0m : fill.OverheadCost,
                Weighed = db.Weighings.Where(w => w.BatchId == batch.Id && w.ReversedAt == null).Sum(w => w.NetMilligrams),
                Kept = fill == null ? db.Movements.Where(m => m.BatchId == batch.Id && m.Kind == MovementKind.Made).Sum(m => (long?)m.Change) : fill.ToFillingMilligrams,
            }).ToListAsync(cancel);
        // Added here: the database would add with more digits than a decimal can be read back with.
        return [.. rows.Select(r => new BookBatch(
            r.Id, r.FilledAt is { } at ? [new BookCharge(at, (r.ConversionCost ?? 0m) + r.Labour + r.Overhead)] : [], [.. estimates[r.Id]],
            [.. LossesOf(losses[r.Id], r.Weighed, r.Kept is > 0 ? r.Kept : null)], r.FilledAt ?? r.DiscardedAt))];
    }

    private static IEnumerable<BookLoss> LossesOf(IEnumerable<BatchLoss> losses, long weighed, long? kept)
    {
        var lost = 0L;
        foreach (var loss in losses)
        {
            yield return new BookLoss(loss.At, Fills.LostPart(weighed, lost + loss.Milligrams, kept) - Fills.LostPart(weighed, lost, kept));
            lost += loss.Milligrams;
        }
    }

    private static async Task<ILookup<Guid, BookEstimate>> EstimatesAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await (
            from pending in db.PendingReceipts
            join weighing in db.Weighings on pending.WeighingId equals weighing.Id
            select new { pending.BatchId, pending.Milligrams, pending.EstimatedUnitCost, pending.At, pending.MatchedAt, weighing.ReversedAt }).ToListAsync(cancel);
        return rows.ToLookup(p => p.BatchId, p => new BookEstimate(p.At, Mass.FromMilligrams(p.Milligrams).Grams * p.EstimatedUnitCost, p.MatchedAt ?? p.ReversedAt));
    }

    private static async Task<List<ItemWriteDown>> DownsAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await db.WriteDowns.Select(w => new { Down = w, Lot = db.Lots.Where(l => l.Id == w.LotId).Select(l => l.Code).FirstOrDefault() }).ToListAsync(cancel);
        return [.. rows.Select(r => new ItemWriteDown(
            r.Down.MaterialId, r.Down.FormulaId is { } formula ? KeyOf(formula, r.Down.SizeName) : r.Down.KitId is { } kit ? KeyOf(kit, null) : null,
            new HeldWriteDown(r.Down.Id, r.Down.At, r.Lot ?? ((r.Down.BatchId ?? r.Down.KitLotId) is { } of ? BookValue.LotOf(of) : null), r.Down.Quantity, r.Down.Amount)))];
    }

    /// <summary>The product of each batch of units.</summary>
    public static async Task<Dictionary<Guid, string>> ProductOfAsync(StudioDb db, CancellationToken cancel)
    {
        var filled = await db.Batches.Where(b => b.FilledAt != null).Select(b => new { b.Id, b.FormulaVersion!.FormulaId, b.SizeName }).ToListAsync(cancel);
        var kits = await db.KitLots.Select(k => new { k.Id, k.KitId }).ToListAsync(cancel);
        return filled.Select(b => (b.Id, Key: KeyOf(b.FormulaId, b.SizeName))).Concat(kits.Select(k => (k.Id, Key: KeyOf(k.KitId, null)))).ToDictionary(b => b.Id, b => b.Key);
    }

    /// <summary>The codes of batches and lots of kits, by what the books call them.</summary>
    public static async Task<Dictionary<string, string>> CodesAsync(StudioDb db, CancellationToken cancel)
    {
        var batches = await db.Batches.Where(b => b.FilledAt != null).Select(b => new { b.Id, b.Code }).ToListAsync(cancel);
        var kits = await db.KitLots.Select(k => new { k.Id, k.Code }).ToListAsync(cancel);
        return batches.Concat(kits).ToDictionary(b => BookValue.LotOf(b.Id), b => b.Code);
    }

    /// <param name="FormulaId">Null for a kit.</param>
    /// <param name="Stored">The size as batches name it; null for a kit or where there is none.</param>
    public sealed record ProductName(Guid? FormulaId, string Scent, string SizeName, Guid? KitId = null, string? Stored = null);

    public static async Task<Dictionary<string, ProductName>> ProductsAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await db.Batches.Where(b => b.FilledAt != null)
            .Select(b => new { b.FormulaVersion!.FormulaId, b.FormulaVersion.Formula!.Name, b.SizeName }).Distinct().ToListAsync(cancel);
        var kits = await db.Kits.Select(k => new { k.Id, k.Name }).ToListAsync(cancel);
        return rows.Select(r => (Key: KeyOf(r.FormulaId, r.SizeName), Is: new ProductName(r.FormulaId, r.Name, r.SizeName ?? "no size", Stored: r.SizeName)))
            .Concat(kits.Select(k => (Key: KeyOf(k.Id, null), Is: new ProductName(null, k.Name, "kit", k.Id)))).ToDictionary(p => p.Key, p => p.Is);
    }

    /// <summary>Newest first.</summary>
    /// <param name="held">What of each still lies in the stock.</param>
    public static async Task<List<WriteDownRow>> WriteDownsAsync(StudioDb db, DateTimeOffset asOf, IReadOnlyDictionary<long, decimal> held, CancellationToken cancel)
    {
        var rows = await (
            from down in db.WriteDowns
            join person in db.Users on down.PersonId equals person.Id
            where down.At <= asOf
            orderby down.Id descending
            select new
            {
                Down = down, person.Initials,
                Material = db.Materials.Where(m => m.Id == down.MaterialId).Select(m => new { m.Name, m.StockedIn }).FirstOrDefault(),
                Scent = db.Formulas.Where(f => f.Id == down.FormulaId).Select(f => f.Name).FirstOrDefault(),
                Kit = db.Kits.Where(k => k.Id == down.KitId).Select(k => k.Name).FirstOrDefault(),
                Lot = db.Lots.Where(l => l.Id == down.LotId).Select(l => l.Code).FirstOrDefault(),
                Batch = db.Batches.Where(b => b.Id == down.BatchId).Select(b => b.Code).FirstOrDefault(),
                KitLot = db.KitLots.Where(k => k.Id == down.KitLotId).Select(k => k.Code).FirstOrDefault(),
            }).ToListAsync(cancel);
        return [.. rows.Select(r => new WriteDownRow(
            r.Material?.Name ?? r.Kit ?? $"{r.Scent}, {r.Down.SizeName}", r.Lot ?? r.Batch ?? r.KitLot, r.Down.Quantity, r.Material?.StockedIn ?? StockUnit.Each, r.Down.Cost, r.Down.Amount,
            held.GetValueOrDefault(r.Down.Id), r.Down.Reason, r.Initials, r.Down.At))];
    }
}
