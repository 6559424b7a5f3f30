using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Stock;

/// <summary>What one unit is expected to bring in the ordinary course of business.</summary>
/// <param name="SellingPrice">Net, 0 or more.</param>
/// <param name="ToComplete">What finishing it still costs, 0 or more.</param>
/// <param name="ToSell">What selling it costs, 0 or more.</param>
public sealed record RealisableEstimate(decimal SellingPrice, decimal ToComplete, decimal ToSell)
{
    /// <summary>Price − completion − sale, and never below zero: stock that costs money to be rid of is worth nothing.</summary>
    public decimal PerUnit => Math.Max(0m, SellingPrice - ToComplete - ToSell);
}

/// <summary>Stock carried at the lower of its cost and what it will bring.</summary>
/// <param name="Cost">Under the method of the books.</param>
/// <param name="WriteDown">Cost less what it is carried at, 0 or more; an expense of the period.</param>
/// <param name="Change">Against the write-down there was: above 0 an expense, below 0 taken back.</param>
public sealed record CarriedStock(decimal Quantity, decimal Cost, decimal CarriedAt, decimal WriteDown, decimal Change, IReadOnlyList<WorkingStep> Workings);

/// <summary>
/// Lower of cost and net realisable value, item by item. A write-down is taken back when the value recovers, up to
/// what was written down and no further.
/// </summary>
public static class NetRealisable
{
    /// <summary>Common wording of IAS 2 paragraphs 6, 9, 28 to 33, read in accounts of the standard.</summary>
    public static readonly Source Rule = new("IAS 2 Inventories, paragraphs 6, 9 and 28 to 33", DataStatus.Secondary);

    /// <summary>What a page says beside a material: paragraph 32, read second-hand.</summary>
    public const string MaterialNote =
        "A material is not written down while the products it goes into are expected to sell at or above their cost.";

    /// <param name="quantity">Above 0.</param>
    /// <param name="writtenDown">What this stock has been written down by so far, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is outside its range.</exception>
    public static CarriedStock Of(decimal quantity, decimal cost, RealisableEstimate estimate, decimal writtenDown = 0m)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(quantity, 0m);
        foreach (var amount in new[] { cost, estimate.SellingPrice, estimate.ToComplete, estimate.ToSell, writtenDown })
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(amount, 0m, nameof(estimate));
        }

        var brings = quantity * estimate.PerUnit;
        var carried = Math.Min(cost, brings);
        var down = cost - carried;
        return new CarriedStock(quantity, cost, carried, down, down - writtenDown,
            [
                new("Net realisable value", $"{estimate.SellingPrice:0.00} − {estimate.ToComplete:0.00} to complete − {estimate.ToSell:0.00} to sell: {estimate.PerUnit:0.00} a unit, {brings:0.00} in all.", Rule),
                new("Lower of cost and net realisable value", $"Cost {cost:0.00}, carried at {carried:0.00}: written down by {down:0.00}.", Rule),
            ]);
    }

    /// <summary>The part of a write-down that still belongs to what is left of the stock it was made on.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More is left than was written down.</exception>
    public static decimal StillHeld(decimal quantityThen, decimal writeDown, decimal quantityLeft) =>
        new ValuePool(quantityThen, writeDown).Take(quantityLeft).Taken.Value;
}
