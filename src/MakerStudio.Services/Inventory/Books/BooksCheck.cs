using System.Globalization;
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

    public static async Task<IReadOnlyList<VerifyCheck>> OfAsync(StudioDb db, TimeProvider clock, CancellationToken cancel)
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
        var specific = values.Single(v => v.Method == ValuationMethod.SpecificLot);
        return
        [
            .. values.Select(v => new VerifyCheck(
                "entries of the books", facts.Movements.Count + facts.Units.Count, $"by {BookWords.Method(v.Method).ToLower(CultureInfo.CurrentCulture)}, {AmountWords.Money(v.Parts.Received + v.Parts.Conversion)} went in and is found again", [.. Conserved(v)])),
            new("materials", specific.Materials.Count, "their worth in the books by lot is what their lots hold", await LotsAsync(db, specific, cancel)),
            new("fillings", await db.Fills.LongCountAsync(cancel), "their cost in the books by lot is what is stored with them", await FillingsAsync(db, specific, cancel)),
        ];
    }

    private static IEnumerable<Difference> Conserved(BookValue value)
    {
        var check = Conservation.Check(value.Parts);
        if (!check.Holds)
        {
            yield return new(
                $"Books, {BookWords.Method(value.Method)}: {AmountWords.MoneyInFull(check.In)} went in and {AmountWords.MoneyInFull(check.Out)} is found again.",
                "Prices → Books (/prices/books): set the day back until both sides agree; the entry is of the day after");
        }
    }

    private static async Task<IReadOnlyList<Difference>> LotsAsync(StudioDb db, BookValue specific, CancellationToken cancel)
    {
        // Found on counting or back from kits: that entry keeps what a pre-blend cost before it was costed anew.
        var found = db.Lots.Where(l => l.MadeByBatchId != null && db.Movements.Any(m => m.LotId == l.Id && m.Change > 0 && m.Kind != MovementKind.Made && m.Kind != MovementKind.Reversal)).Select(l => l.MaterialId);
        var lots = (await db.Lots.Where(l => l.Balance!.OnHand != 0 && !found.Contains(l.MaterialId))
            .Select(l => new { l.MaterialId, l.Material!.Name, l.Material.StockedIn, l.Balance!.OnHand, l.UnitCost }).ToListAsync(cancel)).ToLookup(l => l.MaterialId);
        return [.. lots.Select(g => (g.Key, g.First().Name, Held: g.Sum(l => new StockAmount(l.OnHand, l.StockedIn).Display * l.UnitCost), Replayed: specific.Materials.GetValueOrDefault(g.Key)?.Cost ?? 0m))
            .Where(m => Math.Abs(m.Held - m.Replayed) > FarBelowACoin)
            .Select(m => new Difference(
                $"{m.Name}: its lots hold {AmountWords.MoneyInFull(m.Held)}, the books by lot come to {AmountWords.MoneyInFull(m.Replayed)}.", $"Storeroom → {m.Name} (/storeroom/materials/{m.Key})"))];
    }

    private static async Task<IReadOnlyList<Difference>> FillingsAsync(StudioDb db, BookValue specific, CancellationToken cancel)
    {
        var fills = await db.Fills.Select(f => new { f.BatchId, f.Batch!.Code, f.TotalCost, Lost = db.BatchLosses.Any(l => l.BatchId == f.BatchId) }).Where(f => !f.Lost).ToListAsync(cancel);
        return [.. fills.Select(f => (f.Code, f.TotalCost, Replayed: specific.Books.BatchCosts.GetValueOrDefault(f.BatchId)))
            .Where(f => Math.Abs(f.TotalCost - f.Replayed) > FarBelowACoin)
            .Select(f => Difference.OfBatch(f.Code, $"Batch {f.Code}: total stored as {AmountWords.MoneyInFull(f.TotalCost)}, the books by lot come to {AmountWords.MoneyInFull(f.Replayed)}."))];
    }
}
