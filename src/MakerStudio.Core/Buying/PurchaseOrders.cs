using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Buying;

/// <summary>A line of a purchase order.</summary>
/// <param name="Quantity">In the supplier's unit, above 0.</param>
/// <param name="UnitPrice">Per that unit, 0 or more.</param>
/// <param name="Discount">A fraction of the line, from 0 to 1.</param>
public sealed record OrderLine(string Name, decimal Quantity, decimal UnitPrice, decimal Discount = 0m);

/// <summary>Whole coins.</summary>
/// <param name="Lines">In the order of the order.</param>
/// <param name="Tax">On goods and freight; recoverable tax is no cost of the goods.</param>
public sealed record OrderTotals(IReadOnlyList<decimal> Lines, decimal Goods, decimal Freight, decimal Tax, decimal Total);

/// <summary>The sums of a purchase order, rounded as an order is printed: each line to whole coins, and the tax once.</summary>
public static class PurchaseOrders
{
    /// <param name="taxRate">A fraction: 0.2 is 20 %.</param>
    /// <param name="moneyDecimals">Decimals of the coin, 0 to 6.</param>
    /// <exception cref="ArgumentException">One of <see cref="Problems"/> applies; ask for those first.</exception>
    public static OrderTotals Totals(IReadOnlyList<OrderLine> lines, decimal freight, decimal taxRate, int moneyDecimals = 2)
    {
        if (Problems(lines, freight, taxRate) is [var first, ..])
        {
            throw new ArgumentException(first, nameof(lines));
        }

        decimal InCoins(decimal money) => decimal.Round(money, moneyDecimals, MidpointRounding.AwayFromZero);
        _ = Apportionment.Coin(moneyDecimals);
        var sums = lines.Select(l => InCoins(l.Quantity * l.UnitPrice * (1m - l.Discount))).ToList();
        var goods = sums.Sum();
        var carried = InCoins(freight);
        var tax = InCoins((goods + carried) * taxRate);
        return new OrderTotals(sums, goods, carried, tax, goods + carried + tax);
    }

    /// <summary>Why an order cannot be summed as typed, in sentences; empty when it can.</summary>
    public static IReadOnlyList<string> Problems(IReadOnlyList<OrderLine> lines, decimal freight, decimal taxRate)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var problems = new List<string>();
        if (lines.Count == 0)
        {
            problems.Add("The order has no lines.");
        }

        problems.AddRange(lines.Where(l => l.Quantity <= 0).Select(l => $"{l.Name}: order more than nothing."));
        problems.AddRange(lines.Where(l => l.UnitPrice < 0).Select(l => $"{l.Name}: the price is below zero."));
        problems.AddRange(lines.Where(l => l.Discount is < 0 or > 1).Select(l => $"{l.Name}: a discount is between 0 % and 100 %."));
        if (freight < 0)
        {
            problems.Add("Freight is below zero.");
        }

        if (taxRate is < 0 or > 1)
        {
            problems.Add("Tax is between 0 % and 100 %.");
        }

        return problems;
    }

    /// <summary>What of a line is still to come: ordered less received, and never below zero when more came.</summary>
    public static decimal Outstanding(decimal ordered, IEnumerable<decimal> received) => Math.Max(0m, ordered - received.Sum());
}
