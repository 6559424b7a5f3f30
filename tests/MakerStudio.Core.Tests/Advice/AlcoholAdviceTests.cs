using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using static MakerStudio.Core.Advice.ExampleLines;
using static MakerStudio.Core.Tests.Advice.AdviceCase;

namespace MakerStudio.Core.Tests.Advice;

/// <summary>Each limit from both sides. The limits are common practice or our own, as the rules say.</summary>
public class AlcoholAdviceTests
{
    private static readonly Guid Lot = new("0193f2a0-0000-7000-8000-0000000000aa");

    [Theory]
    [InlineData("94.9", "12", "Warn")]
    [InlineData("95", "12", "")]
    [InlineData("95.1", "12", "")]
    [InlineData("94.9", "5", "Note")]
    [InlineData("94.9", "5.01", "Warn")]
    [InlineData("70", "12", "Warn")]
    [InlineData("69.9", "12", "")] // below that it is no haze any more: it separates
    [InlineData("90", "0", "")]
    public void TooWeak_AtItsLimits(string percentVolume, string scent, string expected)
    {
        AssessedFormula formula = Spray(Oil(Numbers.Of(scent)), Alcohol(100m - Numbers.Of(scent), Numbers.Of(percentVolume)));
        Assert.Equal(expected, Text(Kinds("alcohol-too-weak", formula)));
    }

    /// <summary>190 US proof is 95 % vol, stated at 60 °F: the limit must not cut it off in conversion.</summary>
    [Fact]
    public void TooWeak_190UsProof_IsStrongEnough()
    {
        AssessedMaterial proof = Material("Alcohol", MaterialKind.Solvent) with { Strength = new(190m, AlcoholBasis.UsProof) };
        Assert.Empty(Kinds("alcohol-too-weak", Spray(Oil(12m), Line(proof, 88m))));
        Assert.Equal([AdviceKind.Good], Kinds("clear-likely", Spray(Oil(12m), Line(proof, 88m))));
    }

    [Fact]
    public void TooWeak_WaterAddedToStrongAlcohol_CountsWithIt()
    {
        AssessedFormula formula = Spray(Oil(10m), Alcohol(80m, 96m), Water(10m));
        Assert.Equal([AdviceKind.Warn], Kinds("alcohol-too-weak", formula));
        Assert.Equal([AdviceKind.Warn], Kinds("water-without-solubiliser", formula));
    }

    /// <summary>DPG beside the alcohol thins the whole and not the alcohol: haze depends on alcohol and water alone.</summary>
    [Fact]
    public void TooWeak_OtherCarriersBeside_DoNotCount() =>
        Assert.Empty(Kinds("alcohol-too-weak", Spray(Oil(12m), Dpm(40m), Alcohol(48m, 96m))));

    [Fact]
    public void TooWeak_WithSolubiliser_IsSilent() =>
        Assert.Empty(Kinds("alcohol-too-weak", Spray(Oil(8m), Solubiliser(8m), Alcohol(84m, 85m))));

    [Fact]
    public void TooWeak_MoreScentOrLessStrength_MeasuresWorse()
    {
        decimal? few = Given("alcohol-too-weak", Spray(Oil(8m), Alcohol(92m, 90m)))[0].Measure;
        decimal? more = Given("alcohol-too-weak", Spray(Oil(12m), Alcohol(88m, 90m)))[0].Measure;
        decimal? weaker = Given("alcohol-too-weak", Spray(Oil(8m), Alcohol(92m, 80m)))[0].Measure;
        Assert.True(more > few);
        Assert.True(weaker > few);
    }

    [Theory]
    [InlineData("9.99", "")]
    [InlineData("10", "Warn")]
    [InlineData("10.01", "Warn")]
    public void Isopropanol_AtItsLimit(string percent, string expected)
    {
        AssessedLine propanol = Line(Material("Isopropanol", MaterialKind.Solvent, "67-63-0"), Numbers.Of(percent));
        Assert.Equal(expected, Text(Kinds("isopropanol-base", Spray(Oil(10m), propanol, Alcohol(90m - Numbers.Of(percent))))));
    }

    /// <summary>A strength typed for isopropanol is not that of ethanol.</summary>
    [Theory]
    [InlineData("67-63-0", "IPA 99")]
    [InlineData(null, "Isopropyl alcohol 99")]
    public void Isopropanol_WithAStrength_IsStillIsopropanol(string? cas, string name)
    {
        AssessedMaterial propanol = Material(name, MaterialKind.Solvent, cas) with { Strength = new(99m, AlcoholBasis.PercentVolume) };
        AssessedFormula formula = Spray(Oil(12m), Line(propanol, 88m));
        Assert.Equal([AdviceKind.Warn], Kinds("isopropanol-base", formula));
        Assert.Empty(Kinds("clear-likely", formula));
        Assert.Equal(0, AdviceBasis.Of(formula).Ethanol);
        // 99 mL at 0.7809 and 1 mL at 0.9982 g/mL: 98.725 % by weight.
        Assert.Equal(0.88 * 0.98725, AdviceBasis.Of(formula).Propanol, 5);
    }

