using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// The books against the ledgers they are replayed from: nothing is lost under any method, and under specific lot the
/// replay comes to what lots and fillings hold by themselves.
/// </summary>
internal static class BooksCheck
{
    /// <summary>Unit costs kept as quotients leave less than this behind.</summary>
    private const decimal FarBelowACoin = 0.00001m;

    public static async Task<IReadOnlyList<string>> OfAsync(StudioDb db, TimeProvider clock, CancellationToken cancel)
    {
        if (!await db.Studio.AnyAsync(cancel))
        {
            return [];
        }

        var basis = await Books.BasisAsync(db, clock, cancel);
        var facts = await BookRows.FactsAsync(db, cancel);
        var moment = facts.Movements.Select(m => m.At).Append(basis.Now).Max();
        var products = await BookRows.ProductOfAsync(db, cancel);
        var values = Enum.GetValues<ValuationMethod>().Select(m => BookValue.Of(facts, products, m, moment, basis.Years)).ToList();
        return
        [
            .. values.SelectMany(Conserved),
            .. await LotsAsync(db, values.Single(v => v.Method == ValuationMethod.SpecificLot), cancel),
            .. await FillingsAsync(db, values.Single(v => v.Method == ValuationMethod.SpecificLot), cancel),
        ];
    }

    private static IEnumerable<string> Conserved(BookValue value)
    {
        var check = Conservation.Check(value.Parts);
        if (!check.Holds)
        {
            yield return $"Books, {BookWords.Method(value.Method)}: {AmountWords.MoneyInFull(check.In)} went in and {AmountWords.MoneyInFull(check.Out)} is found again.";
        }
    }

    private static async Task<IEnumerable<string>> LotsAsync(StudioDb db, BookValue specific, CancellationToken cancel)
    {
        // Entries of a pre-blend that was costed anew keep what it cost before; they are not compared.
        var anew = db.PendingReceipts.Where(p => p.MatchedAt != null).SelectMany(p => db.Lots.Where(l => l.MadeByBatchId != null), (p, l) => l.MaterialId);
        var lots = (await db.Lots.Where(l => l.Balance!.OnHand != 0 && !anew.Contains(l.MaterialId))
            .Select(l => new { l.MaterialId, l.Material!.Name, l.Material.StockedIn, l.Balance!.OnHand, l.UnitCost }).ToListAsync(cancel)).ToLookup(l => l.MaterialId);
        return lots.Select(g => (g.First().Name, Held: g.Sum(l => new StockAmount(l.OnHand, l.StockedIn).Display * l.UnitCost), Replayed: specific.Materials.GetValueOrDefault(g.Key)?.Cost ?? 0m))
            .Where(m => Math.Abs(m.Held - m.Replayed) > FarBelowACoin)
            .Select(m => $"{m.Name}: its lots hold {AmountWords.MoneyInFull(m.Held)}, the books by lot come to {AmountWords.MoneyInFull(m.Replayed)}.");
    }

    private static async Task<IEnumerable<string>> FillingsAsync(StudioDb db, BookValue specific, CancellationToken cancel)
    {
        var fills = await db.Fills.Select(f => new { f.BatchId, f.Batch!.Code, f.TotalCost, Lost = db.BatchLosses.Any(l => l.BatchId == f.BatchId) }).Where(f => !f.Lost).ToListAsync(cancel);
        return fills.Select(f => (f.Code, f.TotalCost, Replayed: specific.Books.BatchCosts.GetValueOrDefault(f.BatchId)))
            .Where(f => Math.Abs(f.TotalCost - f.Replayed) > FarBelowACoin)
            .Select(f => $"Batch {f.Code}: total stored as {AmountWords.MoneyInFull(f.TotalCost)}, the books by lot come to {AmountWords.MoneyInFull(f.Replayed)}.");
    }
}
