using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Blending;

/// <summary>The house's worked numbers: 200 mL at 0.90 g/mL, 8 % of wax against 8 % of total.</summary>
public class CandleTests
{
    [Fact]
    public void CandleFill_EightPercentOfWaxAndOfTotal_Differ()
    {
        var fill = Volume.FromMillilitres(200);
        var density = new Density(0.90m);
        CandleFill ofWax = CandleFill.Of(fill, density, 0.08m, WaxShareBasis.OfWax);
        CandleFill ofTotal = CandleFill.Of(fill, density, 0.08m, WaxShareBasis.OfTotal);
        Assert.Equal((180.0m, 166.667m, 13.333m), (ofWax.Total.Grams, ofWax.Wax.Grams, ofWax.Addition.Grams));
        Assert.Equal((165.60m, 14.40m), (ofTotal.Wax.Grams, ofTotal.Addition.Grams));
        Assert.Equal(0.0741m, decimal.Round(WaxShare.OfTotal(0.08m), 4));
        Assert.Contains("7.41 % of the total", ofWax.Workings[1].ToString(), StringComparison.Ordinal);
    }

    /// <summary>a = b/(1 − b): 8 % of total is 8.70 % of wax; and back.</summary>
    [Fact]
    public void WaxShare_OfWax_TurnsOfTotalRound()
    {
        Assert.Equal(0.0870m, decimal.Round(WaxShare.OfWax(0.08m), 4));
        Assert.Equal(0.08m, decimal.Round(WaxShare.OfTotal(WaxShare.OfWax(0.08m)), 20));
        CandleFill ofTotal = CandleFill.Of(Volume.FromMillilitres(200), new Density(0.90m), 0.08m, WaxShareBasis.OfTotal);
        Assert.Contains("8.70 % of the wax is 8.00 % of the total", ofTotal.Workings[1].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void CandleFill_NothingLeftForWax_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CandleFill.Of(Volume.FromMillilitres(1), new Density(0.9m), 1m, WaxShareBasis.OfTotal));
        Assert.Throws<ArgumentOutOfRangeException>(() => CandleFill.Of(Volume.FromMillilitres(-1), new Density(0.9m), 0.1m, WaxShareBasis.OfWax));
        Assert.Throws<ArgumentOutOfRangeException>(() => WaxShare.OfTotal(-0.01m));
    }

    [Fact]
    public void DryFill_CountsOnTheDryWeight()
    {
        DryFill fill = DryFill.Of(Mass.FromGrams(200), 0.04m, 0.08m);
        Assert.Equal((8m, 16m, 224m), (fill.Oil.Grams, fill.Fixative.Grams, fill.Total.Grams));
        Assert.Equal(8m / 224m, fill.OilOfTotal);
    }

    [Fact]
    public void DropWeight_TwentyDrops_GiveOneAndItsError()
    {
        var found = Assert.IsType<DropWeightResult.Weighed>(DropWeight.Of(Mass.FromGrams(0.52m), 20, Mass.FromGrams(0.01m)));
        Assert.Equal(26m, found.MilligramsPerDrop);
        Assert.Equal(0.0192m, decimal.Round(found.ReadingError, 4));
        Assert.Equal(39, found.DropsForOnePercent);
    }

    [Fact]
    public void DropWeight_Impossible_SaysWhy()
    {
        Assert.Contains("Count", Why(DropWeight.Of(Mass.FromGrams(1), 0, Mass.FromGrams(0.01m))), StringComparison.Ordinal);
        Assert.Contains("balance", Why(DropWeight.Of(Mass.FromGrams(1), 20, Mass.Zero)), StringComparison.Ordinal);
        Assert.Contains("too much for a drop", Why(DropWeight.Of(Mass.FromGrams(52), 20, Mass.FromGrams(0.01m))), StringComparison.Ordinal);
    }

    /// <summary>A gram is the most that is taken for a drop; the house's own limit.</summary>
    [Theory]
    [InlineData(20_000, true)]
    [InlineData(20_001, false)]
    public void DropWeight_AtTheLargestDrop(long milligrams, bool isTaken) =>
        Assert.Equal(isTaken, DropWeight.Of(Mass.FromMilligrams(milligrams), 20, Mass.FromMilligrams(10)) is DropWeightResult.Weighed);

    /// <summary>A balance that reads in tonnes asks for more drops than can be counted, and no error.</summary>
    [Fact]
    public void DropWeight_FarTooCoarseABalance_AsksForTheMost()
    {
        var found = Assert.IsType<DropWeightResult.Weighed>(DropWeight.Of(Mass.FromMilligrams(1), 1, Mass.FromGrams(1_000_000m)));
        Assert.Equal(int.MaxValue, found.DropsForOnePercent);
    }

    private static string Why(DropWeightResult result) => Assert.IsType<DropWeightResult.NotPossible>(result).Why;
}
