using System.Globalization;
using MakerStudio.Core.Buying;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>What an order would come to, worked out while it is typed.</summary>
/// <param name="Totals">Null while a line lacks its quantity or price.</param>
public sealed record OrderSheet(IReadOnlyList<OrderSheetLine> Lines, OrderTotals? Totals)
{
    /// <summary>Before anything is typed.</summary>
    public static OrderSheet Empty { get; } = new([], null);
}

/// <param name="Units">Onto the shelf, milligrams or pieces; null while it cannot be read.</param>
/// <param name="Problem">Why the amount cannot be read as stock.</param>
/// <param name="CoverDays">Days until it is used up, with what is there and on its way; null when nothing is being used.</param>
/// <param name="Says">Below what they sell at least, or no whole packs; empty when it fits.</param>
public sealed record OrderSheetLine(string? Material, StockUnit? StockedIn, long? Units, string? Problem, decimal? CoverDays, IReadOnlyList<string> Says);

public sealed partial class Purchasing
{
    /// <summary>The sums of an order that is not sent; lines that cannot be read yet are left open.</summary>
    public async Task<OrderSheet> WorkOutAsync(SendOrder typed, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        Guid[] materials = [.. typed.Lines.Select(l => l.MaterialId).Distinct()];
        var facts = await MaterialFacts.LoadAsync(db, materials, cancel);
        var stock = (await Stock.RowsAsync(db, store.Clock, materials, cancel)).ToDictionary(r => r.MaterialId);
        var lines = typed.Lines.Select(l => facts.TryGetValue(l.MaterialId, out var material)
            ? SheetLine(l, material, stock.GetValueOrDefault(l.MaterialId), typed.SupplierId)
            : new OrderSheetLine(null, null, null, null, null, [])).ToList();
        return new OrderSheet(lines, lines.Any(l => l.Units is null) ? null : OrderSums.Of(typed, facts));
    }

    private static OrderSheetLine SheetLine(OrderLineTyped line, MaterialFacts material, StockRow? stock, Guid supplierId)
    {
        var open = new OrderSheetLine(material.Name, material.StockedIn, null, null, null, []);
        if (line.Quantity <= 0)
        {
            return open;
        }

        var result = OrderSums.IntoStock(line, material);
        if (result is not ConversionResult.Converted { Amount: { IsPositive: true } amount })
        {
            return open with { Problem = DeliverySums.WhyNot(result) };
        }

        return open with
        {
            Units = amount.Units,
            CoverDays = stock is null ? null : Reorder.CoverDays(new StockAmount(stock.Coming + amount.Units, stock.Unit), new DailyUse(stock.UsePerDay, stock.Unit)),
            Says = stock?.From is { } from && from.SupplierId == supplierId ? [.. Says(from, amount)] : [],
        };
    }

    private static IEnumerable<string> Says(BuyingTerms from, StockAmount amount)
    {
        if (from.Minimum is { } least && amount.Units < least)
        {
            yield return $"They sell no less than {AmountWords.Amount(least, amount.Unit)}.";
        }

        if (from.Pack is > 0 and var pack && amount.Units % pack != 0)
        {
            var packs = (amount.Units + pack - 1) / pack;
            yield return $"It comes in packs of {AmountWords.Amount(pack, amount.Unit)}: {packs.ToString(CultureInfo.CurrentCulture)} of them are {AmountWords.Amount(packs * pack, amount.Unit)}.";
        }
    }
}
