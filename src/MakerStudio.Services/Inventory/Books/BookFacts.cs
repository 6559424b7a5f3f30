using MakerStudio.Core.Books;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>All that the value of the stock is worked out from.</summary>
internal sealed record BookFacts(
    IReadOnlyList<BookMovement> Movements, IReadOnlyList<BookBatch> Batches, IReadOnlyList<BookUnits> Units, IReadOnlyList<ItemWriteDown> WriteDowns);

/// <param name="MaterialId">Null for a product or kit.</param>
/// <param name="Product">Null for a material.</param>
internal sealed record ItemWriteDown(Guid? MaterialId, string? Product, HeldWriteDown Down);

/// <summary>One item of stock, with what it is written down by.</summary>
internal sealed record BookItem(decimal Quantity, decimal Cost, IReadOnlyList<BookItemLot> Lots)
{
    public decimal WrittenDown { get; } = Lots.Sum(l => l.WrittenDown);
}

/// <param name="Lot">Code of a lot of a material; <see cref="BookValue.LotOf"/> of a batch of units or a lot of kits.</param>
/// <param name="DownId">The write-down that it is carried by; null for none.</param>
internal sealed record BookItemLot(string Lot, decimal Quantity, decimal Cost, decimal WrittenDown, long? DownId);

/// <summary>The books at one moment with write-downs taken off what they were made on.</summary>
internal sealed record BookValue(
    ValuationMethod Method, StudioBooks Books, IReadOnlyDictionary<Guid, BookItem> Materials, IReadOnlyDictionary<string, BookItem> Products, ValueParts Parts)
{
    public static string LotOf(Guid batch) => batch.ToString("n");

    public static BookValue Of(BookFacts facts, IReadOnlyDictionary<Guid, string> productOf, ValuationMethod method, DateTimeOffset asOf, FinancialYears years)
    {
        var books = StudioBooks.Of(method, facts.Movements, facts.Batches, facts.Units, asOf, years);
        var downs = facts.WriteDowns.Where(w => w.Down.At <= asOf).ToList();
        var moves = facts.Movements.Where(m => m.At <= asOf).ToLookup(m => m.MaterialId, m => (m.At, m.Lot, m.Quantity));
        var units = facts.Units.Where(u => u.At <= asOf && productOf.ContainsKey(u.BatchId)).ToLookup(u => productOf[u.BatchId], u => (u.At, LotOf(u.BatchId), (decimal)u.Count));
        var lots = books.Lots.ToLookup(l => l.MaterialId, l => (l.Lot, l.Quantity, l.Value));
        var materials = books.Materials.ToDictionary(m => m.Id, m => Item(m.Quantity, m.Value, lots[m.Id], downs.Where(w => w.MaterialId == m.Id), moves[m.Id]));
        var products = books.Finished.GroupBy(f => productOf.GetValueOrDefault(f.Id, LotOf(f.Id))).ToDictionary(g => g.Key, g => Item(
            g.Sum(f => f.Quantity), g.Sum(f => f.Value), g.Select(f => (LotOf(f.Id), f.Quantity, f.Value)), downs.Where(w => w.Product == g.Key), units[g.Key]));
        var (ofMaterials, ofProducts) = (materials.Values.Sum(m => m.WrittenDown), products.Values.Sum(p => p.WrittenDown));
        var parts = books.Check.Parts;
        return new BookValue(method, books, materials, products, parts with
        {
            Materials = parts.Materials - ofMaterials, Finished = parts.Finished - ofProducts, Expensed = parts.Expensed + ofMaterials + ofProducts,
        });
    }

    /// <summary>Written down in all.</summary>
    public decimal WrittenDown => Materials.Values.Sum(m => m.WrittenDown) + Products.Values.Sum(p => p.WrittenDown);

    /// <summary>What of each write-down still lies in the stock, by its id.</summary>
    public IReadOnlyDictionary<long, decimal> HeldByDown => Materials.Values.Concat(Products.Values).SelectMany(i => i.Lots)
        .Where(l => l.DownId is not null).GroupBy(l => l.DownId!.Value).ToDictionary(g => g.Key, g => g.Sum(l => l.WrittenDown));

    private static BookItem Item(
        decimal quantity, decimal cost, IEnumerable<(string Lot, decimal Quantity, decimal Cost)> lots, IEnumerable<ItemWriteDown> downs,
        IEnumerable<(DateTimeOffset At, string Lot, decimal Change)> changes)
    {
        var held = HeldWriteDown.ByLot(downs.Select(d => d.Down), changes);
        return new BookItem(quantity, cost, [.. lots.Select(l => held.TryGetValue(l.Lot, out var down)
            ? new BookItemLot(l.Lot, l.Quantity, l.Cost, Math.Min(l.Cost, down.Amount), down.Id)
            : new BookItemLot(l.Lot, l.Quantity, l.Cost, 0m, null))]);
    }
}
