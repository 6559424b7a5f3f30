using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class BookYearTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");
    private static readonly FinancialYears April6 = new(4, 6, Berlin);

    [Theory]
    [InlineData("2026-04-05", "2025-04-06", "2026-04-05")]
    [InlineData("2026-04-06", "2026-04-06", "2027-04-05")]
    [InlineData("2026-12-31", "2026-04-06", "2027-04-05")]
    public void Of_Day(string day, string first, string last) =>
        Assert.Equal(new FinancialYear(DateOnly.Parse(first), DateOnly.Parse(last)), April6.Of(DateOnly.Parse(day)));

    [Theory]
    [InlineData("2026-12-31", "2026-01-01", "2026-12-31")]
    [InlineData("2027-04-05", "2027-01-01", "2027-04-05")]
    [InlineData("2027-04-06", "2027-04-06", "2028-04-05")]
    [InlineData("2028-09-30", "2028-04-06", "2028-09-30")]
    [InlineData("2028-10-01", "2028-10-01", "2029-09-30")]
    public void Of_DayAfterAnotherStart_YearBeforeIsShortAndOlderOnesStay(string day, string first, string last)
    {
        var years = new FinancialYears(1, 1, Berlin, [new(2027, 4, 6), new(2028, 10, 1)]);
        Assert.Equal(new FinancialYear(DateOnly.Parse(first), DateOnly.Parse(last)), years.Of(DateOnly.Parse(day)));
        Assert.Equal(95, years.Of(new DateOnly(2027, 1, 1)).Days);
    }

    [Theory]
    [InlineData("2026-11-25", "2027-04-06")]
    [InlineData("2026-04-05", "2026-04-06")]
    [InlineData("2026-04-06", "2027-04-06")]
    public void NextStart_IsAlwaysToCome(string after, string next) =>
        Assert.Equal(DateOnly.Parse(next), FinancialYears.NextStart(4, 6, DateOnly.Parse(after)));

    [Fact]
    public void EndOf_IsTheLastInstantOnTheStudiosCalendar()
    {
        var end = new FinancialYears(1, 1, Berlin).EndOf(new DateOnly(2026, 12, 31));
        Assert.Equal(new DateTimeOffset(2026, 12, 31, 23, 0, 0, TimeSpan.Zero).AddTicks(-1), end);
        Assert.Equal(new DateOnly(2026, 1, 1), new FinancialYears(1, 1, Berlin).Of(end).First);
        Assert.Equal(new DateOnly(2027, 1, 1), new FinancialYears(1, 1, Berlin).Of(end.AddTicks(1)).First);
    }

    [Fact]
    public void EndOf_ClocksGoForwardAtMidnight_DayEndsWhereTheGapBegins()
    {
        // Beirut put its clocks forward at 00:00 on 31 March 2024, so the day began at 01:00 summer time.
        var beirut = new FinancialYears(1, 1, TimeZoneInfo.FindSystemTimeZoneById("Asia/Beirut"));
        Assert.Equal(new DateTimeOffset(2024, 3, 30, 22, 0, 0, TimeSpan.Zero).AddTicks(-1), beirut.EndOf(new DateOnly(2024, 3, 30)));
    }

    [Fact]
    public void FinancialYears_OnThe29th_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => new FinancialYears(2, 29, Berlin));

    [Fact]
    public void Method_IsFixedForTheYear_AndMayChangeFromTheNext()
    {
        var thisYear = April6.Of(new DateOnly(2026, 11, 25));
        var next = April6.After(thisYear);
        MethodFrom[] choices = [new(new DateOnly(2025, 4, 6), ValuationMethod.Fifo)];
        Assert.Equal("The method is fixed for the year from 2026-04-06; choose another from 2027-04-06 on.",
            MethodOfYears.WhyNot(thisYear, ValuationMethod.MovingAverage, thisYear, choices));
        Assert.Null(MethodOfYears.WhyNot(thisYear, ValuationMethod.Fifo, thisYear, choices));
        Assert.Null(MethodOfYears.WhyNot(next, ValuationMethod.MovingAverage, thisYear, choices));
        Assert.Null(MethodOfYears.WhyNot(thisYear, ValuationMethod.MovingAverage, thisYear, []));
        Assert.Equal("The year from 2025-04-06 is over; its method stays.",
            MethodOfYears.WhyNot(April6.Of(new DateOnly(2026, 1, 1)), ValuationMethod.Fifo, thisYear, choices));
    }

    [Fact]
    public void Method_OfAYearWithoutAChoice_IsThatOfTheYearBefore()
    {
        var year = April6.Of(new DateOnly(2026, 11, 25));
        MethodFrom[] choices = [new(new DateOnly(2025, 4, 6), ValuationMethod.SpecificLot), new(new DateOnly(2027, 4, 6), ValuationMethod.Fifo)];
        Assert.Equal(ValuationMethod.SpecificLot, MethodOfYears.In(year, choices));
        Assert.Equal(ValuationMethod.Fifo, MethodOfYears.In(April6.After(year), choices));
        Assert.Equal(MethodOfYears.Usual, MethodOfYears.In(year, []));
    }

    [Fact]
    public void NetRealisable_BelowCost_IsWrittenDown_AndTakenBackNoFurtherThanCost()
    {
        // Own sums: 10 units for 60; each brings 7 − 1 − 2.
        var down = NetRealisable.Of(10, 60m, new(7m, 1m, 2m));
        Assert.Equal((40m, 20m, 20m), (down.CarriedAt, down.WriteDown, down.Change));
        var recovered = NetRealisable.Of(10, 60m, new(20m, 1m, 2m), down.WriteDown);
        Assert.Equal((60m, 0m, -20m), (recovered.CarriedAt, recovered.WriteDown, recovered.Change));
        Assert.Equal(0m, NetRealisable.Of(10, 60m, new(1m, 1m, 2m)).CarriedAt);
        Assert.Equal(6m, NetRealisable.StillHeld(10, down.WriteDown, 3));
    }

    [Fact]
    public void Conservation_ACentIsMissing_SaysSo()
    {
        var parts = new ValueParts(100.00m, 10.00m, 40.005m, 20.005m, 25m, 15m, 9.99m);
        Assert.True(Conservation.Check(parts).Holds);
        var missing = Conservation.Check(parts with { Expensed = 9.98m });
        Assert.False(missing.Holds);
        Assert.Equal(0.01m, missing.Difference);
    }

    [Fact]
    public void Conservation_AsPrinted_AddsUpOnBothSides()
    {
        var shown = Conservation.Check(new ValueParts(1m / 3m, 2m / 3m, 0.125m, 0.125m, 0.25m, 0.255m, 0.245m)).Shown;
        Assert.Equal((0.33m, 0.67m), (shown.Received, shown.Conversion));
        Assert.Equal(1.00m, shown.Materials + shown.WorkInProgress + shown.Finished + shown.CostOfSales + shown.Expensed);
    }
}
