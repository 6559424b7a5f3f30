namespace MakerStudio.Core.Prices;

/// <summary>One size of a product, to be costed before a batch of it exists.</summary>
/// <param name="Millilitres">Nominal content.</param>
/// <param name="Packaging">Money of all packaging of one unit.</param>
/// <param name="Minutes">Hands-on minutes for one unit.</param>
public sealed record SizePlan(string Name, decimal Millilitres, decimal Packaging, decimal Minutes);

/// <summary>What all sizes share.</summary>
/// <param name="LiquidPerMillilitre">Cost of the bulk product, not rounded.</param>
/// <param name="Overfill">A fraction: 0.006 is 0.6 % more than nominal.</param>
/// <param name="OverheadPerUnit">Money.</param>
public sealed record SizeRates(decimal LiquidPerMillilitre, decimal Overfill, decimal LabourPerMinute, decimal OverheadPerUnit);

/// <summary>Not rounded.</summary>
public sealed record SizeCost(SizePlan Size, decimal Liquid, decimal Packaging, decimal Labour, decimal Overhead)
{
    public decimal Total => Liquid + Packaging + Labour + Overhead;

    /// <exception cref="ArgumentOutOfRangeException">Anything is below zero.</exception>
    public static SizeCost Of(SizePlan size, SizeRates rates)
    {
        ArgumentNullException.ThrowIfNull(size);
        ArgumentNullException.ThrowIfNull(rates);
        foreach (var amount in new[] { size.Millilitres, size.Packaging, size.Minutes, rates.LiquidPerMillilitre, rates.Overfill, rates.LabourPerMinute, rates.OverheadPerUnit })
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(amount, 0m, nameof(size));
        }

        return new SizeCost(
            size, size.Millilitres * rates.LiquidPerMillilitre * (1m + rates.Overfill), size.Packaging,
            size.Minutes * rates.LabourPerMinute, rates.OverheadPerUnit);
    }
}

/// <summary>A rung: what one unit of a size costs.</summary>
public sealed record LadderSize(string Name, decimal UnitCost);

/// <param name="Prices">One for each channel, in the order asked for.</param>
public sealed record LadderRow(LadderSize Size, IReadOnlyList<(Channel Channel, PriceResult Price)> Prices);

/// <summary>Prices of every size in every channel for one target.</summary>
public static class PriceLadder
{
    /// <exception cref="ArgumentException">As <see cref="TargetPrice.Of"/>.</exception>
    public static IReadOnlyList<LadderRow> Of(
        IReadOnlyList<LadderSize> sizes, IReadOnlyList<Channel> channels, PriceTarget target, TagRounding rounding) =>
        [.. sizes.Select(size => new LadderRow(
            size, [.. channels.Select(channel => (channel, TargetPrice.Of(size.UnitCost, target, channel, rounding)))]))];
}
