using System.Globalization;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Tests.Published;
using MakerStudio.Core.Voc;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Voc;

public class VocContentTests
{
    private static readonly AssessedMaterial Water = LimitFormulas.Material("Water", MaterialKind.Water);
    private static readonly AssessedMaterial Dpg = LimitFormulas.Material("DPG", MaterialKind.CarrierBase, "25265-71-8");
    private static readonly AssessedMaterial Ethanol = LimitFormulas.Material("Ethanol", cas: "64-17-5");

    [Fact]
    public void Table_EveryRow_HasAKeyASourceAndStepsInOrder()
    {
        Assert.All(VocLimits.All, limit =>
        {
            Assert.Matches("^(us|ca|md|otc)-[a-z-]+$", limit.Key);
            Assert.NotEmpty(limit.Jurisdiction);
            Assert.NotEmpty(limit.Category);
            Assert.NotEmpty(limit.Form);
            Assert.Same(limit, VocLimits.Find($" {limit.Key.ToUpperInvariant()} "));
            Assert.All(limit.Steps, step => Assert.True(step.Percent is > 0 and <= 100 && step.Source.Citation.Length > 10));
            Assert.Equal(limit.Steps.Select(step => step.From).Order(), limit.Steps.Select(step => step.From));
            Assert.True(limit.Steps.Count == 1 || limit.Steps.All(step => step.From is not null));
        });
        Assert.Equal(VocLimits.All.Count, VocLimits.All.Select(limit => limit.Key).Distinct().Count());
    }

    [Fact]
    public void Substances_EveryRow_HasANumberASourceAndAStatus() => Assert.All(VocSubstances.All, substance =>
    {
        Assert.True(CasNumber.TryParse(substance.Cas, out _, out string? why), why);
        Assert.NotEmpty(substance.Name);
        Assert.NotEmpty(substance.Source.Citation);
        Assert.All(Enum.GetValues<VocDefinition>(), definition => Assert.NotEmpty(substance.Judge(definition).Why));
        Assert.True(substance.FewestCarbonAtoms is null or >= 0);
    });

    [Theory]
    [InlineData("ca-air-freshener-manual-aerosol", "2022-12-31", null)]
    [InlineData("ca-air-freshener-manual-aerosol", "2023-01-01", 10)]
    [InlineData("ca-air-freshener-manual-aerosol", "2026-12-31", 10)]
    [InlineData("ca-air-freshener-manual-aerosol", "2027-01-01", 5)]
    [InlineData("ca-air-freshener-concentrated-aerosol", "2027-01-01", 10)]
    [InlineData("ca-air-freshener-double-phase-aerosol", "2004-12-30", 30)]
    [InlineData("ca-air-freshener-double-phase-aerosol", "2004-12-31", 25)]
    [InlineData("ca-air-freshener-double-phase-aerosol", "2022-12-31", 20)]
    [InlineData("ca-air-freshener-double-phase-aerosol", "2023-01-01", null)]
    [InlineData("us-air-freshener-liquid", "1998-12-09", null)]
    [InlineData("us-air-freshener-liquid", "1998-12-10", 18)]
    [InlineData("md-air-freshener-solid", "2026-11-25", 3)]
    public void Limit_OnADay_IsTheStepInForce(string key, string day, int? percent) =>
        Assert.Equal(percent, VocLimits.Find(key)!.On(DateOnly.Parse(day, CultureInfo.InvariantCulture))?.Percent);

    [Fact]
    public void Suggestions_FitTheKind()
    {
        Assert.Equal(
            ["us-air-freshener-liquid", "ca-air-freshener-liquid", "ca-fabric-refresher-non-aerosol", "ca-odor-remover-non-aerosol", "md-air-freshener-liquid", "otc-air-freshener-liquid", "otc-fabric-refresher-non-aerosol"],
            VocLimits.For(ProductKinds.Get("linen-spray"), LimitFormulas.Day).Select(limit => limit.Key));
        Assert.All(VocLimits.For(ProductKinds.Get("container-candle"), LimitFormulas.Day), limit => Assert.Equal(VocForm.Solid, limit.Fits));
        Assert.Empty(VocLimits.For(ProductKinds.Get("pre-blend"), LimitFormulas.Day));
        Assert.All(ProductKinds.All, kind => Assert.Equal(kind.IsSold, kind.VocForms.Count > 0));
    }

