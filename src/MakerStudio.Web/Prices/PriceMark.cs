using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Prices;

/// <summary>A price on the rule from cost to tag.</summary>
/// <param name="At">Money.</param>
/// <param name="IsMain">Named on a phone too.</param>
/// <param name="IsLimit">Drawn as a limit that was chosen.</param>
public sealed record PriceMark(decimal At, string Says, bool IsMain = false, bool IsLimit = false)
{
    public string Words => $"{Written.Money(At)} {Says}";
}

/// <summary>A mark with the lane its words stand in, 0 next to the bar.</summary>
public sealed record PlacedMark(PriceMark Mark, int Lane, bool IsLeft);

/// <summary>What a tag in a channel is made of, and the prices worth knowing beside it.</summary>
public sealed record PriceAnatomy(PricedUnit Unit, IReadOnlyList<BarPiece> Pieces, IReadOnlyList<PriceMark> Marks, IReadOnlyList<PriceMark> Guides)
{
    // A letter of 13 px on a rule of about 700 px: a tablet's.
    private const decimal LetterWidth = 0.01m;

    // What is also named on a phone needs room there: about a fifth of its width.
    private const decimal FarRight = 0.8m;

    /// <summary>What a buyer hands over: the tag, with the tax where it comes on top.</summary>
    public decimal Paid => Unit.Channel.Tax.PaidFor(Unit.Tag);

    public decimal Fees => Unit.Fees.Sum(f => f.Amount) + Unit.Channel.CostPerUnit;

    /// <summary>What the unit costs and the channel charges beyond our part of the price.</summary>
    public bool LosesMoney => Unit.Contribution < 0;

    /// <summary>What is paid in its parts; they add up to it.</summary>
    public IEnumerable<(string Name, decimal Amount)> Rows()
    {
        yield return ("Cost", Unit.UnitCost);
        foreach (var fee in Unit.Fees)
        {
            yield return (fee.Name, fee.Amount);
        }

        if (Unit.Channel.CostPerUnit != 0)
        {
            yield return ("The sale itself", Unit.Channel.CostPerUnit);
        }

        yield return ("Left for you", Unit.Contribution);
        if (Unit.Net != Unit.Revenue)
        {
            yield return ("The shop’s part", Unit.Net - Unit.Revenue);
        }

        yield return ("Tax", Paid - Unit.Net);
    }

    public Rule Scale => Rule.UpTo(Math.Max(Paid, Pieces.Sum(p => p.Value)));

    /// <param name="floor">A fraction; null when none is watched.</param>
    public static PriceAnatomy Of(decimal tag, decimal unitCost, ChannelRow channel, decimal? floor, TagRounding rounding)
    {
        ArgumentNullException.ThrowIfNull(channel);
        var unit = Pricing.At(tag, unitCost, channel.Is);
        var paid = channel.Is.Tax.PaidFor(tag);
        List<PriceMark> marks = [new(unitCost, "cost", true), new(unit.Net, channel.IsOwn ? "net" : "net, shop’s part in it"), new(tag, "tag", true)];
        if (!channel.IsOwn)
        {
            marks.Add(new(unit.Revenue, "ours"));
        }

        if (TargetPrice.Of(unitCost, new PriceTarget.Contribution(channel.Wanted), channel.Is, rounding) is PriceResult.Found safe)
        {
            marks.Add(new(safe.Tag, "lowest safe tag"));
        }

        if (floor is { } least && channel.IsOwn && TargetPrice.Of(unitCost, new PriceTarget.Margin(least), channel.Is, rounding) is PriceResult.Found held)
        {
            marks.Add(new(held.Tag, $"tag at your floor, {Written.Percent(least)} %", IsLimit: true));
        }

        var (wholesale, retail) = Margins.Keystone(unitCost);
        return new PriceAnatomy(
            unit, PiecesOf(unit, paid), [.. marks.OrderBy(m => m.At)], [new(wholesale, "keystone, to shops"), new(retail, "keystone, to people, net")]);
    }

    private static IReadOnlyList<BarPiece> PiecesOf(PricedUnit unit, decimal paid)
    {
        var fees = unit.Fees.Sum(f => f.Amount) + unit.Channel.CostPerUnit;
        BarPiece[] pieces =
        [
            new("cost", unit.UnitCost, Series.Packaging), new("fees and sale", fees, Series.Fees), new("left for you", Math.Max(0m, unit.Contribution), Series.Left),
            new("the shop’s part", Math.Max(0m, unit.Net - unit.Revenue), Series.Shop), new("tax", paid - unit.Net, Series.Tax),
        ];
        return unit.Contribution < 0 ? [.. pieces[..2].Where(p => p.Value > 0)] : [.. pieces.Where(p => p.Value > 0)];
    }

    /// <summary>Puts words into lanes so that none lies on another; what stands far right is read from its left.</summary>
    public static IReadOnlyList<PlacedMark> Place(IReadOnlyList<PriceMark> marks, Rule scale)
    {
        ArgumentNullException.ThrowIfNull(marks);
        ArgumentNullException.ThrowIfNull(scale);
        var lanes = new List<decimal>();
        var placed = new List<PlacedMark>();
        foreach (var mark in marks.Where(m => m.At <= scale.To).OrderByDescending(m => m.At))
        {
            var (at, width) = (scale.Share(mark.At), (mark.Words.Length + 2) * LetterWidth);
            var isLeft = at + width > 1m || (mark.IsMain && at > FarRight);
            // Going from the right, a lane is free where what stands in it begins further right than these words end.
            var (begin, end) = isLeft ? (at - width, at) : (at, at + width);
            var lane = lanes.FindIndex(taken => taken >= end);
            if (lane < 0)
            {
                lane = lanes.Count;
                lanes.Add(0m);
            }

            lanes[lane] = begin;
            placed.Add(new PlacedMark(mark, lane, isLeft));
        }

        return placed;
    }
}
