using MakerStudio.Core.Books;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Books;

public class StudioBooksTests
{
    private static readonly DateTimeOffset Start = new(2026, 11, 2, 9, 0, 0, TimeSpan.Zero);
    private static readonly FinancialYears Years = new(1, 1, TimeZoneInfo.Utc);
    private static readonly Guid Oil = Guid.NewGuid(), Alcohol = Guid.NewGuid(), Accord = Guid.NewGuid(), Box = Guid.NewGuid();
    private static readonly Guid Blend = Guid.NewGuid(), Spray = Guid.NewGuid(), Kit = Guid.NewGuid();

    /// <summary>
    /// Own sums. Oil: 100 at 1.00, then 100 at 2.00. The accord takes 50 of the first lot and 10.00 of work: 60.00 for
    /// 50. Another 50 oil of the second lot are spilled. The spray takes 25 of the accord (30.00), 100 alcohol (20.00)
    /// and 6.00 of work: 56.00 for 14 bottles.
    /// </summary>
    private static readonly BookMovement[] Movements =
    [
        new(1, Hour(0), Oil, "P-1", 100, 100m), new(2, Hour(0), Alcohol, "P-2", 400, 80m), new(3, Hour(1), Oil, "P-3", 100, 200m),
        new(4, Hour(2), Oil, "P-1", -50, null, Blend), new(5, Hour(3), Accord, "A-1", 50, null, Blend),
        new(6, Hour(4), Oil, "P-3", -50),
        new(7, Hour(5), Accord, "A-1", -25, null, Spray), new(8, Hour(5), Alcohol, "P-2", -100, null, Spray),
        new(9, Hour(9), Box, "P-4", 10, 5m), new(10, Hour(10), Box, "P-4", -2, null, Kit),
    ];

    private static readonly BookBatch[] Batches =
    [
        new(Blend, [new(Hour(2), 10m)], [], [], Hour(3)),
        new(Spray, [new(Hour(6), 6m)], [], [], Hour(6)),
        new(Kit, [], [], [], Hour(10)),
    ];

    private static readonly BookUnits[] Units =
    [
        new(1, Hour(6), Spray, 14, BookEffect.FromBatch), new(2, Hour(7), Spray, -3, BookEffect.CostOfSales),
        new(3, Hour(8), Spray, -1, BookEffect.Expensed), new(4, Hour(9), Spray, 1, BookEffect.BackFromSale),
        new(5, Hour(10), Spray, -4, BookEffect.Kit, Kit), new(6, Hour(10), Kit, 2, BookEffect.Kit, Kit),
        new(7, Hour(11), Kit, -1, BookEffect.CostOfSales),
        new(8, Hour(12), Kit, -1, BookEffect.Kit, Kit), new(9, Hour(12), Spray, 2, BookEffect.Kit, Kit),
    ];

    [Fact]
    public void Of_SpecificLot_AfterEachStep()
    {
        Check(3, 60m, new(380m, 10m, 50m + 200m + 80m + 60m, 0m, 0m, 0m, 0m));
        Check(5, 60m, new(380m, 10m, 50m + 100m + 60m + 30m, 50m, 0m, 0m, 100m));
        Check(6, 60m, new(380m, 16m, 240m, 0m, 56m, 0m, 100m));
        Check(8, 60m, new(380m, 16m, 240m, 0m, 40m, 12m, 104m));
        Check(9, 60m, new(385m, 16m, 245m, 0m, 44m, 8m, 104m));
        Check(10, 60m, new(385m, 16m, 244m, 0m, 28m + 17m, 8m, 104m));
        Check(11, 60m, new(385m, 16m, 244m, 0m, 28m + 8.5m, 16.5m, 104m));
        // Taken apart: two bottles go back, and the box is gone.
        Check(12, 60m, new(385m, 16m, 244m, 0m, 36m, 16.5m, 104.5m));
    }

    /// <summary>Own sums: of 100 oil at 1.00 and 100 at 2.00, 50 and 50 are left; by average 1.50 each.</summary>
    [Theory]
    [InlineData(ValuationMethod.SpecificLot, "50", "100")]
    [InlineData(ValuationMethod.Fifo, "100", "100")]
    [InlineData(ValuationMethod.MovingAverage, "75", "75")]
    public void Lots_AreWorthTheirOwnCostOrTheirPartByQuantity(ValuationMethod method, string first, string second)
    {
        var lots = Of(method, Hour(12)).Lots.Where(l => l.MaterialId == Oil).ToList();
        Assert.Equal([("P-1", 50m, Numbers.Of(first)), ("P-3", 50m, Numbers.Of(second))], lots.Select(l => (l.Lot, l.Quantity, l.Value)));
    }

    [Fact]
    public void Expenses_AreSaidByWhy_AndAddUp()
    {
        var books = Of(ValuationMethod.SpecificLot, Hour(12));
        Assert.Equal((100m, 4m, 0.5m), (books.Expenses.Movements[6], Assert.Single(books.Expenses.Units).Value, books.Expenses.KitBoxes));
        Assert.Equal(books.Check.Parts.Expensed, books.Expenses.Total);
        Assert.Equal([(Spray, 2m), (Kit, 1m)], books.Sold.Select(s => (s.Id, s.Quantity)));
    }

