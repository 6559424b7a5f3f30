using System.Globalization;
using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

public class MarginFloorTests
{
    private static readonly TagRounding Cents = new();

    [Fact]
    public void Check_MarginHolds_IsQuiet()
    {
        Assert.Null(MarginFloor.Check("Fig", Pricing.At(22.00m, QuinceYard.Cost, QuinceYard.Direct), 0.75m, Cents));
        // Own sum: 12.00 ÷ 1.2 = 10; (10 − 6) ÷ 10 is just 40 %.
        Assert.Null(MarginFloor.Check("Fig", Pricing.At(12.00m, 6m, QuinceYard.Direct), 0.40m, Cents));
    }

    [Fact]
    public void Check_FragranceUp18Percent_NamesTagAndLoadThatRestoreIt()
    {
        // Own worked example: Fig fell to 74.7 %, under its 75 %; tag 22.27 or load 11.1 % restores it.
        var fig = QuinceYard.Fig(floor: 0.75m);
        var effect = (ProductEffect.Worked)WhatIf.Of([fig], [new SupposedChange.PriceBy(QuinceYard.FirstLot, 0.18m)], Cents)[0];
        var alert = effect.Tags[0].Alert!;
        Assert.Equal(0.747m, Math.Round(alert.Margin, 3));
        Assert.Equal(22.27m, TargetPriceTests.Found(alert.RestoringTag).Tag);
        var load = Assert.IsType<LoadAnswer.Restores>(alert.Load);
        Assert.Equal(0.111m, load.Load);

        // Made with that load, the margin is back; with a tenth of a per cent more it is not.
        Assert.True(MarginAt(fig, load.Load) >= 0.75m);
        Assert.True(MarginAt(fig, load.Load + MarginFloor.LoadStep) < 0.75m);
        Assert.Equal("A margin of 75 % at a tag of 22.00 allows a cost of 4.5833; it is 4.6376.", alert.Workings[0].Says(CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Check_EvenNoFragranceIsTooDear_SaysSo()
    {
        var alert = MarginFloor.Check("Fig", Pricing.At(6.00m, QuinceYard.Cost, QuinceYard.Direct), 0.75m, Cents, QuinceYard.Fig().LoadModel());
        Assert.Equal("Even with no fragrance at all the margin stays under its floor.", Assert.IsType<LoadAnswer.None>(alert!.Load).Says);
    }

    [Fact]
    public void Check_FragranceCheaperThanCarrier_SaysThatLessSavesNothing()
    {
        var alert = MarginFloor.Check("Fig", Pricing.At(6.00m, 4.51m, QuinceYard.Direct), 0.75m, Cents, new LoadModel(4m, 0.12m, 8m, 9m, 46));
        Assert.StartsWith("The fragrance costs no more", Assert.IsType<LoadAnswer.None>(alert!.Load).Says, StringComparison.Ordinal);
    }

    private static decimal MarginAt(ProductPlan fig, decimal load)
    {
        SupposedChange[] changes = [new SupposedChange.PriceBy(QuinceYard.FirstLot, 0.18m), new SupposedChange.LoadTo(null, load)];
        return ((ProductEffect.Worked)WhatIf.Of([fig], changes, Cents)[0]).Tags[0].After.Margin!.Value;
    }
}