    [Fact]
    public void Isopropanol_InTheCompositionOfAnAlcohol_Counts()
    {
        AssessedMaterial denatured = Material("Denatured alcohol", MaterialKind.Solvent) with
        {
            Strength = new(96m, AlcoholBasis.PercentVolume),
            Composition = [new("isopropanol", "67-63-0", 15m, 15m)],
        };
        Assert.Equal([AdviceKind.Warn], Kinds("isopropanol-base", Spray(Oil(10m), Line(denatured, 90m))));
    }

    [Theory]
    [InlineData("9.99", "")]
    [InlineData("10", "Warn")]
    public void WitchHazel_AtItsLimit(string percent, string expected)
    {
        AssessedLine witchHazel = Line(Material("Distilled Witch Hazel", MaterialKind.CarrierBase), Numbers.Of(percent));
        Assert.Equal(expected, Text(Kinds("witch-hazel-base", Spray(Oil(3m), witchHazel, Alcohol(97m - Numbers.Of(percent))))));
    }

    [Fact]
    public void WitchHazel_ByCasNumber_IsFoundUnderAnyName() => Assert.Equal(
        [AdviceKind.Warn],
        Kinds("witch-hazel-base", Spray(Oil(3m), Line(Material("Zaubernuss", MaterialKind.CarrierBase, "84696-19-5"), 97m))));

    [Fact]
    public void WitchHazel_AScentOfThatName_IsNoBase() => Assert.Empty(
        Kinds("witch-hazel-base", Spray(Line(OilMaterial with { Name = "Witch hazel & moss" }, 12m), Alcohol(88m))));

    [Theory]
    [InlineData("94.9", "12", "0", "")]
    [InlineData("95", "12", "0", "Good")]
    [InlineData("96", "15", "0", "Good")]
    [InlineData("96", "15.01", "0", "")]
    [InlineData("99.9", "12", "0.5", "Good")]
    [InlineData("99.9", "12", "0.6", "")]
    public void ClearLikely_AtItsLimits(string percentVolume, string scent, string water, string expected)
    {
        decimal rest = 100m - Numbers.Of(scent) - Numbers.Of(water);
        AssessedFormula formula = Spray(Oil(Numbers.Of(scent)), Alcohol(rest, Numbers.Of(percentVolume)), Water(Numbers.Of(water)));
        Assert.Equal(expected, Text(Kinds("clear-likely", formula)));
    }

    [Fact]
    public void ClearLikely_LittleAlcohol_IsSilent() =>
        Assert.Empty(Kinds("clear-likely", Spray(Oil(12m), Dpm(50m), Alcohol(38m))));

    [Fact]
    public void StrengthUnknown_EthanolWithoutStrength_Warns()
    {
        AssessedMaterial ethanol = Material("Ethanol", MaterialKind.Solvent, Substances.EthanolCas);
        Assert.Equal([AdviceKind.Warn], Kinds("unknown-alcohol-strength", Spray(Oil(12m), Line(ethanol, 88m))));
        AssessedMaterial withStrength = ethanol with { Strength = new(96m, AlcoholBasis.PercentVolume) };
        Assert.Empty(Kinds("unknown-alcohol-strength", Spray(Oil(12m), Line(withStrength, 88m))));
        AssessedMaterial withWater = ethanol with { Composition = [new("ethanol", "64-17-5", 92m, 92m), new("water", "7732-18-5", 8m, 8m)] };
        Assert.Empty(Kinds("unknown-alcohol-strength", Spray(Oil(12m), Line(withWater, 88m))));
    }

    /// <summary>A spray made well, with every paper: good news and notes, no warning, also at release.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void WellMadeSpray_HasNoWarnings(bool isBeingReleased)
    {
        IReadOnlyList<AdviceGiven> given = All(Spray(Oil(12m), Dpm(5m), Alcohol(83m)), isBeingReleased);
        Assert.Equal(["flammable-heat", "plastics", "clear-likely"], given.Select(each => each.Rule));
        Assert.All(given, each => Assert.True(each.Kind <= AdviceKind.Note));
    }

    [Fact]
    public void WellMadeDiffuser_HasNoWarnings()
    {
        IReadOnlyList<AdviceGiven> given = All(Of(new ReedDiffuser(), Oil(25m), Dpm(75m)), isBeingReleased: true);
        Assert.Equal(["plastics"], given.Select(each => each.Rule));
    }

    [Fact]
    public void Rules_LinesWithoutMass_SayNothingOfThem()
    {
        AssessedLine unused = new(Lot, OilMaterial with { Id = Lot, PhthalateFree = null, CmrFree = null, MissingPapers = [PaperKind.Sds], HoldsCitrus = true }, 0m);
        Assert.Equal(
            All(Spray(Oil(12m), Alcohol(88m))).Select(each => each.Rule),
            All(Spray(Oil(12m), Alcohol(88m), unused)).Select(each => each.Rule));
    }
}
