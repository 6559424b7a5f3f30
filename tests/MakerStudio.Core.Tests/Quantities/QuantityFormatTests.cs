using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Quantities;

public class QuantityFormatTests
{
    private static readonly CultureInfo British = CultureInfo.GetCultureInfo("en-GB");
    private static readonly CultureInfo German = CultureInfo.GetCultureInfo("de-DE");

    [Fact]
    public void Mass_Grouped_FollowsTheCulture()
    {
        Assert.Equal("3,320.0", QuantityFormat.Mass(Mass.FromGrams(3320), British));
        Assert.Equal("3.320,0", QuantityFormat.Mass(Mass.FromGrams(3320), German));
    }

    [Fact]
    public void Mass_Negative_BearsATrueMinus() =>
        Assert.Equal("\u2212130.0", QuantityFormat.Mass(Mass.FromGrams(-130), British));

    [Fact]
    public void Mass_RoundsToZero_BearsNoMinus() =>
        Assert.Equal("0.0", QuantityFormat.Mass(Mass.FromGrams(-0.04m), British));

    [Fact]
    public void Editable_NegativeZero_BearsNoMinus() =>
        Assert.Equal("0", QuantityFormat.Editable(decimal.Negate(0.00m), British));

    [Fact]
    public void Percent_OfAFraction_HasTwoDecimals() => Assert.Equal("65.04", QuantityFormat.Percent(0.650415m, British));

    [Fact]
    public void Money_Half_RoundsAwayFromZero() => Assert.Equal("4.51", QuantityFormat.Money(4.505m, 2, British));

    [Fact]
    public void Amount_Pieces_AreWhole() => Assert.Equal("1,000", QuantityFormat.Amount(StockAmount.OfPieces(1000), British));
}
