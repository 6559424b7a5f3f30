using MakerStudio.Core.Curing;
using MakerStudio.Core.Products;

namespace MakerStudio.Core.Tests.Curing;

/// <summary>Swirl daily for three days; dry matter every three days; stop once ready. Common practice, no source.</summary>
public class MovingTests
{
    private static readonly DateOnly Started = new(2026, 10, 24);

    [Theory]
    [InlineData(24, 25)]
    [InlineData(25, 25)]
    [InlineData(26, 26)]
    [InlineData(27, 27)]
    public void NextOn_Liquid_IsSwirledOnEachOfThreeDays(int today, int expected) =>
        Assert.Equal(new DateOnly(2026, 10, expected), Moving.SwirlLiquid.NextOn(Started, new DateOnly(2026, 10, today), ready: false));

    [Fact]
    public void NextOn_LiquidOnTheFourthDay_HasEnded() =>
        Assert.Null(Moving.SwirlLiquid.NextOn(Started, Started.AddDays(4), ready: false));

    [Theory]
    [InlineData(0, 3)]
    [InlineData(3, 3)]
    [InlineData(4, 6)]
    [InlineData(40, 42)]
    public void NextOn_DryMatter_IsShakenEveryThirdDayForAsLongAsItRests(int daysRested, int expected) =>
        Assert.Equal(Started.AddDays(expected), Moving.ShakeDryMatter.NextOn(Started, Started.AddDays(daysRested), ready: false));

    [Fact]
    public void NextOn_Ready_IsLeftAlone() => Assert.Null(Moving.ShakeDryMatter.NextOn(Started, Started.AddDays(1), ready: true));

    [Fact]
    public void NextOn_CalendarSetBack_StillNamesTheFirstDay() =>
        Assert.Equal(Started.AddDays(1), Moving.SwirlLiquid.NextOn(Started, Started.AddDays(-2), ready: false));

    [Fact]
    public void Kinds_WhatIsPoured_IsLeftAloneAndSachetsAreShaken()
    {
        Assert.Equal(["container-candle", "wax-melt"], ProductKinds.All.Where(k => k.Moving is null).Select(k => k.Key));
        Assert.Equal(["sachet"], ProductKinds.All.Where(k => k.Moving == Moving.ShakeDryMatter).Select(k => k.Key));
    }
}
