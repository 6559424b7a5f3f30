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

    private static readonly Purchase[] Purchases =
    [
        new("opening", On(1, 1), 10, 8.00m),
        new("mar", On(3, 2), 10, 8.50m),
        new("may", On(5, 28), 20, 8.40m),
        new("aug", On(8, 12), 10, 9.00m),
        new("oct", On(10, 12), 20, 8.80m),
        new("dec", On(12, 21), 10, 9.10m),
    ];

    private static readonly Sale[] Sales =
    [
        new(On(3, 10), 10),
        new(On(7, 14), 20),
        new(On(9, 7), 10),
        new(On(11, 22), 20),
    ];

    [Fact]
    public void SpecificIdentification_AugustAndDecemberLotsLeft_T1()
    {
        // Which lots each sale came from is our reading; the book gives what is left.
        Sale[] sales =
        [
            new(On(3, 10), 10, "opening"),
            new(On(7, 14), 10, "mar"),
            new(On(7, 14), 10, "may"),
            new(On(9, 7), 10, "may"),
            new(On(11, 22), 20, "oct"),
        ];
        Assert.Equal(new StockValue(690.00m, 181.00m, 509.00m), Valuation.SpecificIdentification(Purchases, sales));
    }

    [Fact]
    public void Fifo_T2() =>
        Assert.Equal(new StockValue(690.00m, 179.00m, 511.00m), Valuation.Fifo(Purchases, Sales));

    [Fact]
    public void WeightedAverage_Periodic_T3()
    {
        var value = Valuation.WeightedAverage(Purchases, Sales);
        Assert.Equal(new StockValue(690.00m, 172.50m, 517.50m), value);
        Assert.Equal(8.625m, value.Ending / 20);
    }

    [Fact]
    public void MovingAverage_T4()
    {
        var value = Valuation.MovingAverage(Purchases, Sales);
        Assert.Equal(178.58m, Math.Round(value.Ending, 2));
        Assert.Equal(511.42m, Math.Round(value.CostOfSales, 2));
    }

    [Fact]
    public void MovingAverage_IsNotRoundedMidway()
    {
        // Own sum: 178.58333… unrounded; with each sale's average rounded to 3 decimals it would be 178.59.
        var value = Valuation.MovingAverage(Purchases, Sales);
        Assert.Equal(178.583333m, Math.Round(value.Ending, 6));
    }

    private static DateOnly On(int month, int day) => new(Year, month, day);
}