    /// <summary>17 CCR 94510(c): the day a product is made decides, and after 2030 only air fresheners keep a share.</summary>
    [Theory]
    [InlineData("2030-12-31", 2, 2)]
    [InlineData("2031-01-01", 0.25, 0)]
    public void California_FragranceExemption_ChangesWithTheDay(string day, double ofAirFresheners, double ofOthers)
    {
        var formula = LimitFormulas.Formula("linen-spray", (LimitFormulas.Oil("Fig"), 3), (Water, 97));
        VocContent content = VocContent.Of(formula, LimitFormulas.Choices("ca-air-freshener-liquid", "ca-fabric-refresher-non-aerosol") with
        {
            On = DateOnly.Parse(day, CultureInfo.InvariantCulture),
        });
        Assert.Equal([3 - (decimal)ofAirFresheners, 3 - (decimal)ofOthers], content.Comparisons.Select(each => each.Figure.Percent));
        Assert.Equal(3 - (decimal)ofAirFresheners, content.California.Percent);
        Assert.Equal([1m, 1m], new[] { content.Federal.Percent, content.OtherStates.Percent });
    }

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(1.5, 0, 0)]
    [InlineData(2, 0, 0)]
    [InlineData(2.5, 0.5, 0.5)]
    public void Fragrance_UpToTheExemption_DoesNotCount(double fragrance, double percent, double careful)
    {
        var formula = LimitFormulas.Formula("room-spray-water", (LimitFormulas.Oil("Fig"), (decimal)fragrance), (Water, 100 - (decimal)fragrance));
        VocFigure figure = VocContent.Of(formula, LimitFormulas.Choices()).Federal;
        Assert.Equal((decimal)percent, figure.Percent);
        Assert.Equal((decimal)careful, figure.CautiousPercent);
        Assert.Equal(fragrance > 0, figure.IsAllFromFragrance);
    }

    /// <summary>docs/science/voc.md: 20 % with 30 % VOC: 20 × 0.30 − 2 = 4, or (20 − 2) × 0.30 = 5.4.</summary>
    [Fact]
    public void Fragrance_WithAStatedShare_HasAStricterReading()
    {
        var formula = LimitFormulas.Formula("reed-diffuser", (LimitFormulas.Oil("Fig") with { VolatilePercent = 30 }, 20), (Dpg, 80));
        VocContent content = VocContent.Of(formula, LimitFormulas.Choices());
        Assert.Equal(4m, content.California.Percent);
        Assert.Equal(5.4m, content.California.CautiousPercent);
        Assert.Empty(content.Unknown);
    }

    /// <summary>95 % vol is 92.4 % by weight (OIML R 22); the rest is water.</summary>
    [Fact]
    public void Alcohol_CountsByTrueWeight()
    {
        AssessedMaterial alcohol = Ethanol with { Strength = new(95, AlcoholBasis.PercentVolume) };
        VocContent content = VocContent.Of(LimitFormulas.Formula("room-spray-alcohol", (alcohol, 50), (Water, 50)), LimitFormulas.Choices());
        double expected = EthanolStrength.FromPercentVolume(95).PercentMass / 2;
        Near.Equal(46.2, (double)content.Federal.Percent, 0.03);
        Near.Equal(expected, (double)content.Federal.Percent, 1e-8);
        Assert.Empty(content.Unknown);
        Assert.Contains(content.Workings, step => step.Source == R22.Source && step.LineId is not null);
        VocContent proof = VocContent.Of(
            LimitFormulas.Formula("room-spray-alcohol", (Ethanol with { Strength = new(190, AlcoholBasis.UsProof) }, 100)), LimitFormulas.Choices());
        Near.Equal(EthanolStrength.FromUsProof(190).PercentMass, (double)proof.Federal.Percent, 1e-8);
    }

    [Fact]
    public void Alcohol_OtherThanEthanol_IsTakenByVolumeAndNotTooLow()
    {
        AssessedMaterial isopropanol = LimitFormulas.Material("Isopropanol 70", cas: "67-63-0") with { Strength = new(70, AlcoholBasis.PercentVolume) };
        Assert.Equal(70m, VocContent.Of(LimitFormulas.Formula("room-spray-alcohol", (isopropanol, 100)), LimitFormulas.Choices()).Federal.Percent);
    }

    [Fact]
    public void Alcohol_WithLessStatedThanItsStrength_CountsByTheStrength()
    {
        AssessedMaterial alcohol = Ethanol with { Strength = new(90, AlcoholBasis.PercentMass), VolatilePercent = 50 };
        Assert.Equal(90m, VocContent.Of(LimitFormulas.Formula("room-spray-alcohol", (alcohol, 100)), LimitFormulas.Choices()).Federal.Percent);
    }

    /// <summary>Denaturants come on top of the alcohol; what is out stays out.</summary>
    [Fact]
    public void Alcohol_Denatured_CountsItsDenaturants()
    {
        AssessedMaterial alcohol = Ethanol with
        {
            Strength = new(92, AlcoholBasis.PercentMass),
            Composition = [new("ethanol", "64-17-5", 90, 95), new("tert-butanol", "75-65-0", 0.1m, 0.2m), new("Denatonium benzoate", null, 0, 0.01m), new("Bitterstoff", null, 0, 0.5m)],
        };
        VocContent content = VocContent.Of(LimitFormulas.Formula("room-spray-alcohol", (alcohol, 100)), LimitFormulas.Choices());
        Assert.Equal(92.7m, content.Federal.Percent);
        Assert.Equal(0.5m, Assert.Single(content.Unknown).Percent);
    }

    /// <summary>By definition: carvone has 0.1 mmHg, which is not below 0.1, and boils at 231 °C.</summary>
    [Fact]
    public void HighBoiling_IsOutInCaliforniaOnly()
    {
        VocContent content = VocContent.Of(
            LimitFormulas.Formula("reed-diffuser", (LimitFormulas.Material("L-carvone", MaterialKind.Fixative, "6485-40-1"), 10), (Dpg, 90)), LimitFormulas.Choices());
        Assert.Equal(10m, content.Federal.Percent);
        Assert.Equal(0m, content.California.Percent);
    }

    [Theory]
    [InlineData(216.0, true)]
    [InlineData(216.1, false)]
    public void Boiling_AtTheBorder_CountsUntilItIsAbove(double boiling, bool counts) => Assert.Equal(
        counts, Substance(vapour: new(0.5, VapourReading.Value), boiling: boiling).Judge(VocDefinition.California).Counts);

    [Theory]
    [InlineData(0.1, VapourReading.Value, true)]
    [InlineData(0.0999, VapourReading.Value, false)]
    [InlineData(0.1, VapourReading.AtMost, false)]
    [InlineData(0.5, VapourReading.AtMost, true)]
    [InlineData(0.02, VapourReading.Rough, true)]
    [InlineData(0.009, VapourReading.Rough, false)]
    public void Vapour_CountsUnlessItIsSurelyBelow(double millimetres, VapourReading reading, bool counts) => Assert.All(
        Enum.GetValues<VocDefinition>(),
        definition => Assert.Equal(counts, Substance(vapour: new(millimetres, reading)).Judge(definition).Counts));

    [Fact]
    public void CarbonAtoms_DecideOnlyWhereNothingElseIsKnown()
    {
        Assert.False(Substance(carbon: 13).Judge(VocDefinition.UsFederal).Counts);
        Assert.False(Substance(carbon: 13).Judge(VocDefinition.California).Counts);
        Assert.True(Substance(carbon: 12).Judge(VocDefinition.UsFederal).Counts);
        Assert.True(Substance(carbon: 12).Judge(VocDefinition.California).Counts);
        // California asks that the boiling point be unknown too.
        Assert.False(Substance(carbon: 13, boiling: 200).Judge(VocDefinition.UsFederal).Counts);
        Assert.True(Substance(carbon: 13, boiling: 200).Judge(VocDefinition.California).Counts);
        Assert.True(Substance(carbon: 20, vapour: new(0.2, VapourReading.Value)).Judge(VocDefinition.UsFederal).Counts);
    }

    [Fact]
    public void Solids_AreOutFederallyUnlessTheySublime()
    {
        Assert.False(Substance(carbon: 8, isSolid: true).Judge(VocDefinition.UsFederal).Counts);
        Assert.True((Substance(carbon: 8, isSolid: true) with { Sublimes = true }).Judge(VocDefinition.UsFederal).Counts);
        Assert.True(Substance(carbon: 8, isSolid: true).Judge(VocDefinition.California).Counts);
    }

    [Fact]
    public void Composition_OutByTheLowEndInByTheHighEndAndTheRestIn()
    {
        AssessedMaterial oil = LimitFormulas.Oil("Fig", new("Benzyl Benzoate", null, 20, 40), new("d-limonene", "5989-27-5", 5, 10), new("Unheard of", null, 1, 3));
        VocContent content = VocContent.Of(LimitFormulas.Formula("reed-diffuser", (oil, 50), (Dpg, 50)), LimitFormulas.Choices());
        Assert.Equal(40m, content.Federal.FragranceVocPercent);
        Assert.Equal(35m, content.Federal.FragranceUnknown);
        Assert.Equal(38m, content.Federal.Percent);
        Assert.Equal(3m, content.Federal.LowestPercent);
        Assert.Contains("Unheard of", Assert.Single(content.Unknown).What, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_StandInForNumbersWhateverTheirCase()
    {
        var formula = LimitFormulas.Formula("reed-diffuser", (LimitFormulas.Material("  DIPROPYLENE  Glycol ", MaterialKind.CarrierBase), 60), (LimitFormulas.Material("Augeo"), 40));
        VocContent content = VocContent.Of(formula, LimitFormulas.Choices());
        Assert.Equal(40m, content.California.Percent);
        Assert.Equal(40m, Assert.Single(content.Unknown).Percent);
    }

    [Fact]
    public void Wax_DoesNotCountSaveForWhatIsListedInIt()
    {
        AssessedMaterial wax = LimitFormulas.Material("House blend", MaterialKind.Wax) with { Composition = [new("alpha-pinene", "80-56-8", 0, 1), new("soy wax", null, 80, 95)] };
        VocContent content = VocContent.Of(LimitFormulas.Formula("wax-melt", (wax, 100)), LimitFormulas.Choices("us-air-freshener-solid"));
        Assert.Equal(1m, content.Federal.Percent);
        Assert.Equal(VocVerdict.Complies, Assert.Single(content.Comparisons).Verdict);
        Assert.Empty(content.Unknown);
    }

    /// <summary>What is not fragrance in it may be the volatile part: 50 % VOC, 70 % not fragrance, so nothing is surely from fragrance.</summary>
    [Theory]
    [InlineData(0.3, 50, 0)]
    [InlineData(0.8, 50, 30)]
    [InlineData(1.0, 50, 50)]
    public void PreBlend_OnlyWhatMustBeFromFragranceIsExempt(double scent, int volatilePercent, int fromFragrance)
    {
        AssessedMaterial accord = LimitFormulas.Material("Accord", MaterialKind.PreBlend) with { ScentShare = (decimal)scent, VolatilePercent = volatilePercent };
        VocFigure figure = VocContent.Of(LimitFormulas.Formula("reed-diffuser", (accord, 100)), LimitFormulas.Choices()).Federal;
        Assert.Equal(fromFragrance, figure.FragranceVocPercent);
        Assert.Equal(volatilePercent - fromFragrance, figure.OtherPercent);
    }

    [Fact]
    public void Comparison_DecidedByTheUnknown_SaysSo()
    {
        VocContent content = VocContent.Of(
            LimitFormulas.Formula("room-spray-water", (Ethanol, 15), (LimitFormulas.Material("Secret base", MaterialKind.CarrierBase), 5), (Water, 80)),
            LimitFormulas.Choices("ca-air-freshener-liquid", "no-such-limit", "ca-air-freshener-single-phase-aerosol"));
        Assert.Equal([VocVerdict.Exceeds, VocVerdict.NotInForce], content.Comparisons.Select(each => each.Verdict));
        Assert.True(content.Comparisons[0].IsDecidedByUnknown);
        Assert.Equal(["Secret base: no volatile share, substance or composition is stated.", "No VOC limit is called \"no-such-limit\"."], content.Unknown.Select(each => each.What));
    }

    [Fact]
    public void Workings_EveryLineHasAStepWithItsSource_AndFollowTheReadersCulture()
    {
        var formula = LimitFormulas.Formula("room-spray-alcohol", (Ethanol, 60), (LimitFormulas.Oil("Fig"), 3), (Water, 37));
        VocContent content = VocContent.Of(formula, LimitFormulas.Choices("ca-air-freshener-liquid"));
        Assert.All(formula.Lines, line => Assert.True(content.Workings.Count(step => step.LineId == line.LineId) >= 4));
        Assert.All(content.Workings, step => Assert.NotEmpty(step.Source.Citation));
        WorkingStep sum = Assert.Single(content.Workings, step => step.ToString().Contains("60.00 + 3.00 − 2.00 = 61.00 %", StringComparison.Ordinal) && step.Rule == "VOC, California");
        Assert.Contains("61,00 %", sum.Says(CultureInfo.GetCultureInfo("de-DE")), StringComparison.Ordinal);
        Assert.Contains(content.Workings, step => step.Source.Caution is not null);
    }

    private static VocSubstance Substance(int? carbon = null, Vapour? vapour = null, double? boiling = null, bool isSolid = false) =>
        new("0", "test", true, carbon, vapour, boiling, isSolid, false, new("test", DataStatus.Read), "");
}
