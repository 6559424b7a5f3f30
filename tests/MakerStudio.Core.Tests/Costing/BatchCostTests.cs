using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Tests.Costing;

public class BatchCostTests
{
    // Own worked example W2: 4,000 g from two lots of fragrance; 48 bottles of 82.0 g.
    private static readonly CostedUse[] Materials =
    [
        new("Fragrance, first lot", 0.300m, 67.374m),
        new("Fragrance, second lot", 0.180m, 71.90m),
        new("Alcohol", 3.320m, 8.644m),
        new("DPG", 0.200m, 11.20m),
    ];

    private static readonly CostedUse[] Packaging =
    [
        new("Bottle", 48, 0.8648m),
        new("Sprayer", 48, 0.42m),
        new("Label", 48, 0.19m),
        new("Carton", 48, 0.36m),
    ];

    [Fact]
    public void Of_W2()
    {
        var sheet = BatchCost.Of(Materials, Packaging, 130, 18.00m, 9.00m, 0.15m, filled: 48, rejected: 1, retained: 1);
        Assert.Equal(33.1542m, Materials[0].Cost + Materials[1].Cost);
        Assert.Equal(28.69808m, Materials[2].Cost);
        Assert.Equal(64.09228m, sheet.MaterialsTotal);
        Assert.Equal(88.0704m, sheet.PackagingTotal);
        Assert.Equal(39.00m, sheet.Labour);
        Assert.Equal(16.20m, sheet.Overhead);
        Assert.Equal(207.36268m, sheet.Total);
        Assert.Equal(4.3201m, Math.Round(sheet.PerFilled!.Value, 4));
        Assert.Equal(46, sheet.Saleable);
        Assert.Equal(4.5079m, Math.Round(sheet.PerSaleable!.Value, 4));
    }

    [Fact]
    public void Of_FragranceUp18Percent_W6()
    {
        var dearer = Materials.Select(m => m.Label.StartsWith("Fragrance", StringComparison.Ordinal)
            ? m with { UnitCost = m.UnitCost * 1.18m }
            : m);
        var sheet = BatchCost.Of([.. dearer], Packaging, 130, 18.00m, 9.00m, 0.15m, 48, 1, 1);
        Assert.Equal(207.36268m + 5.967756m, sheet.Total);
        Assert.Equal(4.6376m, Math.Round(sheet.PerSaleable!.Value, 4));
    }

    [Fact]
    public void Of_NothingFilled_CostPerBottleIsUnknown()
    {
        var sheet = BatchCost.Of(Materials, [], 0, 18.00m, 0, 0.15m, 0, 0, 0);
        Assert.Equal(64.09228m, sheet.Total);
        Assert.Null(sheet.PerFilled);
        Assert.Null(sheet.PerSaleable);
    }

    [Fact]
    public void Of_NothingLeftToSell_CostPerSaleableIsUnknown()
    {
        var sheet = BatchCost.Of(Materials, [], 0, 18.00m, 0, 0, 2, 1, 1);
        Assert.Equal(32.04614m, sheet.PerFilled);
        Assert.Null(sheet.PerSaleable);
    }

    [Fact]
    public void Of_MoreRejectedThanFilled_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchCost.Of([], [], 0, 0, 0, 0, 2, 2, 1));

    [Fact]
    public void Of_AnythingBelowZero_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchCost.Of([new("a", -1, 1)], [], 0, 0, 0, 0, 1, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchCost.Of([], [new("a", 1, -1)], 0, 0, 0, 0, 1, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchCost.Of([], [], -1, 0, 0, 0, 1, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchCost.Of([], [], 0, 0, 0, 0, 1, -1, 0));
    }
}
