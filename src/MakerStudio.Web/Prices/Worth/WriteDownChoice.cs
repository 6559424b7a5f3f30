using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Prices.Worth;

/// <summary>Something that can be written down: a material, a product or a kit, with its lots.</summary>
/// <param name="Key">Its value in the list of choices.</param>
/// <param name="Each">What a price is for: "kg", "piece", "unit".</param>
internal sealed record WriteDownChoice(string Key, string Name, string Each, Guid? MaterialId, string? Product, IReadOnlyList<LotBookRow> Lots)
{
    /// <summary>What its parts are called, in the plural.</summary>
    public string Lot => Product is null || Each == "kit" ? "lots" : "batches";

    private const decimal MilligramsPerKilogram = 1_000_000m;

    /// <summary>Finished units first: they are what is written down most.</summary>
    public static List<WriteDownChoice> Of(BooksView view) =>
    [
        .. view.Finished.Select(f => new WriteDownChoice($"p:{f.Key}", f.Name, f.FormulaId is null ? "kit" : "unit", null, f.Key, There(f.Lots))),
        .. view.Materials.Select(m => new WriteDownChoice($"m:{m.MaterialId}", m.Name, m.Unit == StockUnit.Gram ? "kg" : "piece", m.MaterialId, null, There(m.Lots))),
    ];

    /// <summary>The item a choice names, and its lots or the one that is named.</summary>
    /// <param name="choice">A key, with the lot behind the mark where one is chosen.</param>
    public static (WriteDownChoice Item, IReadOnlyList<LotBookRow> Lots)? Find(List<WriteDownChoice> items, string? choice, char mark)
    {
        var (key, lot) = choice?.Split(mark) switch { [var k] => (k, null), [var k, var l] => (k, l), _ => (null, (string?)null) };
        return items.Find(i => i.Key == key) is { Lots.Count: > 0 } item && item.Lots.Where(l => (lot ?? l.Lot) == l.Lot).ToList() is { Count: > 0 } lots ? (item, lots) : null;
    }

    /// <summary>What it would come to, before it is done.</summary>
    public static string Preview(WriteDownChoice item, IReadOnlyList<LotBookRow> lots, decimal price, decimal toComplete, decimal toSell)
    {
        var estimate = new RealisableEstimate(Math.Max(0m, price), Math.Max(0m, toComplete), Math.Max(0m, toSell));
        var carried = lots.Select(l => NetRealisable.Of(item.Each == "kg" ? l.Quantity / MilligramsPerKilogram : l.Quantity, l.Cost, estimate, l.WrittenDown)).ToList();
        var (cost, down, change) = (carried.Sum(c => c.Cost), carried.Sum(c => c.WriteDown), carried.Sum(c => c.Change));
        return down == 0 && change == 0
            ? $"It cost {Written.Money(cost)} and will bring at least that: nothing is written down."
            : $"It cost {Written.Money(cost)} and is carried at {Written.Money(cost - down)}: written down by {Written.Money(down)}, {(change == 0 ? "as it is now" : change > 0 ? $"{Written.Money(change)} more than now" : $"{Written.Money(-change)} taken back")}.";
    }

    private static List<LotBookRow> There(IReadOnlyList<LotBookRow> lots) => [.. lots.Where(l => l.Quantity > 0)];
}
