using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class ValuationTests
{
    private static readonly DateOnly Day = new(2026, 11, 2);

    public static TheoryData<Func<IReadOnlyList<Purchase>, IReadOnlyList<Sale>, StockValue>> Methods => new(
        Valuation.Fifo, Valuation.WeightedAverage, Valuation.MovingAverage, Valuation.SpecificIdentification);

    [Theory]
    [MemberData(nameof(Methods))]
    public void AllSold_EndsAtExactlyZero(Func<IReadOnlyList<Purchase>, IReadOnlyList<Sale>, StockValue> method)
    {
        var value = method(
            [new("a", Day, 3, 1m), new("b", Day, 4, 2m)],
            [new(Day.AddDays(1), 3, "a"), new(Day.AddDays(2), 4, "b")]);
        Assert.Equal(new StockValue(11m, 0m, 11m), value);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void SoldOnTheDayItCame_PurchaseCountsFirst(
        Func<IReadOnlyList<Purchase>, IReadOnlyList<Sale>, StockValue> method) =>
        Assert.Equal(4m, method([new("a", Day, 3, 2m)], [new(Day, 1, "a")]).Ending);

    [Theory]
    [MemberData(nameof(Methods))]
    public void SoldBeforeItCame_Throws(Func<IReadOnlyList<Purchase>, IReadOnlyList<Sale>, StockValue> method) =>
        Assert.Throws<ArgumentException>(() => method([new("a", Day, 3, 2m)], [new(Day.AddDays(-1), 1, "a")]));

    [Theory]
    [MemberData(nameof(Methods))]
    public void QuantityOfZero_Throws(Func<IReadOnlyList<Purchase>, IReadOnlyList<Sale>, StockValue> method) =>
        Assert.Throws<ArgumentException>(() => method([new("a", Day, 0, 2m)], []));

    [Fact]
    public void SpecificIdentification_LotHoldsTooLittle_Throws() =>
        Assert.Throws<ArgumentException>(() => Valuation.SpecificIdentification(
            [new("a", Day, 3, 2m), new("b", Day, 3, 2m)], [new(Day, 4, "a")]));
}
