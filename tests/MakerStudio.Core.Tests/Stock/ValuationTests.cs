using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class ValuationTests
{
    private static readonly DateTimeOffset Start = new(2026, 11, 2, 9, 0, 0, TimeSpan.Zero);
    private static readonly FinancialYears Years = new(1, 1, TimeZoneInfo.Utc);

    public static TheoryData<ValuationMethod> Methods => new(Enum.GetValues<ValuationMethod>());

    [Theory]
    [MemberData(nameof(Methods))]
    public void AllIssued_EndsAtExactlyZero(ValuationMethod method)
    {
        var value = Of(method, In(1, 0, "a", 3, 1m), In(2, 1, "b", 4, 2.01m), Out(3, 2, "a", 3), Out(4, 3, "b", 4));
        Assert.Equal(0m, value.Ending);
        Assert.Equal(3.01m, value.Issued);
        Assert.Equal(0m, value.NotCovered);
    }

    [Theory]
    [InlineData(ValuationMethod.Fifo, "1.0")]
    [InlineData(ValuationMethod.MovingAverage, "1.5")]
    [InlineData(ValuationMethod.WeightedAverage, "2.375")]
    [InlineData(ValuationMethod.SpecificLot, "2.0")]
    public void EachMethod_TakesItsOwnCost(ValuationMethod method, string cost) =>
        // Own sums: ten at 1 and ten at 2, one taken of the second lot, then twenty at 3.25.
        Assert.Equal(Numbers.Of(cost), Of(
            method, In(1, 0, "a", 10, 10m), In(2, 1, "b", 10, 20m), Out(3, 2, "b", 1), In(4, 3, "c", 20, 65m)).Issues[3]);

    [Fact]
    public void AsOf_LooksAtNoLaterMovement_AndAtThatOfTheVeryMoment()
    {
        ValuedMovement[] all = [In(1, 0, "a", 10, 10m), Out(2, 1, "a", 4), In(3, 2, "a", 10, 30m)];
        Assert.Equal(10m, Valuation.Of(ValuationMethod.Fifo, all, Start.AddHours(1).AddTicks(-1), Years).Ending);
        Assert.Equal(6m, Valuation.Of(ValuationMethod.Fifo, all, Start.AddHours(1), Years).Ending);
        Assert.Equal(36m, Valuation.Of(ValuationMethod.Fifo, all, Start.AddHours(2), Years).Ending);
        Assert.Equal(0m, Valuation.Of(ValuationMethod.Fifo, all, Start.AddHours(-1), Years).Received);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Undone_CountsFromThenOnAsNeverMade(ValuationMethod method)
    {
        ValuedMovement[] all =
        [
            In(1, 0, "a", 10, 10m), In(2, 1, "b", 5, 50m),
            Out(4, 2, "a", 6), In(5, 3, "a", 6, 0m) with { Reverses = 4 },
            Out(6, 4, "b", 5) with { Reverses = 2 },
        ];
        Assert.Equal(60m, Valuation.Of(method, all, Start.AddHours(3), Years).Ending);
        var after = Valuation.Of(method, all, Start.AddHours(4), Years);
        Assert.Equal((10m, 10m, 0m), (after.Received, after.Ending, after.Issued));
        Assert.NotEqual(60m, Valuation.Of(method, all, Start.AddHours(2), Years).Ending);
    }

    [Fact]
    public void UndoneTwice_StandsAgain()
    {
        ValuedMovement[] all =
        [
            In(1, 0, "a", 10, 10m), Out(2, 1, "a", 10) with { Reverses = 1 }, In(3, 2, "a", 10, 10m) with { Reverses = 2 },
        ];
        Assert.Equal(10m, Of(ValuationMethod.Fifo, all).Ending);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void IssuedBeforeItCame_WaitsForTheNextReceipt_AndCostsWhatThatCosts(ValuationMethod method)
    {
        // Own sums after the receipt that comes late: 120 at 67.37 and 180 of the 5,000 at 70.00, all per thousand.
        ValuedMovement[] all = [In(1, 0, "a", 120, 8.0844m), Out(2, 1, "a", 300), In(3, 2, "a", 5000, 350m)];
        if (method != ValuationMethod.WeightedAverage)
        {
            Assert.Equal(180m, Valuation.Of(method, all, Start.AddHours(1), Years).NotCovered);
            var value = Of(method, all);
            Assert.Equal(8.0844m + 12.6m, value.Issues[2]);
            Assert.Equal((4820m, 337.4m, 0m), (value.Quantity, value.Ending, value.NotCovered));
        }

        Assert.Equal(358.0844m, Of(method, all).Ending + Of(method, all).Issued);
    }

    [Fact]
    public void WeightedAverage_StartsANewAverageEachYear()
    {
        // Own sums: ten at 1, five go; next year ten at 4 join the five left, so a unit is 3.
        ValuedMovement[] all =
        [
            In(1, 0, "a", 10, 10m), Out(2, 1, "a", 5),
            new(3, Start.AddYears(1), "b", 10, 40m), new(4, Start.AddMonths(3), "a", -3),
        ];
        var value = Valuation.Of(ValuationMethod.WeightedAverage, all, Start.AddYears(2), Years);
        Assert.Equal(5m, value.Issues[2]);
        Assert.Equal(9m, value.Issues[4]);
        Assert.Equal(36m, value.Ending);
    }

    [Fact]
    public void BadMovements_Throw()
    {
        Assert.Throws<ArgumentException>(() => Of(ValuationMethod.Fifo, In(1, 0, "a", 0, 1m)));
        Assert.Throws<ArgumentException>(() => Of(ValuationMethod.Fifo, In(1, 0, "a", 1, -1m)));
        Assert.Throws<ArgumentException>(() => Of(ValuationMethod.Fifo, In(1, 0, "a", 1, 1m), In(1, 0, "a", 1, 1m)));
        Assert.Throws<ArgumentException>(() => Of(ValuationMethod.Fifo, In(1, 0, "a", 1, 1m), Out(2, 0, "a", 2) with { Reverses = 1 }));
        Assert.Throws<ArgumentException>(() => Of(ValuationMethod.Fifo, Out(2, 0, "a", 2) with { Reverses = 1 }));
    }

    private static StockValue Of(ValuationMethod method, params ValuedMovement[] movements) =>
        Valuation.Of(method, movements, Start.AddDays(30), Years);

    private static ValuedMovement In(long id, int hour, string lot, decimal quantity, decimal value) => new(id, Start.AddHours(hour), lot, quantity, value);

    private static ValuedMovement Out(long id, int hour, string lot, decimal quantity) => new(id, Start.AddHours(hour), lot, -quantity);
}