    /// <summary>A unit comes back out of a kit that was sold, and the return is taken back; then the sale, and the kit apart.</summary>
    [Fact]
    public void Return_OutOfASoldKit_TakenBack_LeavesTheKitAsItWas()
    {
        BookUnits[] more =
        [
            .. Units.Take(7), new(8, Hour(11), Spray, 1, BookEffect.BackFromSale), new(9, Hour(12), Spray, -1, BookEffect.BackFromSale),
            new(10, Hour(13), Kit, 1, BookEffect.CostOfSales), new(11, Hour(14), Kit, -2, BookEffect.Kit, Kit), new(12, Hour(14), Spray, 4, BookEffect.Kit, Kit),
        ];
        var books = StudioBooks.Of(ValuationMethod.SpecificLot, Movements, Batches, more, Hour(14), Years);
        // 14 bottles at 4.00: 3 sold and 1 back, 1 given away: 11 are here, 2 are sold.
        Assert.Equal((44m, 8m, 0m), (books.Check.Parts.Finished, books.Check.Parts.CostOfSales, books.Check.Difference));
    }

    [Fact]
    public void Of_BeforeTheBlendIsMade_ItStandsInWork() => Check(2, 60m, new(380m, 10m, 50m + 200m + 80m, 60m, 0m, 0m, 0m));

    [Theory]
    [InlineData(ValuationMethod.Fifo, "60", "50")]
    [InlineData(ValuationMethod.MovingAverage, "85", "75")]
    [InlineData(ValuationMethod.WeightedAverage, "85", "75")]
    [InlineData(ValuationMethod.SpecificLot, "60", "100")]
    public void Of_EachMethod_CarriesThroughThePreBlend(ValuationMethod method, string blend, string spilled)
    {
        var books = Of(method, Hour(12));
        Assert.Equal(Numbers.Of(blend), books.BatchCosts[Blend]);
        Assert.Equal(Numbers.Of(blend) / 2 + 26m, books.BatchCosts[Spray]);
        Assert.Equal(Numbers.Of(spilled), books.Issues[6]);
        Assert.Equal(0m, books.Check.Difference);
        Assert.Empty(books.NotCovered);
    }

    [Fact]
    public void Of_ReceiptToFollow_StandsAtItsEstimate_UntilItIsMatched_S10()
    {
        // Own worked example: 300 g used, 120 of them at 67.37 a kg; 180 at an estimate of 67.37, matched at 70.00.
        var batch = new BookBatch(Spray, [], [new(Hour(2), 0.180m * 67.37m, Hour(4))], []);
        BookMovement[] movements =
        [
            new(1, Hour(0), Oil, "P-1", 0.120m, 0.120m * 67.37m), new(2, Hour(2), Oil, "P-1", -0.120m, null, Spray),
            new(3, Hour(3), Oil, "P-2", 5m, 350m), new(4, Hour(4), Oil, "P-2", -0.180m, null, Spray),
        ];
        StudioBooks At(int hour) => StudioBooks.Of(ValuationMethod.SpecificLot, movements, [batch], [], Hour(hour), Years);
        Assert.Equal(20.211m, At(2).BatchCosts[Spray]);
        Assert.Equal(0m, At(3).Check.Difference);
        Assert.Equal(0.4734m, At(4).BatchCosts[Spray] - At(3).BatchCosts[Spray]);
        Assert.Equal(4.820m, At(4).Materials.Single().Quantity);
        Assert.Equal(0m, At(4).Check.Difference);
    }

    [Fact]
    public void Of_AbnormalLossAndGivenUp_AreExpensed()
    {
        BookMovement[] movements = [new(1, Hour(0), Oil, "P-1", 10, 10m), new(2, Hour(1), Oil, "P-1", -10, null, Spray), new(3, Hour(2), Oil, "P-1", 2, 2m, Spray)];
        var lost = new BookBatch(Spray, [], [], [new(Hour(3), 0.25m)], Hour(4));
        var after = StudioBooks.Of(ValuationMethod.Fifo, movements, [lost], [], Hour(3), Years).Check.Parts;
        Assert.Equal((2m, 6m, 2m), (after.Materials, after.WorkInProgress, after.Expensed));
        var givenUp = StudioBooks.Of(ValuationMethod.Fifo, movements, [lost], [], Hour(4), Years).Check.Parts;
        Assert.Equal((2m, 0m, 8m), (givenUp.Materials, givenUp.WorkInProgress, givenUp.Expensed));
    }

    [Fact]
    public void Of_UndoneUse_IsAsIfNeverMade()
    {
        BookMovement[] movements = [.. Movements, new(20, Hour(13), Oil, "P-3", 50, null, null, 6)];
        var books = StudioBooks.Of(ValuationMethod.SpecificLot, movements, Batches, Units, Hour(13), Years);
        Assert.Equal(4.5m, books.Check.Parts.Expensed);
        Assert.Equal(0m, books.Check.Difference);
    }

    [Fact]
    public void Of_OddEntries_Throw()
    {
        Assert.Throws<ArgumentException>(() => StudioBooks.Of(ValuationMethod.Fifo, [new(1, Hour(0), Oil, "P-1", 1)], [], [], Hour(1), Years));
        Assert.Throws<ArgumentException>(() => StudioBooks.Of(ValuationMethod.Fifo, [new(1, Hour(0), Oil, "P-1", 1, 1m, Spray)], [], [], Hour(1), Years));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudioBooks.Of(
            ValuationMethod.Fifo, [], [], [new(1, Hour(0), Spray, -1, BookEffect.CostOfSales)], Hour(1), Years));
    }

    private static void Check(int hour, decimal blend, ValueParts parts)
    {
        var books = Of(ValuationMethod.SpecificLot, Hour(hour));
        Assert.Equal(parts, books.Check.Parts);
        Assert.Equal(0m, books.Check.Difference);
        Assert.Equal(blend, books.BatchCosts[Blend]);
    }

    private static StudioBooks Of(ValuationMethod method, DateTimeOffset asOf) => StudioBooks.Of(method, Movements, Batches, Units, asOf, Years);

    private static DateTimeOffset Hour(int hour) => Start.AddHours(hour);
}
