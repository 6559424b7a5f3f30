using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Tests.Costing;

public class LandedCostTests
{
    // Own worked example W1: fragrance 5 kg, alcohol 20 kg, bottles 500; freight 96.00. Duty 20.15 = 6.5 % of 310.00.
    private static readonly InvoiceLine[] Invoice =
    [
        new(310.00m, 5.6m, 20.15m, 0, 0, 5m),
        new(128.00m, 22.4m, 0, 18.00m, 0, 20m),
        new(370.00m, 52.0m, 0, 0, 0, 500m),
    ];

    [Fact]
    public void Allocate_ByWeight_W1()
    {
        var landed = LandedCost.Allocate(Invoice, 96.00m, FreightBasis.Weight);
        Assert.Equal([6.72m, 26.88m, 62.40m], landed.Lines.Select(l => l.FreightShare));
        Assert.Equal([67.374m, 8.644m, 0.8648m], landed.Lines.Select(l => l.UnitCost));
        Assert.Equal(310.00m + 128.00m + 370.00m + 96.00m + 20.15m + 18.00m, landed.Total);
    }

    [Fact]
    public void Allocate_ByValue_W1()
    {
        var landed = LandedCost.Allocate(Invoice, 96.00m, FreightBasis.Value);
        Assert.Equal([36.83m, 15.21m, 43.96m], landed.Lines.Select(l => l.FreightShare));
        Assert.Equal([73.396m, 8.0605m, 0.82792m], landed.Lines.Select(l => l.UnitCost));
    }

    [Fact]
    public void Allocate_Discount_LowersTheLineAndItsShareByValue()
    {
        var landed = LandedCost.Allocate(
            [new(120m, null, 0, 0, 20m, 1m), new(100m, null, 0, 0, 0, 1m)], 10m, FreightBasis.Value);
        Assert.Equal([105m, 105m], landed.Lines.Select(l => l.Total));
    }

    [Fact]
    public void Allocate_NoFreight_NeedsNoWeights() =>
        Assert.Equal(31m, LandedCost.Allocate([new(310m, null, 0, 0, 0, 10m)], 0, FreightBasis.Weight).Lines[0].UnitCost);

    [Fact]
    public void Allocate_CurrencyWithoutDecimals_SharesWholeCoins() =>
        Assert.Equal(
            [34m, 33m, 33m],
            LandedCost.Allocate(
                [.. Enumerable.Repeat(new InvoiceLine(10m, 1m, 0, 0, 0, 1m), 3)], 100m, FreightBasis.Weight, 0)
            .Lines.Select(l => l.FreightShare));

    [Fact]
    public void Problems_NameLineAndRemedy()
    {
        Assert.Equal(
            ["Line 2 has no gross weight; enter it or share the freight by value."],
            LandedCost.Problems(
                [new(1m, 1m, 0, 0, 0, 1m), new(1m, null, 0, 0, 0, 1m)], 5m, FreightBasis.Weight));
        Assert.Equal(
            ["Every line is free of charge; share the freight by weight."],
            LandedCost.Problems([new(0m, 1m, 0, 0, 0, 1m)], 5m, FreightBasis.Value));
        Assert.Equal(
            ["Every gross weight is zero; enter weights or share the freight by value."],
            LandedCost.Problems([new(5m, 0m, 0, 0, 0, 1m)], 5m, FreightBasis.Weight));
        Assert.Empty(LandedCost.Problems(Invoice, 96.00m, FreightBasis.Value));
    }

    public static TheoryData<InvoiceLine, decimal> Bad => new()
    {
        { new(-1m, 1m, 0, 0, 0, 1m), 0m },
        { new(1m, -1m, 0, 0, 0, 1m), 0m },
        { new(1m, 1m, -1m, 0, 0, 1m), 0m },
        { new(1m, 1m, 0, -1m, 0, 1m), 0m },
        { new(1m, 1m, 0, 0, -1m, 1m), 0m },
        { new(1m, 1m, 0, 0, 2m, 1m), 0m },
        { new(1m, 1m, 0, 0, 0, 0m), 0m },
        { new(1m, 1m, 0, 0, 0, 1m), -1m },
        { new(1m, 1m, 0, 0, 0, 1m), 0.001m },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Allocate_WithAProblem_Throws(InvoiceLine line, decimal freight)
    {
        Assert.Single(LandedCost.Problems([line], freight, FreightBasis.Weight));
        Assert.Throws<ArgumentException>(() => LandedCost.Allocate([line], freight, FreightBasis.Weight));
    }

    [Fact]
    public void Allocate_NoLines_Throws() =>
        Assert.Throws<ArgumentException>(() => LandedCost.Allocate([], 0, FreightBasis.Value));
}
