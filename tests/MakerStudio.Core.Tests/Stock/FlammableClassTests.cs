using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class FlammableClassTests
{
    private static readonly AssessedMaterial Liquid = new(Guid.NewGuid(), "Liquid", MaterialKind.Solvent);

    [Theory]
    // Limits of CLP Annex I Table 2.6.1: below 23 °C, up to and with 60 °C; OSHA adds Category 4 up to and with 93 °C.
    [InlineData(null, 22.9, FlammableCategory.Category2)]
    [InlineData(null, 23.0, FlammableCategory.Category3)]
    [InlineData(null, 60.0, FlammableCategory.Category3)]
    [InlineData(null, 60.1, FlammableCategory.Category4)]
    [InlineData(null, 93.1, FlammableCategory.NotClassified)]
    [InlineData("Flam. Liq. 2 H225; Eye Irrit. 2 H319", null, FlammableCategory.Category2)]
    [InlineData("not classified", null, FlammableCategory.NotClassified)]
    [InlineData("not classified", 75.0, FlammableCategory.Category4)] // the test is worse than the sheet
    [InlineData("Flam. Liq. 3 H226", 75.0, FlammableCategory.Category3)] // the sheet is worse than the test
    public void Of_Material_TakesTheWorseOfSheetAndFlashPoint(string? classes, double? flash, FlammableCategory category) =>
        Assert.Equal(category, FlammableClass.Of(Liquid with
        {
            Hazards = classes is null ? null : new(classes), FlashPoint = flash is { } f ? new Celsius((decimal)f) : null,
        }).Category);

    [Fact]
    public void Of_NothingKnown_IsNotKnownUnlessTheTableKnowsIt()
    {
        Assert.Null(FlammableClass.Of(Liquid).Category);
        Assert.Equal(FlammableCategory.Category2, FlammableClass.Of(Liquid with { Cas = CasNumber.Of("64-17-5") }).Category);
        Assert.Equal(FlammableCategory.NotClassified, FlammableClass.Of(Liquid with { Kind = MaterialKind.Water }).Category);
    }

    [Fact]
    public void Of_Formula_MeasuredOverrulesTheEstimate()
    {
        AssessedMaterial ethanol = Liquid with { Name = "Ethanol", Cas = CasNumber.Of("64-17-5"), Density = new Density(0.789m), Strength = new(96, AlcoholBasis.PercentVolume) };
        var formula = new AssessedFormula(ProductKinds.Get("room-spray-alcohol"), [new(Guid.NewGuid(), ethanol, 1m, LineBasis.PercentByWeight)], MeasuredFacts.None);

        Assert.Equal(FlammableCategory.Category2, FlammableClass.Of(formula).Category);
        Assert.Equal(FlammableCategory.Category3, FlammableClass.Of(formula with { Measured = new(FlashPoint: new Celsius(30)) }).Category);
    }
}
