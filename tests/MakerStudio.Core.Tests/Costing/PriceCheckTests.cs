using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Costing;

public class PriceCheckTests
{
    private static readonly Density Alcohol = Density.FromGramsPerMillilitre(0.79m);

    [Fact]
    public void Compare_LitresTypedAsKilograms_AsksAndNamesLitres_S6()
    {
        var question = PriceCheck.Compare(8.10m, 160.00m / 25m, AmountUnit.Kilogram, Alcohol);
        Assert.NotNull(question);
        Assert.Equal(6.40m, question.NewUnitPrice);
        Assert.True(question.IsBelow);
        Assert.Equal(-0.21m, Math.Round(question.FractionAway, 2));
        Assert.Equal(AmountUnit.Litre, question.FitsAs?.Unit);
        Assert.Equal(8.10m, Math.Round(question.FitsAs!.UnitPrice, 2));
    }

    [Fact]
    public void Compare_SameInvoiceInLitres_IsSilent_S6()
    {
        var converted = Assert.IsType<ConversionResult.Converted>(
            AmountConversion.ToStock(25m, AmountUnit.Litre, StockUnit.Gram, Alcohol));
        Assert.Equal(19_750m, converted.Exact);
        Assert.Null(PriceCheck.Compare(8.10m, 160.00m / 19.75m, AmountUnit.Litre, Alcohol));
    }

    [Fact]
    public void Compare_KilogramsTypedAsLitres_NamesKilograms()
    {
        var question = PriceCheck.Compare(6.40m, 160.00m / 19.75m, AmountUnit.Litre, Alcohol);
        Assert.Equal(AmountUnit.Kilogram, question?.FitsAs?.Unit);
    }

    [Fact]
    public void Compare_GramsTypedAsKilograms_NamesGrams()
    {
        var question = PriceCheck.Compare(67.374m, 0.067m, AmountUnit.Kilogram);
        Assert.Equal(AmountUnit.Gram, question?.FitsAs?.Unit);
    }

    [Fact]
    public void Compare_NoDensity_AsksWithoutNamingLitres()
    {
        var question = PriceCheck.Compare(8.10m, 6.40m, AmountUnit.Kilogram);
        Assert.NotNull(question);
        Assert.Null(question.FitsAs);
    }

    [Theory]
    [InlineData(11.50, false)]
    [InlineData(11.51, true)]
    [InlineData(8.50, false)]
    [InlineData(8.49, true)]
    public void Compare_AsksOnlyBeyond15Percent(double price, bool asks) =>
        Assert.Equal(asks, PriceCheck.Compare(10m, (decimal)price) is not null);

    [Fact]
    public void Compare_Pieces_AsksWithoutNamingAUnit() =>
        Assert.Null(PriceCheck.Compare(0.42m, 0.84m, AmountUnit.Each, Alcohol)!.FitsAs);

    [Fact]
    public void Compare_LastWasFree_CannotTell() => Assert.Null(PriceCheck.Compare(0m, 6.40m));

    [Fact]
    public void Compare_NegativePrice_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PriceCheck.Compare(8m, -1m));
}
