using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Quantities;

public class AmountConversionTests
{
    private static readonly Density Alcohol = new(0.79m);

    [Fact]
    public void ToStock_TwentyFiveLitresOfAlcohol_IsNineteenAndThreeQuarterKilograms()
    {
        var converted = Assert.IsType<ConversionResult.Converted>(
            AmountConversion.ToStock(25, AmountUnit.Litre, StockUnit.Gram, Alcohol));
        Assert.Equal(StockAmount.OfGrams(19_750), converted.Amount);
        Assert.Equal(19_750m, converted.Exact);
    }

    [Theory]
    [InlineData(AmountUnit.Litre)]
    [InlineData(AmountUnit.Millilitre)]
    [InlineData(AmountUnit.FluidOunceUs)]
    [InlineData(AmountUnit.FluidOunceImperial)]
    public void ToStock_VolumeWithoutDensity_IsRefusedWithTheReason(AmountUnit unit)
    {
        var refused = Assert.IsType<ConversionResult.NeedsDensity>(AmountConversion.ToStock(1, unit, StockUnit.Gram, null));
        Assert.Contains("density", refused.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(AmountUnit.Each, StockUnit.Gram)]
    [InlineData(AmountUnit.Kilogram, StockUnit.Each)]
    [InlineData(AmountUnit.Litre, StockUnit.Each)]
    public void ToStock_PiecesAgainstMeasure_IsTheWrongKind(AmountUnit unit, StockUnit stockedIn) =>
        Assert.IsType<ConversionResult.WrongKind>(AmountConversion.ToStock(2, unit, stockedIn, Alcohol));

    [Fact]
    public void ToStock_HalfABottle_IsRefused() =>
        Assert.IsType<ConversionResult.WrongKind>(AmountConversion.ToStock(2.5m, AmountUnit.Each, StockUnit.Each, null));

    [Fact]
    public void ToStock_Pound_KeepsTheExactGramsBesideTheRoundedOnes()
    {
        var converted = Assert.IsType<ConversionResult.Converted>(
            AmountConversion.ToStock(1, AmountUnit.Pound, StockUnit.Gram, null));
        Assert.Equal(453_592, converted.Amount.Units);
        Assert.Equal(453.59237m, converted.Exact);
    }

    [Theory]
    [InlineData("79228162514264337593543950335", AmountUnit.Litre)]
    [InlineData("79228162514264337593543950335", AmountUnit.Each)]
    [InlineData("1000000000000", AmountUnit.Kilogram)]
    [InlineData("1e-28", AmountUnit.Gram)]
    [InlineData("0.4", AmountUnit.Milligram)]
    public void ToStock_BeyondWhatIsKept_IsRefusedNotThrown(string quantity, AmountUnit unit) =>
        Assert.IsType<ConversionResult.OutOfRange>(AmountConversion.ToStock(
            Numbers.Of(quantity), unit, AmountUnits.IsCount(unit) ? StockUnit.Each : StockUnit.Gram, Alcohol));

    [Fact]
    public void FromStock_VolumeWithoutDensity_IsUnknown() =>
        Assert.Null(AmountConversion.FromStock(StockAmount.OfGrams(10), AmountUnit.Millilitre, null));

    [Fact]
    public void Symbol_EveryUnit_ReadsBackAsItself()
    {
        foreach (AmountUnit unit in AmountUnits.All)
        {
            Assert.Equal(unit, AmountUnits.Parse(AmountUnits.Symbol(unit)));
            Assert.Equal(1, new[] { AmountUnits.IsMass(unit), AmountUnits.IsVolume(unit), AmountUnits.IsCount(unit) }.Count(yes => yes));
        }

        Assert.Equal(AmountUnits.All.Count, AmountUnits.All.Select(AmountUnits.Ucum).Distinct().Count());
    }

    [Theory]
    [InlineData("oz")]
    [InlineData("fl oz")]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("stone")]
    public void Parse_UnclearUnit_IsNone(string? token) => Assert.Null(AmountUnits.Parse(token));
}
