using MakerStudio.Core.Buying;

namespace MakerStudio.Core.Tests.Buying;

public class PriceTrendTests
{
    private static PricePoint On(int day, decimal cost) => new(new DateOnly(2026, 10, day), cost);

    // Own sums: 0.050 to 0.056 is 12 % more; 0.070 to 0.056 is 20 % less.
    [Fact]
    public void Of_SeveralPrices_ComparesTheLastWithTheFirstAndTheOneBefore()
    {
        var trend = PriceTrend.Of([On(1, 0.050m), On(8, 0.070m), On(20, 0.056m)])!;

        Assert.Equal((0.12m, -0.2m), (trend.SinceFirst, trend.SinceBefore));
        Assert.Equal((1, 8, 20), (trend.Lowest.On.Day, trend.Highest.On.Day, trend.Last.On.Day));
    }

    [Fact]
    public void Of_OneOrNone_HasNothingToCompareWith()
    {
        var one = PriceTrend.Of([On(1, 0.05m)])!;

        Assert.Equal((null, null, one.First), ((decimal?)one.SinceFirst, (decimal?)one.SinceBefore, one.Last));
        Assert.Null(PriceTrend.Of([]));
    }

    [Fact]
    public void Of_FreeAtFirst_SaysNoShare()
    {
        var trend = PriceTrend.Of([On(1, 0m), On(2, 0.05m)])!;

        Assert.Null(trend.SinceFirst);
        Assert.Equal(0m, trend.Lowest.UnitCost);
    }

    [Fact]
    public void Of_EqualPrices_NamesTheLatest()
    {
        var trend = PriceTrend.Of([On(1, 0.05m), On(2, 0.05m)])!;

        Assert.Equal((2, 2, 0m), (trend.Lowest.On.Day, trend.Highest.On.Day, trend.SinceFirst));
    }

    [Theory]
    [InlineData(1.10, null)]
    [InlineData(1.11, 0.11)]
    [InlineData(0.5, null)]
    public void Above_OnlyWhatIsMoreThanATenthOver_IsSaid(double price, double? by) =>
        Assert.Equal((decimal?)by, PriceTrend.Above((decimal)price, 1m));

    [Fact]
    public void Above_ReckonedAsFree_SaysNothing() => Assert.Null(PriceTrend.Above(1m, 0m));
}
