using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Assessing;

public class FormulaMixtureTests
{
    private const string Linalool = "78-70-6";
    private const string TertButylAlcohol = "75-65-0";

    private static MixtureLine Line(AssessedMaterial material) => FormulaMixture.Of(new AssessedLine(Guid.Empty, material, 0.5m));

    private static AssessedMaterial Material(MaterialKind kind = MaterialKind.FragranceOil) => new(Guid.Empty, "Oil", kind);

    private static double Share(MixtureLine line, string cas) => line.ShareOf(CasNumber.Of(cas));

    /// <summary>96 % vol at 20 °C is 93.84 % by weight (OIML R 22).</summary>
    [Fact]
    public void Alcohol_OfAStrength_IsEthanolAndWater()
    {
        MixtureLine line = Line(Material(MaterialKind.Solvent) with { Strength = new(96m, AlcoholBasis.PercentVolume) });
        Assert.Equal(0.9384, line.Ethanol, 4);
        Assert.Equal(1, line.Ethanol + line.Water, 12);
        Assert.Equal(0, line.Unknown);
    }

    [Fact]
    public void Alcohol_WithDenaturant_LeavesRoomForIt()
    {
        MixtureLine line = Line(Material(MaterialKind.Solvent) with
        {
            Strength = new(92m, AlcoholBasis.PercentMass),
            Composition = [new("ethanol", "64-17-5", 80m, 100m), new("tert-butyl alcohol", TertButylAlcohol, 2m, 2m)],
        });
        Assert.Equal(0.02, Share(line, TertButylAlcohol), 12);
        Assert.Equal(0.98 * 0.92, line.Ethanol, 12);
        Assert.Equal(0.98 * 0.08, line.Water, 12);
    }

    [Theory]
    [InlineData(null, 0.15)]
    [InlineData("12", 0.12)]
    public void Composition_Range_TakesTheMiddleOrTheStatedValue(string? stated, double expected)
    {
        MixtureLine line = Line(Material() with
        {
            Composition = [new("linalool", Linalool, 10m, 20m, stated is null ? null : Numbers.Of(stated))],
        });
        Assert.Equal(expected, Share(line, Linalool), 12);
        Assert.Equal(1 - expected, line.Unknown, 12);
    }

    [Fact]
    public void Composition_MiddlesAboveTheWhole_AreBroughtDown()
    {
        MixtureLine line = Line(Material() with { Composition = [new("linalool", Linalool, 50m, 90m), new("rest", null, 40m, 60m)] });
        Assert.Equal(0.7 / 1.2, Share(line, Linalool), 12);
        Assert.Equal(0, line.Unknown);
    }

    [Fact]
    public void Composition_NameWithoutNumber_IsFoundInTheTables() =>
        Assert.Equal(0.15, Share(Line(Material() with { Composition = [new("Linalool", null, 10m, 20m)] }), Linalool), 12);

    [Fact]
    public void SingleSubstance_IsItselfWithTheTablesDensity()
    {
        MixtureLine line = Line(Material(MaterialKind.Fixative) with { Cas = CasNumber.Of("25265-71-8") });
        Assert.Equal(1, Share(line, "25265-71-8"));
        Assert.Equal(1.0206m, line.Density!.Value.GramsPerMillilitre); // dipropylene glycol, CRC Handbook
    }

    [Fact]
    public void SingleSubstance_OwnDensityHolds() => Assert.Equal(
        1.023m,
        Line(Material(MaterialKind.Fixative) with { Cas = CasNumber.Of("25265-71-8"), Density = new Density(1.023m) }).Density!.Value.GramsPerMillilitre);

    [Fact]
    public void SingleSubstance_WithATraceStated_IsTheRestOfIt()
    {
        MixtureLine line = Line(Material(MaterialKind.Fixative) with { Cas = CasNumber.Of("25265-71-8"), Composition = [new("BHT", "128-37-0", 0.1m, 0.1m)] });
        Assert.Equal(0.999, Share(line, "25265-71-8"), 12);
        Assert.Equal(0, line.Unknown);
    }

    /// <summary>An oil's own number is no substance of the table: what is not stated of it stays unknown.</summary>
    [Fact]
    public void EssentialOil_WithItsNumberAndComposition_KeepsItsUnknownRest()
    {
        MixtureLine line = Line(Material(MaterialKind.EssentialOil) with { Cas = CasNumber.Of("8000-28-0"), Composition = [new("linalool", Linalool, 30m, 30m)] });
        Assert.Equal(0.7, line.Unknown, 12);
    }

    [Fact]
    public void Water_NeedsNoNumber() => Assert.Equal(1, Line(Material(MaterialKind.Water)).Water);

    [Fact]
    public void Unstated_IsUnknown()
    {
        MixtureLine line = Line(Material() with { FlashPoint = new Celsius(95m) });
        Assert.Equal(1, line.Unknown);
        Assert.Null(line.Density);
        Assert.Equal(95m, line.FlashPoint!.Value.Degrees);
    }
}
