using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Prices;

public sealed record ChargedFee(string Name, decimal Amount);

/// <summary>What one unit sold through one channel comes to; nothing is rounded.</summary>
/// <param name="Tag">The price a buyer sees.</param>
/// <param name="Net">Tag without tax.</param>
/// <param name="Revenue">Our part of the net: all of it when we sell ourselves.</param>
/// <param name="Paid">Revenue with its tax: what percentage fees are often charged on.</param>
/// <param name="Contribution">Revenue − fees − cost of the sale − cost of the unit.</param>
public sealed record PricedUnit(
    Channel Channel,
    decimal Tag,
    decimal Net,
    decimal Revenue,
    decimal Paid,
    IReadOnlyList<ChargedFee> Fees,
    decimal UnitCost,
    decimal Contribution,
    IReadOnlyList<WorkingStep> Workings)
{
    /// <summary>The tax in what is paid to us; it is passed on.</summary>
    public decimal Tax => Paid - Revenue;

    /// <summary>(revenue − unit cost) ÷ revenue, before fees; null when there is no revenue.</summary>
    public decimal? Margin => Margins.Margin(Revenue, UnitCost);

    /// <summary>(revenue − unit cost) ÷ unit cost, before fees; null when the unit costs nothing.</summary>
    public decimal? Markup => Margins.Markup(Revenue, UnitCost);

    /// <summary>Contribution ÷ revenue: what is left after fees too; null when there is no revenue.</summary>
    public decimal? LeftOfRevenue => Revenue == 0 ? null : Contribution / Revenue;
}

/// <summary>Works a tag through tax, the shop's part, fees and cost.</summary>
public static class Pricing
{
    internal const string Rule = "Price of a unit";
    internal static readonly Source Definition = new("definition of net, margin and contribution", DataStatus.Derived);

    /// <param name="tag">0 or more.</param>
    /// <param name="unitCost">Cost of one saleable unit, 0 or more, not rounded.</param>
    /// <exception cref="ArgumentException">The channel has <see cref="Channel.Problems"/>, or an amount is below zero.</exception>
    public static PricedUnit At(decimal tag, decimal unitCost, Channel channel)
    {
        ArgumentNullException.ThrowIfNull(channel);
        ArgumentOutOfRangeException.ThrowIfLessThan(tag, 0m);
        ArgumentOutOfRangeException.ThrowIfLessThan(unitCost, 0m);
        channel.Require();
        var net = channel.Tax.NetOf(tag);
        var revenue = net * channel.OurShare;
        var fees = channel.Fees.Select(f => new ChargedFee(f.Name, f.Rate * channel.PerNet(f) * revenue + f.Fixed)).ToList();
        // Multiplied out before the one division, so that a tag that just reaches a wanted sum is seen to reach it.
        var contribution = (tag * channel.KeptOfTag - channel.Tax.TagPerNet * (channel.FixedPerUnit + unitCost)) / channel.Tax.TagPerNet;
        return new PricedUnit(
            channel, tag, net, revenue, revenue * channel.Tax.WithTax, fees, unitCost, contribution,
            [.. Steps(tag, net, revenue, channel, fees, unitCost, contribution)]);
    }

    private static IEnumerable<WorkingStep> Steps(
        decimal tag, decimal net, decimal revenue, Channel channel, List<ChargedFee> fees, decimal unitCost, decimal contribution)
    {
        var tax = channel.Tax;
        yield return Step(tax.Basis == TaxBasis.InTag
            ? (FormattableString)$"Tag {tag:0.00} ÷ {tax.WithTax:0.####}: {net:0.0000} net."
            : (FormattableString)$"Tax of {100 * tax.Rate:0.####} % is added at the till, so the tag of {tag:0.00} is net.");
        if (channel.OurShare != 1m)
        {
            yield return Step($"{channel.Name} leaves us {100 * channel.OurShare:0.##} % of the net: {revenue:0.0000}.");
        }

        foreach (var (fee, charged) in channel.Fees.Zip(fees))
        {
            var from = revenue * channel.PerNet(fee);
            yield return Step($"{fee.Name}: {100 * fee.Rate:0.####} % of {from:0.0000} and {fee.Fixed:0.00}: {charged.Amount:0.0000}.");
        }

        if (channel.CostPerUnit != 0)
        {
            yield return Step($"Each unit sold costs {channel.CostPerUnit:0.00} more.");
        }

        yield return Step($"{revenue:0.0000} − fees {fees.Sum(f => f.Amount):0.0000} − sale {channel.CostPerUnit:0.00} − unit {unitCost:0.0000}: {contribution:0.0000} left.");
        if (Margins.Margin(revenue, unitCost) is { } margin)
        {
            yield return Step($"Margin ({revenue:0.0000} − {unitCost:0.0000}) ÷ {revenue:0.0000}: {100 * margin:0.0} % before fees.");
        }
    }

    private static WorkingStep Step(FormattableString says) => new(Rule, says, Definition);
}
