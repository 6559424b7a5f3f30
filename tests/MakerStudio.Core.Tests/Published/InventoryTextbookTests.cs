using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Published;

/// <summary>
/// The worked inventory of "Accounting Principles: A Business Perspective" (CC BY 3.0), ch. 7, "Measuring and
/// reporting inventories", pp. 290–294: 80 units for 690.00, 60 sold, 20 left.
/// Provenance: the purchases, the totals of specific identification and FIFO, and the average unit cost 8.625 were
/// read in the text; the totals of the weighted average follow from that unit cost. The dates and quantities of the
/// sales are from p. 294; the totals of the moving average were read only in a third-party reproduction of the
/// book. The book names no year; the one here is ours.
/// </summary>
public class InventoryTextbookTests
{
    private const int Year = 2026;

    private static readonly FinancialYears Calendar = new(1, 1, TimeZoneInfo.Utc);

    private static readonly ValuedMovement[] Purchases =
    [
        Bought(1, On(1, 1), "opening", 10, 8.00m),
        Bought(2, On(3, 2), "mar", 10, 8.50m),
        Bought(3, On(5, 28), "may", 20, 8.40m),
        Bought(4, On(8, 12), "aug", 10, 9.00m),
        Bought(5, On(10, 12), "oct", 20, 8.80m),
        Bought(6, On(12, 21), "dec", 10, 9.10m),
    ];

    /// <summary>Which lots each sale came from is our reading; the book gives what is left. Other methods do not look at it.</summary>
    private static readonly ValuedMovement[] Sales =
    [
        new(11, On(3, 10), "opening", -10),
        new(12, On(7, 14), "mar", -10),
        new(13, On(7, 14), "may", -10),
        new(14, On(9, 7), "may", -10),
        new(15, On(11, 22), "oct", -20),
    ];

    [Fact]
    public void SpecificIdentification_AugustAndDecemberLotsLeft_T1() => Check(ValuationMethod.SpecificLot, 181.00m, 509.00m);

    [Fact]
    public void Fifo_T2() => Check(ValuationMethod.Fifo, 179.00m, 511.00m);

    [Fact]
    public void WeightedAverage_Periodic_T3()
    {
        Check(ValuationMethod.WeightedAverage, 172.50m, 517.50m);
        Assert.Equal(86.25m, Value(ValuationMethod.WeightedAverage).Issues[11]);
    }

    [Fact]
    public void MovingAverage_T4()
    {
        var value = Value(ValuationMethod.MovingAverage);
        Assert.Equal(178.58m, Math.Round(value.Ending, 2));
        Assert.Equal(511.42m, Math.Round(value.Issued, 2));
        Assert.Equal(690.00m, value.Ending + value.Issued);
    }

    [Fact]
    public void MovingAverage_IsNotRoundedMidway()
    {
        // Own sum: 178.58333… unrounded; with each sale's average rounded to 3 decimals it would be 178.59.
        Assert.Equal(178.583333m, Math.Round(Value(ValuationMethod.MovingAverage).Ending, 6));
    }

    private static void Check(ValuationMethod method, decimal ending, decimal costOfSales)
    {
        var value = Value(method);
        Assert.Equal(690.00m, value.Received);
        Assert.Equal(20m, value.Quantity);
        Assert.Equal(ending, value.Ending);
        Assert.Equal(costOfSales, value.Issued);
    }

    private static StockValue Value(ValuationMethod method) =>
        Valuation.Of(method, [.. Purchases, .. Sales], On(12, 31), Calendar);

    private static ValuedMovement Bought(long id, DateTimeOffset at, string lot, int count, decimal unitCost) =>
        new(id, at, lot, count, count * unitCost);

    private static DateTimeOffset On(int month, int day) => new(Year, month, day, 12, 0, 0, TimeSpan.Zero);
}
