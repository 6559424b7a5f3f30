using MakerStudio.Core.Books;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>All that the value of the stock is worked out from.</summary>
internal sealed record BookFacts(
    IReadOnlyList<BookMovement> Movements, IReadOnlyList<BookBatch> Batches, IReadOnlyList<BookUnits> Units, IReadOnlyList<ItemWriteDown> WriteDowns);

/// <param name="MaterialId">Null for a product.</param>
/// <param name="Product">Null for a material.</param>
internal sealed record ItemWriteDown(long Id, Guid? MaterialId, string? Product, HeldWriteDown Down);

/// <summary>One item of stock, with what it is written down by.</summary>
internal sealed record BookItem(decimal Quantity, decimal Cost, decimal WrittenDown);

/// <summary>The books at one moment with write-downs taken off what they were made on.</summary>
internal sealed record BookValue(
    ValuationMethod Method, StudioBooks Books, IReadOnlyDictionary<Guid, BookItem> Materials, IReadOnlyDictionary<string, BookItem> Products, ValueParts Parts)
{
    public static BookValue Of(BookFacts facts, IReadOnlyDictionary<Guid, string> productOf, ValuationMethod method, DateTimeOffset asOf, FinancialYears years)
    {
        var books = StudioBooks.Of(method, facts.Movements, facts.Batches, facts.Units, asOf, years);
        var downs = facts.WriteDowns.Where(w => w.Down.At <= asOf).ToList();
        var moves = facts.Movements.Where(m => m.At <= asOf).ToLookup(m => m.MaterialId, m => (m.At, m.Quantity));
        var units = facts.Units.Where(u => u.At <= asOf && productOf.ContainsKey(u.BatchId)).ToLookup(u => productOf[u.BatchId], u => (u.At, (decimal)u.Count));
        var materials = books.Materials.ToDictionary(m => m.Id, m => new BookItem(
            m.Quantity, m.Value, Newest(downs.Where(w => w.MaterialId == m.Id))?.StillHeld(moves[m.Id], m.Value) ?? 0m));
        var products = books.Finished.GroupBy(f => productOf.GetValueOrDefault(f.Id, f.Id.ToString("n"))).ToDictionary(g => g.Key, g => new BookItem(
            g.Sum(f => f.Quantity), g.Sum(f => f.Value), Newest(downs.Where(w => w.Product == g.Key))?.StillHeld(units[g.Key], g.Sum(f => f.Value)) ?? 0m));
        var (ofMaterials, ofProducts) = (materials.Values.Sum(m => m.WrittenDown), products.Values.Sum(p => p.WrittenDown));
        var parts = books.Check.Parts;
        return new BookValue(method, books, materials, products, parts with
        {
            Materials = parts.Materials - ofMaterials, Finished = parts.Finished - ofProducts, Expensed = parts.Expensed + ofMaterials + ofProducts,
        });
    }

    private static HeldWriteDown? Newest(IEnumerable<ItemWriteDown> downs) => downs.MaxBy(d => d.Id)?.Down;
}
