using System.Globalization;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.FlashPoints;

public class FlashPointTests
{
    [Fact]
    public void Of_MeasuredValue_Overrides()
    {
        var found = Assert.IsType<FlashPointResult.Measured>(FlashPoint.Of(Alcohol(70), new Celsius(24.5m)));
        Assert.Equal(24.5m, found.Value.Degrees);
        Assert.Equal((FlammableCategory.Category3, true), (found.Decision.TakeAs, found.Decision.IsDecided));
    }

    [Theory]
    [InlineData(50)]
    [InlineData(58)]
    [InlineData(66)]
    [InlineData(75)]
    public void Decision_FiftyToSeventyFivePercent_CannotDecide(double percent)
    {
        FlashDecision decision = Estimated(Alcohol(percent)).Decision;
        Assert.False(decision.IsDecided);
        Assert.Equal(FlammableCategory.Category2, decision.TakeAs);
        Assert.Contains("cannot decide", decision.Says, StringComparison.Ordinal);
        Assert.Contains("closed-cup test", decision.Says, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(96, FlammableCategory.Category2, true)]
    [InlineData(80, FlammableCategory.Category2, true)]
    [InlineData(40, FlammableCategory.Category2, false)]
    [InlineData(30, FlammableCategory.Category3, true)]
    [InlineData(10, FlammableCategory.Category3, true)]
    [InlineData(4.5, FlammableCategory.Category3, false)]
    [InlineData(4, FlammableCategory.NotClassified, true)]
    public void Decision_OutsideThoseStrengths(double percent, FlammableCategory takeAs, bool isDecided)
    {
        FlashDecision decision = Estimated(Alcohol(percent)).Decision;
        Assert.Equal((takeAs, isDecided), (decision.TakeAs, decision.IsDecided));
    }

    [Fact]
    public void Of_OneSubstance_IsItsOwnFlashPoint()
    {
        FlashPointResult.Estimated found = Estimated(Mixture.Of([Line("67-63-0", 1)]));
        Assert.Equal(FlashModel.PureSubstance, found.Model);
        Assert.InRange((double)found.Value.Degrees, 11.699, 11.701);
        Assert.InRange((double)Estimated(Alcohol(100)).Value.Degrees, 12.99, 13.01);
    }

    [Fact]
    public void Of_GroupsForAll_UsesUnifac()
    {
        FlashPointResult.Estimated found = Estimated(Mixture.Of([Line("64-17-5", 0.85), Line("78-70-6", 0.05), Line("5989-27-5", 0.10)]));
        Assert.Equal(FlashModel.Unifac, found.Model);
        Assert.InRange((double)found.Value.Degrees, 10, 17);
        Assert.Equal(5.5, found.Error.Largest);
        Assert.Empty(found.LeftOut);
    }

    [Fact]
    public void Of_NoGroups_IsIdealWithAWarning()
    {
        FlashPointResult.Estimated found = Estimated(Mixture.Of([Line("64-17-5", 0.8), Line("120-51-4", 0.2)]));
        Assert.Equal(FlashModel.Ideal, found.Model);
        Assert.Null(found.Error.Largest);
        Assert.Contains(found.Warnings, warning => warning.Contains("as if ideal", StringComparison.Ordinal));
        // Ideal by hand: x·P(T) = P(13 °C), x = (80/46.069)/(80/46.069 + 20/212.248).
        double x = 80 / 46.069 / ((80 / 46.069) + (20 / 212.248));
        Antoine ethanol = Substances.Ethanol.Antoine[0];
        Assert.InRange((double)found.Value.Degrees - (ethanol.Kelvin(ethanol.Pascal(286.15) / x) - 273.15), -0.01, 0.01);
    }

    [Fact]
    public void Of_WaterAndNoGroups_KeepsUniquacForTheAlcohol()
    {
        Mixture mixture = Mixture.Of([Line("64-17-5", 0.6), Line("7732-18-5", 0.35), Line("120-51-4", 0.05)]);
        FlashPointResult.Estimated found = Estimated(mixture);
        Assert.Equal(FlashModel.UniquacAndIdeal, found.Model);
        // The ideal reading would be several degrees higher, the unsafe side.
        Assert.InRange((double)found.Value.Degrees, 20, 24);
        Assert.Contains(found.Warnings, warning => warning.Contains("one clear liquid", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_ATraceOfDenaturant_StaysWithUniquac()
    {
        Mixture mixture = Mixture.Of([Line("64-17-5", 0.9487), Line("7732-18-5", 0.05), Line("75-65-0", 0.0013)]);
        Assert.Equal(FlashModel.Uniquac, Estimated(mixture).Model);
    }

    [Fact]
    public void Of_UnknownFragrance_NamesItAndSaysWhichSide()
    {
        MixtureLine fragrance = new(Guid.CreateVersion7(), "Fig accord", 0.12, new Density(0.98m), [], new Celsius(75));
        FlashPointResult.Estimated found = Estimated(Mixture.Of([Line("64-17-5", 0.88), fragrance]));
        LeftOut left = Assert.Single(found.LeftOut);
        Assert.Equal(("Fig accord", 75d), (left.Name, left.FlashPoint!.Value));
        Assert.Contains(found.Warnings, warning => warning.Contains("Fig accord, 12 % by weight", StringComparison.Ordinal)
            && warning.Contains("cautious side", StringComparison.Ordinal));
        Assert.True(found.Decision.IsDecided);
    }

    [Fact]
    public void Of_UnknownFragranceWithoutFlashPoint_DecidesNothing()
    {
        MixtureLine fragrance = new(Guid.CreateVersion7(), "Fig accord", 0.12, null, []);
        FlashPointResult.Estimated found = Estimated(Mixture.Of([Line("25265-71-8", 0.88), fragrance]));
        Assert.False(found.Decision.IsDecided);
        Assert.Contains("Fig accord", found.Decision.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_NothingKnown_IsUnknownByName()
    {
        MixtureLine line = new(Guid.CreateVersion7(), "Fig accord", 1, null, [new(CasNumber.Of("50-00-0"), "formaldehyde", 0.3)]);
        var found = Assert.IsType<FlashPointResult.Unknown>(FlashPoint.Of(Mixture.Of([line])));
        Assert.Contains("Fig accord", found.Why, StringComparison.Ordinal);
        Assert.Contains("formaldehyde", found.Why, StringComparison.Ordinal);
        Assert.Equal(2, found.LeftOut.Count);
    }

    [Fact]
    public void Of_WaterAlone_FindsNothingThatBurns() =>
        Assert.Contains("burns", Assert.IsType<FlashPointResult.NoneFound>(FlashPoint.Of(Alcohol(0))).Says, StringComparison.Ordinal);

    [Fact]
    public void Of_HardlyAnyAlcohol_FindsNoneBelowBoiling() =>
        Assert.IsType<FlashPointResult.NoneFound>(FlashPoint.Of(Alcohol(0.2)));

    [Fact]
    public void Workings_NameEachComponentAndComeToOne()
    {
        FlashPointResult.Estimated found = Estimated(Alcohol(70));
        Assert.Equal(3, found.Workings.Count);
        Assert.Contains("0.3934", found.Workings[0].Says(CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Contains("NFPA 497", found.Workings[0].Source.Citation, StringComparison.Ordinal);
    }

    /// <summary>Groups must make up the molecule: a wrong split is found by counting atoms.</summary>
    [Fact]
    public void UnifacMolecules_EverySplit_MakesUpTheFormula()
    {
        Assert.Equal(28, Unifac.KnownCas.Count);
        Assert.All(Unifac.KnownCas, cas =>
        {
            Substance substance = Substances.Find(CasNumber.Of(cas))!;
            UnifacMolecule molecule = Unifac.Find(substance.Cas)!;
            int Count(Func<UnifacGroup, int> of) => molecule.Groups.Sum(part => part.Count * of(part.Group));
            Assert.Equal(
                (substance.Name, HeatOfCombustion.Atoms(substance.Formula, 'C'), HeatOfCombustion.Atoms(substance.Formula, 'H'), HeatOfCombustion.Atoms(substance.Formula, 'O')),
                (substance.Name, Count(group => group.Carbon), Count(group => group.Hydrogen), Count(group => group.Oxygen)));
        });
    }

    [Fact]
    public void Unifac_PureLiquid_HasActivityOne() => Assert.All(
        Unifac.KnownCas, cas => Assert.Equal(1, Unifac.Gammas([Unifac.Find(CasNumber.Of(cas))!], [1], 298.15)[0], 9));

    private static FlashPointResult.Estimated Estimated(Mixture mixture) => Assert.IsType<FlashPointResult.Estimated>(FlashPoint.Of(mixture));

    private static Mixture Alcohol(double percent) =>
        Mixture.Of([MixtureLine.OfAlcohol(Guid.CreateVersion7(), "alcohol", 1, EthanolStrength.FromPercentVolume(percent))]);

    private static MixtureLine Line(string cas, double share) =>
        MixtureLine.OfSubstance(Guid.CreateVersion7(), Substances.Find(CasNumber.Of(cas))!, share);
}
