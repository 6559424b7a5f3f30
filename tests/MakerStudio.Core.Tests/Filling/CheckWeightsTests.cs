using MakerStudio.Core.Filling;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Filling;

public class CheckWeightsTests
{
    private static readonly Mass Nominal = Mass.FromGrams(81.5m);

    /// <summary>Own example: 2 g over 81.5 g is 2.5 % given away.</summary>
    [Fact]
    public void Of_TwoGramsOver_SaysWhatIsGivenAway()
    {
        var summary = CheckWeights.Of([Mass.FromGrams(83.4m), Mass.FromGrams(83.6m)], Nominal, 0.045m);
        Assert.Equal(83.5m, summary.Mean);
        Assert.Equal(2.5m, Math.Round(summary.OverNominal!.Value * 100, 1));
        Assert.False(summary.IsMeanShort);

        // 2 g × 48 × 0.016 a gram.
        Assert.Equal(1.536m, summary.GivenAway(48, 0.016m));
    }

    [Fact]
    public void Of_ShortPacks_CountsThoseBelowTheSinglePackLimit()
    {
        // 81.5 g less 4.5 % is 77.8325 g, to the milligram 77.833.
        var summary = CheckWeights.Of([Mass.FromGrams(77.832m), Mass.FromGrams(77.833m), Mass.FromGrams(81.4m)], Nominal, 0.045m);
        Assert.Equal(77.833m, summary.Least!.Value.Grams);
        Assert.Equal(1, summary.BelowLimit);
        Assert.Equal(77.832m, summary.Lowest.Grams);
        Assert.True(summary.IsMeanShort);
        Assert.Equal(0m, summary.GivenAway(48, 0.016m));
    }

    [Fact]
    public void Of_NominalUnknown_StaysUnknown()
    {
        var summary = CheckWeights.Of([Mass.FromGrams(80m)], null, 0.045m);
        Assert.Null(summary.OverNominal);
        Assert.Null(summary.Least);
        Assert.False(summary.IsMeanShort);
        Assert.Equal(0, summary.BelowLimit);
    }

    [Fact]
    public void Of_MeanExactlyNominal_IsNotShort() => Assert.False(CheckWeights.Of([Nominal], Nominal, 0.045m).IsMeanShort);

    [Fact]
    public void Of_Nothing_IsRefused() => Assert.Throws<ArgumentException>(() => CheckWeights.Of([], Nominal, 0.045m));
}
