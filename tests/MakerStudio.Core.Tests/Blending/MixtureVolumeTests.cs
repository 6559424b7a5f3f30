using System.Globalization;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Blending;

public class MixtureVolumeTests
{
    private static readonly Celsius At20 = new(20);
    private static readonly EthanolStrength Strong = EthanolStrength.FromPercentVolume(96);

    /// <summary>OIML R 22: 70 % vol is 885.56 kg/m³ at 20 °C, whichever lines it comes from.</summary>
    [Fact]
    public void Density_AlcoholAndWaterOnTwoLines_IsR22()
    {
        Mixture mixture = Mixture.Of([Alcohol(807.42, Strong), Water(407.06)]);
        Assert.InRange(Known(mixture).Density.GramsPerMillilitre, 0.88555m, 0.88557m);
        Assert.InRange((double)mixture.AlcoholPart!.Value.PercentVolume, 69.999, 70.001);
    }

    /// <summary>83 g of 96 % vol, 5 g DPG at 1.0206 and 12 g fragrance at 0.98, volumes added: worked by hand.</summary>
    [Fact]
    public void Density_AlcoholWithFragrance_AddsTheirVolumes()
    {
        Mixture mixture = Fig();
        double volume = (83 / 0.80742) + (5 / 1.0206) + (12 / 0.98);
        DensityResult.Known found = Known(mixture);
        Assert.InRange((double)found.Density.GramsPerMillilitre, (100 / volume) - 0.000006, (100 / volume) + 0.000006);
        Assert.Contains(found.Warnings, warning => warning.Contains("Weigh a known volume", StringComparison.Ordinal));
        Assert.Contains(found.Workings, step => step.LineId is not null && step.Says(CultureInfo.InvariantCulture).StartsWith("Fig accord", StringComparison.Ordinal));
    }

    /// <summary>A material that is part alcohol keeps its own volume by itself.</summary>
    [Fact]
    public void Density_LineThatIsPartAlcohol_KeepsItsOwnDensityAlone()
    {
        MixtureLine tincture = new(Guid.CreateVersion7(), "Tincture", 1, new Density(0.85m),
            [new(CasNumber.Of("64-17-5"), "ethanol", 0.6), new(CasNumber.Of("7732-18-5"), "water", 0.1)]);
        Assert.Equal(0.85m, Known(Mixture.Of([tincture])).Density.GramsPerMillilitre);
        Assert.InRange(AlcoholContent.Of(Mixture.Of([tincture]), null).UnknownPercent, 29.999, 30.001);
    }

    [Fact]
    public void Density_LineThatBeliesItsComposition_IsNamed()
    {
        MixtureLine wrong = new(Guid.CreateVersion7(), "Tincture", 1, new Density(0.6m), [new(CasNumber.Of("64-17-5"), "ethanol", 0.9)]);
        Assert.Contains("Tincture", Assert.Single(Assert.IsType<DensityResult.Unknown>(MixtureVolume.Of(Mixture.Of([wrong]), At20)).Why), StringComparison.Ordinal);
    }

    [Fact]
    public void Density_LineWithoutOne_IsNamed()
    {
        MixtureLine unknown = new(Guid.CreateVersion7(), "Fig accord", 1, null, []);
        Assert.Equal(["Fig accord has no density. Enter one, or weigh a known volume of it."],
            Assert.IsType<DensityResult.Unknown>(MixtureVolume.Of(Mixture.Of([unknown, Alcohol(5, Strong)]), At20)).Why);
        Assert.Equal(0.9m, Known(Mixture.Of([unknown]), new Density(0.9m)).Density.GramsPerMillilitre);
    }

    [Fact]
    public void Density_Measured_OverridesAndKeepsTheEstimateBeside()
    {
        DensityResult.Known found = Known(Fig(), new Density(0.83m));
        Assert.True(found.IsMeasured);
        Assert.Equal(0.83m, found.Density.GramsPerMillilitre);
        Assert.InRange(found.Estimate!.Value.GramsPerMillilitre, 0.82m, 0.85m);
        Assert.Equal(Mass.FromGrams(83.5m), FillMass.Of(Volume.FromMillilitres(100), found.Density, Mass.FromGrams(0.5m)));
    }

    [Fact]
    public void Density_Warm_SwellsTheAlcoholAndSaysWhatIsNotKnown()
    {
        var warm = new Celsius(30);
        DensityResult.Known found = Assert.IsType<DensityResult.Known>(MixtureVolume.Of(Fig(), warm));
        Assert.True(found.Density < Known(Fig()).Density);
        Assert.Contains(found.Warnings, warning => warning.StartsWith("Fig accord is taken at its density of 20 °C", StringComparison.Ordinal));
        Assert.Contains("−20 to 40 °C", Assert.IsType<DensityResult.Unknown>(MixtureVolume.Of(Fig(), new Celsius(60))).Why[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Content_ThreeWaysOfSayingIt()
    {
        DensityResult.Known density = Known(Fig());
        AlcoholContent content = AlcoholContent.Of(Fig(), density.Density);
        Assert.InRange(content.PercentMass, 0.83 * 93.838 - 0.001, 0.83 * 93.838 + 0.001);
        Assert.InRange(content.PercentVolume!.Value - (content.PercentMass * (double)density.Density.GramsPerMillilitre / 0.789239), -0.001, 0.001);
        Assert.InRange(content.AlcoholPart!.Value.PercentVolume, 95.999, 96.001);
        Assert.Null(AlcoholContent.Of(Fig(), null).PercentVolume);
    }

    /// <summary>By itself, a mixture's % by volume is that of R 22.</summary>
    [Fact]
    public void Content_OfPlainAlcohol_IsItsStrength()
    {
        Mixture mixture = Mixture.Of([Alcohol(1, Strong)]);
        Assert.InRange(AlcoholContent.Of(mixture, Known(mixture).Density).PercentVolume!.Value, 95.999, 96.001);
    }

    [Fact]
    public void Mixture_ImpossibleShares_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => Mixture.Of([]));
        Assert.Throws<ArgumentException>(() => Mixture.Of([Water(0)]));
        Assert.Throws<ArgumentException>(() => Mixture.Of([Water(-1), Water(2)]));
        Assert.Throws<ArgumentException>(() => Mixture.Of([Water(double.NaN)]));
        Assert.Throws<ArgumentException>(() => Mixture.Of([Water(1) with { Constituents = [new(null, "a", 0.6), new(null, "b", 0.6)] }]));
    }

    private static DensityResult.Known Known(Mixture mixture, Density? measured = null) =>
        Assert.IsType<DensityResult.Known>(MixtureVolume.Of(mixture, At20, measured));

    private static Mixture Fig() => Mixture.Of(
    [
        Alcohol(83, Strong),
        MixtureLine.OfSubstance(Guid.CreateVersion7(), Substances.Find(CasNumber.Of("25265-71-8"))!, 5),
        new(Guid.CreateVersion7(), "Fig accord", 12, new Density(0.98m), []),
    ]);

    private static MixtureLine Alcohol(double grams, EthanolStrength strength) =>
        MixtureLine.OfAlcohol(Guid.CreateVersion7(), "Alcohol", grams, strength);

    private static MixtureLine Water(double grams) => MixtureLine.OfSubstance(Guid.CreateVersion7(), Substances.Water, grams);
}
