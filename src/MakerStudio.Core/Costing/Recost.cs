using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Costing;

/// <summary>Where a change in the cost of a filled batch goes; the three add up to it exactly.</summary>
/// <param name="InStock">Onto units that are still ours, here or with a shop.</param>
/// <param name="Sold">Onto the cost of sales.</param>
/// <param name="Expensed">Onto units that were given away, broken or thrown away.</param>
public sealed record RecostShares(decimal InStock, decimal Sold, decimal Expensed);

/// <summary>
/// Spreads a change in the cost of a batch over its units when its true cost is learned late, e.g. when a receipt to
/// follow is matched.
/// </summary>
public static class Recost
{
    /// <param name="change">New cost less old, of either sign.</param>
    /// <param name="inStock">Units that carry cost and are ours.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is below zero, or all are zero.</exception>
    public static RecostShares Spread(decimal change, int inStock, int sold, int expensed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inStock, 0m);
        ArgumentOutOfRangeException.ThrowIfLessThan(sold, 0m);
        ArgumentOutOfRangeException.ThrowIfLessThan(expensed, 0m);
        ArgumentOutOfRangeException.ThrowIfLessThan(inStock + sold + expensed, 1);
        var (gone, stock) = new ValuePool(inStock + sold + expensed, Math.Abs(change)).Take(sold + expensed);
        var (atSale, atLoss) = gone.Take(sold);
        var sign = change < 0 ? -1m : 1m;
        return new RecostShares(sign * stock.Value, sign * atSale.Value, sign * atLoss.Value);
    }
}
