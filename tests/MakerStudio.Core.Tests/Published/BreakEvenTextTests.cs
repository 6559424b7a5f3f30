using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Published;

/// <summary>
/// AccountingCoach, "What is the break-even formula?": fixed expenses of 300,000 and a contribution margin of 4 a
/// unit (10 less 6) break even at 75,000 units. Read on that page.
/// </summary>
public class BreakEvenTextTests
{
    [Fact]
    public void BreakEven_InUnits()
    {
        var unit = Pricing.At(10m, 6m, new Channel("Any", SalesTax.None, []));
        var result = Assert.IsType<BreakEvenResult.From>(BreakEven.Of([new("Fixed expenses", 300_000m)], unit.Contribution));
        Assert.Equal(75_000, result.Units);
        Assert.Equal(0m, result.LeftOver);
    }
}
