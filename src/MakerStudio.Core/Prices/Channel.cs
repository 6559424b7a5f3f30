namespace MakerStudio.Core.Prices;

/// <summary>What a percentage fee is charged on.</summary>
public enum FeeBasis
{
    /// <summary>On all that is paid to us, tax in it. Marketplaces and card readers usually do this (common practice, no source).</summary>
    Paid,

    /// <summary>On what is left of it without tax.</summary>
    Net,
}

/// <summary>One fee of a channel, on each unit sold.</summary>
/// <param name="Rate">A fraction: 0.029 is 2.9 %.</param>
/// <param name="Fixed">Money on each unit sold, on top of the rate.</param>
public sealed record ChannelFee(string Name, decimal Rate, decimal Fixed, FeeBasis Basis);

/// <summary>A way to sell.</summary>
/// <param name="Tax">On the tag a buyer sees.</param>
/// <param name="CostPerUnit">What each unit sold here costs besides its making: a mailer, a bag.</param>
/// <param name="OurShare">
/// Part of the net that is ours: 1 when we sell ourselves, 0.5 when a shop buys at half the net, 0.6 on consignment
/// at 40 % commission. Above 0, at most 1.
/// </param>
public sealed record Channel(
    string Name, SalesTax Tax, IReadOnlyList<ChannelFee> Fees, decimal CostPerUnit = 0m, decimal OurShare = 1m)
{
    /// <summary>A shop that buys from us at a discount off the net retail price.</summary>
    /// <param name="discount">A fraction of the net; 0.5 leaves half.</param>
    public static Channel Wholesale(string name, SalesTax tax, decimal discount = 0.5m) => new(name, tax, [], 0m, 1m - discount);

    /// <summary>A shop that sells for us and keeps a commission on the net.</summary>
    /// <param name="commission">A fraction of the net.</param>
    public static Channel Consignment(string name, SalesTax tax, decimal commission) => new(name, tax, [], 0m, 1m - commission);

    /// <summary>Why nothing can be priced with this channel, in sentences; empty when it can.</summary>
    public IReadOnlyList<string> Problems()
    {
        var problems = new List<string>();
        if (OurShare is <= 0 or > 1)
        {
            problems.Add($"{Name}: our part of the net is above 0 % and at most 100 %.");
        }

        if (CostPerUnit < 0)
        {
            problems.Add($"{Name}: the cost of each sale is below zero.");
        }

        problems.AddRange(Fees.Where(f => f.Rate is < 0 or > 1).Select(f => $"{Name}: {f.Name} is between 0 % and 100 %."));
        problems.AddRange(Fees.Where(f => f.Fixed < 0).Select(f => $"{Name}: {f.Name} is below zero."));
        return problems;
    }

    /// <summary>Money of each unit sold that does not depend on the tag.</summary>
    internal decimal FixedPerUnit => CostPerUnit + Fees.Sum(f => f.Fixed);

    /// <summary>Our revenue ÷ tag, times <see cref="SalesTax.TagPerNet"/>, less the percentage fees: exact, never divided.</summary>
    internal decimal KeptOfTag => OurShare * (1m - Fees.Sum(f => f.Rate * PerNet(f)));

    internal decimal PerNet(ChannelFee fee) => fee.Basis == FeeBasis.Paid ? Tax.WithTax : 1m;

    internal void Require()
    {
        if (Problems() is [var first, ..])
        {
            throw new ArgumentException(first);
        }
    }
}
