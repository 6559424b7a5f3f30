using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

public class BreakEvenTests
{
    [Fact]
    public void Of_StallDay_W5()
    {
        var unit = Pricing.At(22.00m, QuinceYard.Cost, QuinceYard.Stall);
        Assert.Equal(0.385m, Math.Round(unit.Fees[0].Amount, 20));
        Assert.Equal(13.4383m, Math.Round(unit.Contribution, 4));
        var day = Assert.IsType<BreakEvenResult.From>(BreakEven.Of(
            [new("Pitch", 85m), new("Fuel", 20m), new("7 hours", 7 * 18m)], unit.Contribution));
        Assert.Equal(231.00m, day.Fixed);
        Assert.Equal(17.19m, Math.Round(day.Exact, 2));
        Assert.Equal(18, day.Units);
        Assert.Equal(10.89m, Math.Round(day.LeftOver, 2));
    }

    [Fact]
    public void Of_ComesOutExactly_NeedsNoUnitMore() =>
        Assert.Equal(3, Assert.IsType<BreakEvenResult.From>(BreakEven.Of([new("Pitch", 1m)], 1m / 3m + 0.0000000000000000000000000001m)).Units);

    [Fact]
    public void Of_EachUnitLosesMoney_Never() =>
        Assert.IsType<BreakEvenResult.Never>(BreakEven.Of([new("Pitch", 1m)], 0m));

    [Fact]
    public void Of_NoFixedCost_IsNoUnits() =>
        Assert.Equal(0, Assert.IsType<BreakEvenResult.From>(BreakEven.Of([], -1m)).Units);
}
