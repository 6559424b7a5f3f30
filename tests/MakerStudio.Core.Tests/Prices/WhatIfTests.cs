using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

public class WhatIfTests
{
    private static readonly TagRounding Cents = new();

    [Fact]
    public void Of_FragranceUp18Percent_W6()
    {
        var effect = Fig(new SupposedChange.PriceBy(QuinceYard.FirstLot, 0.18m));
        Assert.Equal(207.36268m, effect.BatchBefore);
        Assert.Equal(5.967756m, effect.BatchAfter - effect.BatchBefore);
        Assert.Equal(4.5079m, Math.Round(effect.Before, 4));
        Assert.Equal(0.1297m, Math.Round(effect.After - effect.Before, 4));
        Assert.Equal(4.6376m, Math.Round(effect.After, 4));
        Assert.Equal(0.754m, Math.Round(effect.Tags[0].Before.Margin!.Value, 3));
        Assert.Equal(0.747m, Math.Round(effect.Tags[0].After.Margin!.Value, 3));
        Assert.True(effect.IsTouched);
    }

    [Fact]
    public void Of_EveryProductAtOnce_LeavesOthersAsTheyWere()
    {
        var plain = QuinceYard.Fig() with { Id = Guid.NewGuid(), Name = "Plain", Materials = [new(QuinceYard.Alcohol, "Alcohol", 4m, 8.644m, LoadRole.Other)] };
        var effects = WhatIf.Of([QuinceYard.Fig(), plain], [new SupposedChange.PriceTo(QuinceYard.FirstLot, 80m), new SupposedChange.LoadTo(null, 0.10m)], Cents);
        Assert.True(((ProductEffect.Worked)effects[0]).IsTouched);
        Assert.False(((ProductEffect.Worked)effects[1]).IsTouched);
    }

    [Fact]
    public void Of_Bottles_CountForEachUnitFilled() =>
        Assert.Equal(48 * 0.10m, Fig(new SupposedChange.PriceTo(QuinceYard.Bottle, 0.9648m)).BatchAfter - 207.36268m);

    [Fact]
    public void Of_Yield_FillsFewerUnits_AndUsesFewerBottles()
    {
        // Own sum: 4,000 g × 0.902 ÷ 82 g = 44 filled; four bottles fewer at 1.8348 + 0.15 each; 42 to sell.
        var effect = Fig(new SupposedChange.YieldTo(null, 0.902m));
        Assert.Equal(207.36268m - 4 * (1.8348m + 0.15m), effect.BatchAfter);
        Assert.Equal(effect.BatchAfter / 42, effect.After);
    }

    [Fact]
    public void Of_Load_TradesFragranceForCarrier()
    {
        // Own sum: 80 g of fragrance at (33.1542 ÷ 0.48) a kg become alcohol at 8.644.
        var effect = Fig(new SupposedChange.LoadTo(QuinceYard.Fig().Id, 0.10m));
        Assert.Equal(0.08m * (8.644m - 33.1542m / 0.48m), effect.BatchAfter - effect.BatchBefore, 18);
    }

    [Fact]
    public void Of_Fee_ChangesOnlyItsChannel()
    {
        var effect = Fig(new SupposedChange.FeeTo("Web", new("Marketplace", 0.08m, 0m, FeeBasis.Paid)));
        Assert.Equal(effect.Tags[0].Before.Contribution, effect.Tags[0].After.Contribution);
        Assert.Equal(-0.015m * 22m, effect.Tags[1].After.Contribution - effect.Tags[1].Before.Contribution, 18);
        Assert.Equal(2, effect.Tags[1].After.Fees.Count);
        Assert.Equal(3, Fig(new SupposedChange.FeeTo("Web", new("Postage", 0m, 1m, FeeBasis.Net))).Tags[1].After.Fees.Count);
    }

    [Fact]
    public void Of_LabourRate() =>
        Assert.Equal(130m * 6m / 60m, Fig(new SupposedChange.LabourRateTo(24m)).BatchAfter - 207.36268m);

    [Theory]
    [InlineData("0.99", "Fig: its carrier cannot make up for that load.")]
    [InlineData("-0.1", "Fig: its carrier cannot make up for that load.")]
    public void Of_LoadThatCannotBe_SaysSo(string load, string says) =>
        Assert.Equal(says, NotPossible(new SupposedChange.LoadTo(QuinceYard.Fig().Id, Numbers.Of(load))));

    [Fact]
    public void Of_YieldThatLeavesNothing_SaysSo()
    {
        Assert.Equal("Fig: at this yield no unit is left to sell.", NotPossible(new SupposedChange.YieldTo(null, 0.04m)));
        Assert.Equal("Fig: a yield is above 0 % and at most 100 %.", NotPossible(new SupposedChange.YieldTo(null, 1.04m)));
    }

    [Fact]
    public void Filled_YieldThatDoesNotComeOut_LosesNoUnit()
    {
        // 3,936 g of 3,999 g is a fraction without end; 48 × 82 g are in it all the same.
        var fig = QuinceYard.Fig();
        var odd = fig with { Materials = [fig.Materials[0] with { Quantity = 3.999m }], Yield = 3936m / 3999m };
        Assert.Equal(48, odd.Filled);
    }

    private static ProductEffect.Worked Fig(SupposedChange change) =>
        Assert.IsType<ProductEffect.Worked>(WhatIf.Of([QuinceYard.Fig()], [change], Cents)[0]);

    private static string NotPossible(SupposedChange change) =>
        Assert.IsType<ProductEffect.NotPossible>(WhatIf.Of([QuinceYard.Fig()], [change], Cents)[0]).Says;
}
