using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

/// <summary>Margins as they stood; own worked examples, from W3's 75.4 % at 22.00 and 4.51.</summary>
public class MarginOverTimeTests
{
    private static readonly Guid Web = Guid.CreateVersion7();
    private static readonly Channel Twenty = new("Web shop", new SalesTax(0.20m, TaxBasis.InTag), []);
    private static readonly Channel Ten = new("Web shop", new SalesTax(0.10m, TaxBasis.InTag), []);

    [Fact]
    public void Of_CostTagAndTermsChange_TellsEachDayAsItStood()
    {
        var rows = MarginOverTime.Of(
            [new(Day(2), 4.51m, "RS-1"), new(Day(12), 4.6376m, "RS-2")], [new(Web, Day(5), 22m), new(Web, Day(20), 24m)],
            [new(Web, Day(1), Twenty), new(Web, Day(15), Ten)], Day(25));

        Assert.Equal([Day(5), Day(12), Day(15), Day(20), Day(25)], rows.Select(r => r.Day));
        Assert.Equal([75.4m, 74.7m, 76.8m, 78.7m, 78.7m], rows.Select(r => Math.Round(100 * r.Margin!.Value, 1)));
        Assert.Equal(["RS-1", "RS-2", "RS-2", "RS-2", "RS-2"], rows.Select(r => r.CostFrom));
    }

    [Fact]
    public void Of_NotSoldForAWhile_LeavesThoseDaysOut()
    {
        var rows = MarginOverTime.Of([new(Day(2), 4.51m, "RS-1")], [new(Web, Day(3), 22m), new(Web, Day(6), null), new(Web, Day(9), 20m)], [new(Web, Day(1), Twenty)], Day(10));

        Assert.Equal([Day(3), Day(9), Day(10)], rows.Select(r => r.Day));
    }

    [Fact]
    public void Of_TwoTagsOfOneDay_TheLaterCounts()
    {
        var row = Assert.Single(MarginOverTime.Of([new(Day(2), 4.51m, "RS-1")], [new(Web, Day(2), 20m), new(Web, Day(2), 22m)], [new(Web, Day(2), Twenty)], Day(2)));

        Assert.Equal(22m, row.Unit.Tag);
    }

    [Fact]
    public void Of_TagBeforeTheFirstTerms_TakesTheFirstTerms() =>
        Assert.Equal(2, MarginOverTime.Of([new(Day(2), 4.51m, "RS-1")], [new(Web, Day(2), 22m)], [new(Web, Day(4), Twenty)], Day(4)).Count);

    [Fact]
    public void Of_NothingFilled_IsEmpty() =>
        Assert.Empty(MarginOverTime.Of([], [new(Web, Day(2), 22m)], [new(Web, Day(1), Twenty)], Day(9)));

    [Fact]
    public void Of_TagUnderCost_IsBelowZero() =>
        Assert.Equal(-0.2m, MarginOverTime.Of([new(Day(1), 6m, "RS-1")], [new(Web, Day(1), 6m)], [new(Web, Day(1), Twenty)], Day(1))[0].Margin);

    private static DateOnly Day(int day) => new(2026, 11, day);
}
