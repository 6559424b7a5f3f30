using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

public class PriceLadderTests
{
    private static readonly SizeRates Rates = new(0.0132577m, 0.006m, 0.30m, 0.35m);

    [Theory]
    [InlineData("30 mL", "30", "1.29", "1.6", "0.4001", "2.5201", "7.20", "8.64")]
    [InlineData("100 mL", "100", "1.8348", "2.7", "1.3337", "4.3285", "12.37", "14.84")]
    [InlineData("250 mL", "250", "2.71", "4.0", "3.3343", "7.5943", "21.70", "26.04")]
    public void Of_MarginOf65Percent_W6(
        string name, string millilitres, string packaging, string minutes, string liquid, string cost, string net, string tag)
    {
        var size = SizeCost.Of(new SizePlan(name, Numbers.Of(millilitres), Numbers.Of(packaging), Numbers.Of(minutes)), Rates);
        Assert.Equal(Numbers.Of(liquid), Math.Round(size.Liquid, 4));
        Assert.Equal(Numbers.Of(cost), Math.Round(size.Total, 4));
        var row = Assert.Single(PriceLadder.Of(
            [new(name, size.Total)], [QuinceYard.Direct, QuinceYard.Web], new PriceTarget.Margin(0.65m), new TagRounding()));
        var found = TargetPriceTests.Found(row.Prices[0].Price);
        Assert.Equal(Numbers.Of(net), Math.Round(QuinceYard.Tax20.NetOf(found.ExactTag), 2));
        Assert.Equal(Numbers.Of(tag), Math.Round(found.ExactTag, 2));
        // The tag to write is the next coin up: the nearest one would miss the margin by a hair.
        Assert.InRange(found.Tag - found.ExactTag, 0m, 0.01m);
        Assert.True(found.Unit.Margin >= 0.65m);
        Assert.Equal(["Direct", "Web"], row.Prices.Select(p => p.Channel.Name));
    }

    [Fact]
    public void SizeCost_BelowZero_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SizeCost.Of(new SizePlan("30 mL", 30m, -1m, 1m), Rates));
}
