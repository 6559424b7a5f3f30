using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Prices;

/// <summary>What a price is to bring.</summary>
public abstract record PriceTarget
{
    private PriceTarget()
    {
    }

    /// <param name="Fraction">(revenue − cost) ÷ revenue before fees, from 0, below 1.</param>
    public sealed record Margin(decimal Fraction) : PriceTarget;

    /// <param name="Fraction">(revenue − cost) ÷ cost before fees, 0 or more.</param>
    public sealed record Markup(decimal Fraction) : PriceTarget;

    /// <summary>The net retail price is four times the cost, whoever sells. Common practice, no source.</summary>
    public sealed record Keystone : PriceTarget;

    /// <summary>The lowest safe price: what must be left of each unit after tax, fees, the sale and its cost.</summary>
    /// <param name="Amount">Money, may be 0.</param>
    public sealed record Contribution(decimal Amount) : PriceTarget;
}

/// <summary>A price for a target, or why there is none.</summary>
public abstract record PriceResult
{
    private PriceResult()
    {
    }

    /// <param name="ExactTag">Not rounded.</param>
    /// <param name="Unit">What the tag comes to.</param>
    /// <param name="CoinLess">The same one coin lower: there the target is missed, unless an ending lifted the tag.</param>
    public sealed record Found(decimal ExactTag, decimal Tag, PricedUnit Unit, PricedUnit? CoinLess, IReadOnlyList<WorkingStep> Workings) : PriceResult;

    /// <param name="Says">Why, in a sentence.</param>
    public sealed record NoPrice(string Says) : PriceResult;
}

/// <summary>Finds the lowest tag that reaches a target.</summary>
/// <remarks>
/// Every target says: tag × something reaches something else. With net = tag ÷ t (t = 1 + tax where the tax is in
/// the tag, else 1), s our share and k what percentage fees leave of the tag, contribution c is reached when
/// tag × k ≥ t × (fixed fees + cost of the sale + cost + c); margin m when tag × s × (1 − m) ≥ t × cost.
/// </remarks>
public static class TargetPrice
{
    private const string Rule = "Price for a target";

    /// <exception cref="ArgumentException">The channel has <see cref="Channel.Problems"/>, the cost is below zero, or the target is outside its range.</exception>
    public static PriceResult Of(decimal unitCost, PriceTarget target, Channel channel, TagRounding rounding)
    {
        ArgumentNullException.ThrowIfNull(channel);
        ArgumentNullException.ThrowIfNull(rounding);
        ArgumentOutOfRangeException.ThrowIfLessThan(unitCost, 0m);
        channel.Require();
        var (factor, wanted, says) = Condition(unitCost, target, channel);
        if (factor <= 0)
        {
            return new PriceResult.NoPrice($"{channel.Name} takes the whole price in fees, so no tag leaves anything.");
        }

        var exact = Math.Max(0m, wanted / factor);
        var tag = rounding.Lowest(factor, wanted);
        var unit = Pricing.At(tag, unitCost, channel);
        return new PriceResult.Found(
            exact, tag, unit, tag >= rounding.Coin ? Pricing.At(tag - rounding.Coin, unitCost, channel) : null,
            [
                new(Rule, says, Pricing.Definition),
                new(Rule, $"{wanted:0.0000} ÷ {factor:0.######}: {exact:0.0000}, up to the next tag that may be written: {tag:0.00}.", Pricing.Definition),
                .. unit.Workings,
            ]);
    }

    /// <summary>The target as: tag × factor ≥ wanted.</summary>
    private static (decimal Factor, decimal Wanted, FormattableString Says) Condition(decimal cost, PriceTarget target, Channel channel)
    {
        var t = channel.Tax.TagPerNet;
        var share = channel.OurShare;
        switch (target)
        {
            case PriceTarget.Margin(var margin):
                _ = Margins.NetAtMargin(cost, margin);
                return (share * (1m - margin), t * cost, $"Of each 1 of revenue a margin of {100 * margin:0.##} % leaves {1m - margin:0.####} for the cost of {cost:0.0000}.");
            case PriceTarget.Markup(var markup):
                ArgumentOutOfRangeException.ThrowIfLessThan(markup, 0m, nameof(target));
                return (share, t * cost * (1m + markup), $"Cost {cost:0.0000} and a markup of {100 * markup:0.##} %: {cost * (1m + markup):0.0000} net.");
            case PriceTarget.Keystone:
                return (1m, t * Margins.Keystone(cost).Retail, $"Cost {cost:0.0000} doubled for shops and doubled again for people: {Margins.Keystone(cost).Retail:0.0000} net.");
            case PriceTarget.Contribution(var amount):
                return (channel.KeptOfTag, t * (channel.FixedPerUnit + cost + amount),
                    $"{amount:0.00} wanted + fixed fees and sale {channel.FixedPerUnit:0.00} + cost {cost:0.0000}, over what tax and percentage fees leave of the tag.");
            default:
                throw new ArgumentOutOfRangeException(nameof(target));
        }
    }
}
