using CsCheck;
using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Properties;

public class PriceProperties
{
    private static readonly Gen<decimal> Money = Gen.Int[0, 20_000].Select(cents => cents / 100m);

    private static readonly Gen<decimal> Rate = Gen.Int[0, 150].Select(permille => permille / 1000m);

    private static readonly Gen<Channel> AnyChannel = Gen.Select(
        Gen.Int[0, 30], Gen.Enum<TaxBasis>(), Gen.Select(Rate, Money, Gen.Enum<FeeBasis>()).Array[0, 3], Money, Gen.Int[1, 100],
        (tax, basis, fees, perUnit, share) => new Channel(
            "Any", new SalesTax(tax / 100m, basis),
            [.. fees.Select((f, i) => new ChannelFee($"{i}", f.Item1, f.Item2 / 100m, f.Item3))], perUnit / 100m, share / 100m));

    [Fact]
    public void LowestSafePrice_ReachesTheContribution_AndOneCentLessDoesNot() =>
        Gen.Select(Money, Money, AnyChannel).Sample((cost, wanted, channel) =>
        {
            var found = (PriceResult.Found)TargetPrice.Of(cost, new PriceTarget.Contribution(wanted), channel, new TagRounding());
            return Keeps(found.Tag, cost, channel, wanted) && (found.Tag == 0 || !Keeps(found.Tag - 0.01m, cost, channel, wanted));
        });

    [Fact]
    public void PriceEnding_NeverFallsBelowTheSafePrice_AndIsTheNextOne() =>
        Gen.Select(Money, Gen.Int[0, 4].Select(i => TagRounding.UsualEndings[i])).Sample((price, ending) =>
        {
            var tag = new TagRounding(2, ending).Up(price);
            return tag >= price && tag - price < 1m && tag % 1m == ending;
        });

    [Fact]
    public void TagForAMargin_HasIt_AndOneCentLessHasNot() =>
        Gen.Select(Gen.Int[1, 20_000], Gen.Int[0, 95], AnyChannel).Sample((cents, percent, channel) =>
        {
            var (cost, margin) = (cents / 100m, percent / 100m);
            var found = (PriceResult.Found)TargetPrice.Of(cost, new PriceTarget.Margin(margin), channel, new TagRounding());
            return Has(found.Tag, cost, channel, margin) && !Has(found.Tag - 0.01m, cost, channel, margin);
        });

    [Fact]
    public void EveryCoinOfATag_GoesSomewhere() =>
        Gen.Select(Money, Money, AnyChannel).Sample((tag, cost, channel) =>
        {
            var unit = Pricing.At(tag, cost, channel);
            var parts = unit.Contribution + unit.UnitCost + channel.CostPerUnit + unit.Fees.Sum(f => f.Amount);
            return Math.Abs(parts - unit.Revenue) < 1e-18m && Math.Abs(unit.Revenue / channel.OurShare - unit.Net) < 1e-18m;
        });

    [Fact]
    public void FloorAlert_SpeaksWhenTheMarginIsUnder_AndItsTagSilencesIt() =>
        Gen.Select(Gen.Int[1, 20_000], Gen.Int[1, 5_000], Gen.Int[0, 95], AnyChannel).Sample((tag, cost, floor, channel) =>
        {
            var unit = Pricing.At(tag / 100m, cost / 100m, channel);
            var alert = MarginFloor.Check("Any", unit, floor / 100m, new TagRounding());
            return alert is null
                ? Has(unit.Tag, unit.UnitCost, channel, floor / 100m)
                : !Has(unit.Tag, unit.UnitCost, channel, floor / 100m)
                    && MarginFloor.Check("Any", ((PriceResult.Found)alert.RestoringTag).Unit, floor / 100m, new TagRounding()) is null;
        });

    // In ten-thousandths of whole numbers, another way than the code: no division, no decimal left over.
    private static bool Keeps(decimal tag, decimal cost, Channel channel, decimal wanted)
    {
        var withTax = 1m + channel.Tax.Rate;
        var perNet = channel.Tax.Basis == TaxBasis.InTag ? withTax : 1m;
        var left = tag * channel.OurShare;
        foreach (var fee in channel.Fees)
        {
            left -= tag * channel.OurShare * fee.Rate * (fee.Basis == FeeBasis.Paid ? withTax : 1m);
            left -= fee.Fixed * perNet;
        }

        return left - (channel.CostPerUnit + cost) * perNet >= wanted * perNet;
    }

    private static bool Has(decimal tag, decimal cost, Channel channel, decimal margin)
    {
        var perNet = channel.Tax.Basis == TaxBasis.InTag ? 1m + channel.Tax.Rate : 1m;
        var revenue = tag * channel.OurShare;
        return revenue - cost * perNet >= margin * revenue;
    }
}
