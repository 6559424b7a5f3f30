namespace MakerStudio.Core.Stock;

/// <param name="Lot">Names the purchase; must be its own for specific identification.</param>
/// <param name="Quantity">Above 0.</param>
/// <param name="UnitCost">0 or more, not rounded.</param>
public sealed record Purchase(string Lot, DateOnly On, decimal Quantity, decimal UnitCost)
{
    public decimal Cost => Quantity * UnitCost;
}

/// <param name="Quantity">Above 0.</param>
/// <param name="Lot">The purchase it came from; only specific identification looks at it.</param>
public sealed record Sale(DateOnly On, decimal Quantity, string? Lot = null);

/// <summary>Not rounded. <see cref="Ending"/> and <see cref="CostOfSales"/> add up to <see cref="GoodsAvailable"/>.</summary>
public sealed record StockValue(decimal GoodsAvailable, decimal Ending, decimal CostOfSales);

/// <summary>
/// Puts a value on stock at the end of a period, opening stock being the first purchase. IAS 2 prescribes FIFO or
/// weighted average for goods that are alike, specific identification for goods that are not. Which lot is *picked*
/// is another matter: see <see cref="LotChoice"/>. On one day purchases come before sales.
/// </summary>
/// <remarks>
/// Every method throws <see cref="ArgumentException"/> for a quantity that is not above zero, a cost below zero, or
/// a sale of more than was there on its day: the ledger never holds such movements.
/// </remarks>
public static class Valuation
{
    /// <summary>First in, first out: the oldest purchases are taken as sold first.</summary>
    public static StockValue Fifo(IReadOnlyList<Purchase> purchases, IReadOnlyList<Sale> sales)
    {
        var layers = new Queue<(decimal Quantity, decimal UnitCost)>();
        var costOfSales = 0m;
        var onTop = (Quantity: 0m, UnitCost: 0m);
        foreach (var step in InOrder(purchases, sales))
        {
            if (step.Bought is { } bought)
            {
                layers.Enqueue((bought.Quantity, bought.UnitCost));
                continue;
            }
            var wanted = step.Sold!.Quantity;
            while (wanted > 0)
            {
                onTop = onTop.Quantity > 0 ? onTop : layers.Dequeue();
                var taken = Math.Min(wanted, onTop.Quantity);
                onTop.Quantity -= taken;
                wanted -= taken;
                costOfSales += taken * onTop.UnitCost;
            }
        }
        var ending = layers.Append(onTop).Sum(l => l.Quantity * l.UnitCost);
        return new StockValue(purchases.Sum(p => p.Cost), ending, costOfSales);
    }

    /// <summary>Weighted average over the whole period: one unit cost for all that was available.</summary>
    public static StockValue WeightedAverage(IReadOnlyList<Purchase> purchases, IReadOnlyList<Sale> sales)
    {
        _ = InOrder(purchases, sales);
        var available = purchases.Sum(p => p.Cost);
        var bought = purchases.Sum(p => p.Quantity);
        var left = bought - sales.Sum(s => s.Quantity);
        var ending = left == 0 ? 0 : available * left / bought;
        return new StockValue(available, ending, available - ending);
    }

    /// <summary>Moving average: the average is worked out anew after each purchase, and never rounded midway.</summary>
    public static StockValue MovingAverage(IReadOnlyList<Purchase> purchases, IReadOnlyList<Sale> sales)
    {
        var (quantity, value) = (0m, 0m);
        foreach (var step in InOrder(purchases, sales))
        {
            if (step.Bought is { } bought)
            {
                quantity += bought.Quantity;
                value += bought.Cost;
                continue;
            }
            var left = quantity - step.Sold!.Quantity;
            value = left == 0 ? 0 : value * left / quantity;
            quantity = left;
        }
        var available = purchases.Sum(p => p.Cost);
        return new StockValue(available, value, available - value);
    }

    /// <summary>Specific identification: each sale names the lot it came from.</summary>
    public static StockValue SpecificIdentification(IReadOnlyList<Purchase> purchases, IReadOnlyList<Sale> sales)
    {
        var lots = new Dictionary<string, (decimal Left, decimal UnitCost)>(StringComparer.Ordinal);
        var costOfSales = 0m;
        foreach (var step in InOrder(purchases, sales))
        {
            if (step.Bought is { } bought)
            {
                if (!lots.TryAdd(bought.Lot, (bought.Quantity, bought.UnitCost)))
                {
                    throw new ArgumentException($"Lot {bought.Lot} is bought twice.", nameof(purchases));
                }
                continue;
            }
            var sold = step.Sold!;
            if (sold.Lot is null || !lots.TryGetValue(sold.Lot, out var lot) || lot.Left < sold.Quantity)
            {
                throw new ArgumentException(
                    $"Lot {sold.Lot ?? "(none)"} does not hold the sale of {sold.On:yyyy-MM-dd}.", nameof(sales));
            }
            lots[sold.Lot] = (lot.Left - sold.Quantity, lot.UnitCost);
            costOfSales += sold.Quantity * lot.UnitCost;
        }
        return new StockValue(
            purchases.Sum(p => p.Cost), lots.Values.Sum(l => l.Left * l.UnitCost), costOfSales);
    }

    private readonly record struct Step(DateOnly On, Purchase? Bought, Sale? Sold);

    private static List<Step> InOrder(IReadOnlyList<Purchase> purchases, IReadOnlyList<Sale> sales)
    {
        ArgumentNullException.ThrowIfNull(purchases);
        ArgumentNullException.ThrowIfNull(sales);
        if (purchases.Any(p => p.Quantity <= 0 || p.UnitCost < 0) || sales.Any(s => s.Quantity <= 0))
        {
            throw new ArgumentException("A quantity is not above zero, or a cost is below zero.", nameof(purchases));
        }
        // OrderBy keeps the order of equals, so purchases stay before the sales of their day.
        var steps = purchases.Select(p => new Step(p.On, p, null))
            .Concat(sales.Select(s => new Step(s.On, null, s)))
            .OrderBy(s => s.On)
            .ToList();
        var onHand = 0m;
        foreach (var step in steps)
        {
            onHand += step.Bought?.Quantity ?? -step.Sold!.Quantity;
            if (onHand < 0)
            {
                throw new ArgumentException($"More is sold than was there on {step.On:yyyy-MM-dd}.", nameof(sales));
            }
        }
        return steps;
    }
}
