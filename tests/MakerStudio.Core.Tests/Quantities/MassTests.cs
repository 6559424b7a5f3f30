using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Quantities;

public class MassTests
{
    [Fact]
    public void FromGrams_ThreeDecimals_IsExact() => Assert.Equal(3_320_001, Mass.FromGrams(3320.001m).Milligrams);

    [Fact]
    public void FromGrams_FinerThanAMilligram_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Mass.FromGrams(0.0001m));

    [Theory]
    [InlineData("0.0005", 1)]
    [InlineData("0.0004", 0)]
    [InlineData("-0.0005", -1)]
    [InlineData("2.0015", 2002)]
    public void RoundGrams_Half_GoesAwayFromZero(string grams, long milligrams) =>
        Assert.Equal(milligrams, Mass.RoundGrams(Numbers.Of(grams)).Milligrams);

    [Fact]
    public void RoundGrams_BeyondTheType_IsRefusedByRange() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.RoundGrams(decimal.MaxValue));

    [Fact]
    public void Add_BeyondTheType_ThrowsRatherThanWraps() =>
        Assert.Throws<OverflowException>(() => Mass.FromMilligrams(long.MaxValue) + Mass.FromMilligrams(1));

    [Theory]
    [InlineData(3_995_940, 100_000, 4_000_000)]
    [InlineData(4_000_000, 100_000, 4_000_000)]
    [InlineData(0, 100_000, 0)]
    [InlineData(-150, 100, -100)]
    public void RoundUpTo_Step_GivesTheNextMultiple(long milligrams, long step, long expected) =>
        Assert.Equal(expected, Mass.FromMilligrams(milligrams).RoundUpTo(Mass.FromMilligrams(step)).Milligrams);

    [Fact]
    public void RoundUpTo_NoStep_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Mass.FromGrams(1).RoundUpTo(Mass.Zero));

    [Theory]
    [InlineData("0.099")]
    [InlineData("5.01")]
    [InlineData("790")]
    [InlineData("0")]
    [InlineData("-1")]
    public void Density_Impossible_IsRefused(string density) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Density(Numbers.Of(density)));

    [Fact]
    public void Density_NeverSet_ThrowsRatherThanReadingZero() =>
        Assert.Throws<InvalidOperationException>(() => default(Density).GramsPerMillilitre);

    [Fact]
    public void MassOf_HundredMillilitres_IsRoundedToTheMilligram() =>
        Assert.Equal(81_500, new Density(0.815m).MassOf(Volume.FromMillilitres(100)).Milligrams);

    [Fact]
    public void StockAmount_GramsAndPieces_DoNotMix()
    {
        StockAmount grams = StockAmount.OfGrams(2);
        StockAmount pieces = StockAmount.OfPieces(2);
        Assert.Throws<InvalidOperationException>(() => grams + pieces);
        Assert.Throws<InvalidOperationException>(() => grams - pieces);
        Assert.Throws<InvalidOperationException>(() => grams < pieces);
        Assert.Throws<InvalidOperationException>(() => pieces.Mass);
    }

    [Fact]
    public void StockAmount_Display_IsGramsOrPieces()
    {
        Assert.Equal(480.5m, StockAmount.OfGrams(480.5m).Display);
        Assert.Equal(48m, StockAmount.OfPieces(48).Display);
    }
}
