using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Blending;

public class ScalingTests
{
    private static readonly decimal[] FigV3 = [0.12m, 0.05m, 0.83m];

    /// <summary>48 bottles of 100 mL at 0.815 g/mL, 0.5 g overfill, 1.5 % loss: 82.0 g each, 3,996 g, so 4,000 g.</summary>
    [Fact]
    public void ToBottles_FortyEightOfFig_MakesFourKilograms()
    {
        Mass fill = FillMass.Of(Volume.FromMillilitres(100), new Density(0.815m), Mass.FromGrams(0.5m));
        Assert.Equal(Mass.FromGrams(82), fill);

        ScalePlan plan = Scaling.ToBottles(48, fill, 0.015m, Mass.FromGrams(100));
        Assert.Equal(3996m, decimal.Round(plan.Needed.Grams, 0));
        Assert.Equal(Mass.FromGrams(4000), plan.Total);
        Assert.Equal([480.0m, 200.0m, 3320.0m], plan.Lines(FigV3).Select(mass => mass.Grams));
    }

    [Fact]
    public void ToBottles_Needed_NeverFallsShortByAMilligram()
    {
        ScalePlan plan = Scaling.ToBottles(48, Mass.FromGrams(82), 0.015m, Mass.FromMilligrams(1));
        Assert.Equal(3_995_940, plan.Total.Milligrams);
        Assert.True(plan.Total.Grams * (1 - 0.015m) >= 48 * 82m);
    }

    [Theory]
    [InlineData(0, 82, "0.015", 100)]
    [InlineData(-1, 82, "0.015", 100)]
    [InlineData(int.MaxValue, 82, "0.015", 100)]
    [InlineData(48, 0, "0.015", 100)]
    [InlineData(48, 1_000_000_000_000, "0.015", 100)]
    [InlineData(48, 82, "1", 100)]
    [InlineData(48, 82, "-0.01", 100)]
    [InlineData(48, 82, "0.015", 0)]
    [InlineData(48, 82, "0.015", 9_000_000_000_000_000)]
    public void WhyNot_ImpossibleWish_GivesAReasonAndToBottlesThrowsIt(int bottles, long fill, string loss, long step)
    {
        string? why = Scaling.WhyNot(bottles, Mass.FromGrams(fill), Numbers.Of(loss), Mass.FromGrams(step));
        Assert.NotNull(why);
        Assert.Throws<ArgumentException>(
            () => Scaling.ToBottles(bottles, Mass.FromGrams(fill), Numbers.Of(loss), Mass.FromGrams(step)));
    }

    [Fact]
    public void WhyNot_LargestWishAllowed_DoesNotOverflow()
    {
        Mass fill = Mass.FromGrams(5_000);
        Assert.Null(Scaling.WhyNot(Scaling.MostBottles, fill, Scaling.HighestLoss, Mass.FromGrams(1_000_000_000)));
        Assert.Equal(
            1_000_000_000m,
            Scaling.ToBottles(Scaling.MostBottles, fill, Scaling.HighestLoss, Mass.FromGrams(1_000_000_000)).Total.Grams);
    }

    [Fact]
    public void ToMass_NothingOrTooMuch_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Scaling.ToMass(Mass.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => Scaling.ToMass(Mass.FromMilligrams(long.MaxValue)));
        Assert.Equal(Mass.FromGrams(250), Scaling.ToMass(Mass.FromGrams(250)).Total);
    }

    [Fact]
    public void LargestFrom_FragranceShort_NamesTheFragrance()
    {
        LargestBatch? largest = Scaling.LargestFrom(FigV3, [Mass.FromGrams(240), Mass.FromGrams(200), null]);
        Assert.Equal(new LargestBatch(Mass.FromGrams(2000), 0), largest);
    }

    [Fact]
    public void LargestFrom_Parts_AreTakenInProportion() => Assert.Equal(
        new LargestBatch(Mass.FromGrams(500), 1),
        Scaling.LargestFrom([1m, 1.5m], [Mass.FromGrams(1000), Mass.FromGrams(300)]));

    [Fact]
    public void LargestFrom_NothingLimits_IsUnknownRatherThanEndless() =>
        Assert.Null(Scaling.LargestFrom(FigV3, [null, null, null]));

    [Fact]
    public void LargestFrom_OneLineEmpty_IsZero() =>
        Assert.Equal(Mass.Zero, Scaling.LargestFrom(FigV3, [Mass.Zero, null, null])!.Total);

    [Fact]
    public void Split_ThreeThirds_SumsExactly() => Assert.Equal(
        [3334L, 3333L, 3333L], Scaling.Split(Mass.FromGrams(10), [1m, 1m, 1m]).Select(mass => mass.Milligrams));

    [Fact]
    public void Split_BelowZeroOrByNothing_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Scaling.Split(Mass.FromGrams(-1), [1m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Scaling.Split(Mass.FromGrams(1), []));
        Assert.Throws<ArgumentOutOfRangeException>(() => Scaling.Split(Mass.FromGrams(1), [1m, -0.5m]));
    }
}
