using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

public class TargetPriceTests
{
    private static readonly TagRounding Cents = new();

    [Fact]
    public void Of_ContributionWanted_W4()
    {
        var found = Found(TargetPrice.Of(QuinceYard.Cost, new PriceTarget.Contribution(6.00m), QuinceYard.Web, Cents));
        Assert.Equal(15.3652m, Math.Round(found.ExactTag, 4));
        Assert.Equal(15.37m, found.Tag);
        Assert.Equal(6.0036m, Math.Round(found.Unit.Contribution, 4));
        Assert.Equal(15.36m, found.CoinLess!.Tag);
        Assert.Equal(5.9962m, Math.Round(found.CoinLess.Contribution, 4));
    }

    [Theory]
    [InlineData("0.00", "16.00")]
    [InlineData("0.50", "15.50")]
    [InlineData("0.90", "15.90")]
    [InlineData("0.95", "15.95")]
    [InlineData("0.99", "15.99")]
    public void Of_WithAPriceEnding_GoesUpToIt(string ending, string tag) =>
        Assert.Equal(Numbers.Of(tag), Found(TargetPrice.Of(
            QuinceYard.Cost, new PriceTarget.Contribution(6.00m), QuinceYard.Web, new TagRounding(2, Numbers.Of(ending)))).Tag);

    [Fact]
    public void Up_AboveTheEnding_TakesTheNextWhole()
    {
        Assert.Equal(16.50m, new TagRounding(2, 0.50m).Up(15.51m));
        Assert.Equal(15.50m, new TagRounding(2, 0.50m).Up(15.50m));
        Assert.Equal(15m, new TagRounding(2, 0.00m).Up(15.00m));
        Assert.Equal(16m, new TagRounding(0).Up(15.01m));
    }

    [Fact]
    public void TagRounding_EndingFinerThanTheCoin_Throws() =>
        Assert.Throws<ArgumentException>(() => new TagRounding(0, 0.99m));

    [Fact]
    public void Of_MarginThatComesOutExactly_NeedsNoCoinMore()
    {
        // Own sum: 6.00 ÷ (1 − 0.4) × 1.2 = 12.00.
        var found = Found(TargetPrice.Of(6.00m, new PriceTarget.Margin(0.40m), QuinceYard.Direct, Cents));
        Assert.Equal(12.00m, found.Tag);
        Assert.True(found.CoinLess!.Margin < 0.40m);
    }

    [Fact]
    public void Of_Markup_W3() =>
        Assert.Equal(11.28m, Found(TargetPrice.Of(
            QuinceYard.Cost, new PriceTarget.Markup(1.50m), new Channel("No tax", SalesTax.None, []), Cents)).Tag);

    [Fact]
    public void Of_Keystone_IsOneTagForPeopleAndShops()
    {
        var people = Found(TargetPrice.Of(QuinceYard.Cost, new PriceTarget.Keystone(), QuinceYard.Direct, Cents));
        var shops = Found(TargetPrice.Of(QuinceYard.Cost, new PriceTarget.Keystone(), Channel.Wholesale("Shops", QuinceYard.Tax20), Cents));
        Assert.Equal(21.65m, people.Tag);
        Assert.Equal(people.Tag, shops.Tag);
        Assert.Equal(18.04m, Math.Round(people.Unit.Revenue, 2));
        Assert.Equal(9.02m, Math.Round(shops.Unit.Revenue, 2));
    }

    [Fact]
    public void Of_FeesTakeAllOfIt_SaysSo()
    {
        var greedy = QuinceYard.Web with { Fees = [new("All", 0.9m, 0, FeeBasis.Paid)] };
        var none = Assert.IsType<PriceResult.NoPrice>(TargetPrice.Of(1m, new PriceTarget.Contribution(0m), greedy, Cents));
        Assert.Equal("Web takes the whole price in fees, so no tag leaves anything.", none.Says);
    }

    [Fact]
    public void Of_MarginOfAllOfIt_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TargetPrice.Of(1m, new PriceTarget.Margin(1m), QuinceYard.Web, Cents));

    internal static PriceResult.Found Found(PriceResult result) => Assert.IsType<PriceResult.Found>(result);
}
