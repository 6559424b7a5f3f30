using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using static MakerStudio.Core.Advice.ExampleLines;
using static MakerStudio.Core.Tests.Advice.AdviceCase;

namespace MakerStudio.Core.Tests.Advice;

public class WaterAdviceTests
{
    private static readonly RoomSprayWater WaterSpray = new();

    /// <summary>The trade's own case: water 80, alcohol 17, oil 3 separates.</summary>
    [Fact]
    public void Water80Alcohol17Oil3_WillSeparate()
    {
        AdviceGiven first = All(Of(WaterSpray, Water(80m), Alcohol(17m), Oil(3m)))[0];
        Assert.Equal(("water-without-solubiliser", AdviceKind.Stop), (first.Rule, first.Kind));
        Assert.Contains("will separate", first.Says(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("69.9", "Stop")] // alcohol as weak as this carries nothing
    [InlineData("70", "")]
    public void NoSolubiliser_WeakAlcoholAlone_AtItsLimit(string percentVolume, string expected) => Assert.Equal(
        expected, Text(Kinds("water-without-solubiliser", Spray(Oil(3m), Alcohol(97m, Numbers.Of(percentVolume))))));

    [Theory]
    [InlineData("0.5", "")]
    [InlineData("0.51", "Warn")]
    [InlineData("32", "Warn")]
    [InlineData("33", "Stop")] // 96 % vol is 93.84 % and 70 % vol 62.39 % by weight (OIML R 22), so 70 is reached at 32.5 of water
    public void NoSolubiliser_WaterAddedToAlcohol_AtItsLimits(string water, string expected) => Assert.Equal(
        expected, Text(Kinds("water-without-solubiliser", Spray(Oil(3m), Alcohol(97m - Numbers.Of(water)), Water(Numbers.Of(water))))));

    [Theory]
    [InlineData("37", "Warn")]
    [InlineData("37.5", "Stop")]
    public void NoSolubiliser_WaterBesideAnotherCarrier_StopsWhereWaterIsTheLarger(string water, string expected) => Assert.Equal(
        expected, Text(Kinds("water-without-solubiliser", Spray(Oil(25m), Dpm(75m - Numbers.Of(water)), Water(Numbers.Of(water))))));

    [Fact]
    public void NoSolubiliser_WithOneOrWithoutScent_IsSilent()
    {
        Assert.Empty(Kinds("water-without-solubiliser", Of(WaterSpray, Oil(3m), Solubiliser(12m), Water(85m))));
        Assert.Empty(Kinds("water-without-solubiliser", Of(WaterSpray, Water(100m))));
        Assert.Empty(Kinds("water-without-solubiliser", Of(new ContainerCandle(), Oil(8m), Water(2m), Wax(90m))));
    }

    [Theory]
    [InlineData("19.9", "Warn")]
    [InlineData("20", "Note")]
    [InlineData("20.1", "Note")]
    public void NoPreservative_AtItsLimit(string alcohol, string expected)
    {
        AssessedMaterial pure = Material("Alcohol", MaterialKind.Solvent) with { Strength = new(100m, AlcoholBasis.PercentMass) };
        AssessedFormula formula = Of(WaterSpray, Oil(3m), Solubiliser(12m), Line(pure, Numbers.Of(alcohol)), Water(85m - Numbers.Of(alcohol)));
        Assert.Equal(expected, Text(Kinds("water-without-preservative", formula)));
    }

    [Fact]
    public void NoPreservative_WithOneOrWithoutWater_IsSilent()
    {
        Assert.Empty(Kinds("water-without-preservative", Of(WaterSpray, Oil(3m), Solubiliser(12m), Preservative(1m), Water(84m))));
        Assert.Empty(Kinds("water-without-preservative", Spray(Oil(12m), Alcohol(88m, 80m)))); // its water came with strong alcohol
        Assert.Equal([AdviceKind.Note], Kinds("water-without-preservative", Spray(Oil(3m), Alcohol(97m, 40m))));
    }

    [Fact]
    public void NoPreservative_IsopropanolKeepsToo()
    {
        AssessedLine propanol = Line(Material("Isopropanol", MaterialKind.Solvent, "67-63-0"), 25m);
        Assert.Equal([AdviceKind.Note], Kinds("water-without-preservative", Of(WaterSpray, Oil(3m), Solubiliser(12m), propanol, Water(60m))));
    }

    [Theory]
    [InlineData("2.99", "Warn")]
    [InlineData("3", "Note")]
    [InlineData("8.99", "Note")]
    [InlineData("9", "")]
    [InlineData("15", "")]
    [InlineData("15.01", "Note")]
    public void SolubiliserRatio_AtItsLimits(string solubiliser, string expected) => Assert.Equal(
        expected,
        Text(Kinds("solubiliser-ratio", Of(WaterSpray, Oil(3m), Solubiliser(Numbers.Of(solubiliser)), Water(97m - Numbers.Of(solubiliser))))));

    [Theory]
    [InlineData("24", "")]
    [InlineData("24.01", "Note")]
    public void SolubiliserRatio_CitrusTakesMore(string solubiliser, string expected) => Assert.Equal(
        expected,
        Text(Kinds("solubiliser-ratio", Of(WaterSpray, Line(Orange, 3m), Solubiliser(Numbers.Of(solubiliser)), Water(97m - Numbers.Of(solubiliser))))));

    [Fact]
    public void SolubiliserRatio_CarriedByAlcohol_IsSilent() =>
        Assert.Empty(Kinds("solubiliser-ratio", Spray(Oil(10m), Solubiliser(2m), Alcohol(88m))));

    [Fact]
    public void WellMadeWaterSpray_HasNoWarnings()
    {
        IReadOnlyList<AdviceGiven> given = All(Of(WaterSpray, Oil(2m), Solubiliser(8m), Preservative(1m), Water(89m)), isBeingReleased: true);
        Assert.Equal(["plastics"], given.Select(each => each.Rule));
    }

    [Theory]
    [InlineData("0.5", "")]
    [InlineData("0.51", "Warn")]
    public void Diffuser_WaterAtItsLimit(string water, string expected) => Assert.Equal(
        expected, Text(Kinds("diffuser-water", Of(new ReedDiffuser(), Oil(25m), Dpm(75m - Numbers.Of(water)), Water(Numbers.Of(water))))));

    [Theory]
    [InlineData("19.99", "")]
    [InlineData("20", "Warn")]
    public void Diffuser_AlcoholAtItsLimit(string alcohol, string expected)
    {
        AssessedMaterial pure = Material("Alcohol", MaterialKind.Solvent) with { Strength = new(100m, AlcoholBasis.PercentMass) };
        AssessedLine[] lines = [Oil(25m), Dpm(75m - Numbers.Of(alcohol)), Line(pure, Numbers.Of(alcohol))];
        Assert.Equal(expected, Text(Kinds("diffuser-alcohol", Of(new ReedDiffuser(), lines))));
        Assert.Empty(Kinds("diffuser-alcohol", Spray(lines)));
        Assert.Empty(Kinds("diffuser-water", Spray(lines)));
    }

    [Theory]
    [InlineData("0.5", "")]
    [InlineData("0.51", "Stop")]
    public void Sachet_WaterAtItsLimit(string water, string expected) => Assert.Equal(
        expected, Text(Kinds("sachet-water", Of(new Sachet(), Oil(4m), Petals(96m - Numbers.Of(water)), Water(Numbers.Of(water))))));

    [Theory]
    [InlineData("0.5", "")]
    [InlineData("0.51", "Stop")]
    public void Wax_WaterAtItsLimit(string water, string expected)
    {
        AssessedLine[] lines = [Oil(8m), Wax(92m - Numbers.Of(water)), Water(Numbers.Of(water))];
        Assert.Equal(expected, Text(Kinds("wet-wax", Of(new ContainerCandle(), lines))));
        Assert.Equal(expected, Text(Kinds("wet-wax", Of(new WaxMelt(), lines))));
    }

    [Fact]
    public void Wax_AlcoholCountsAsWater()
    {
        AdviceGiven given = Assert.Single(Given("wet-wax", Of(new WaxMelt(), Oil(8m), Wax(90m), Alcohol(2m))));
        Assert.Equal("Alcohol", Assert.Single(given.Lines).Material.Name);
    }
}
