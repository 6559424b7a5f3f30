using System.Globalization;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Assessing;

public class AssessmentTests
{
    [Fact]
    public void Of_AlcoholSpray_SaysWhatItIsAndWhatItsLabelSays()
    {
        Assessment assessment = Assessment.Of(AssessmentCase.Fig(), AssessmentCase.Europe)!;
        Assert.InRange(assessment.DensityAt20!.Value.GramsPerMillilitre, 0.82m, 0.85m);
        // 96 % vol is 93.84 % by weight (OIML R 22), of 83 %.
        Assert.Equal(77.9, assessment.Alcohol.PercentMass, 0.1);
        Assert.IsType<FlashPointResult.Estimated>(assessment.Flash);
        Assert.Equal(HazardCategory.FlamLiq2, assessment.Hazards.In(HazardClass.FlammableLiquid)!.Category);
        Assert.Equal(HazardCategory.EyeIrrit2, assessment.Hazards.In(HazardClass.Eye)!.Category);
        Assert.Equal(SignalWord.Danger, assessment.Label!.Signal);
        Assert.Null(assessment.UsLabel);
        Assert.Contains(assessment.Allergens.Declared, share => share.Allergen.Name.Equals("linalool", StringComparison.OrdinalIgnoreCase));
        Assert.True(assessment.AddsUp);
    }

    [Fact]
    public void Of_SchemeOfTheUnitedStates_GivesItsWordsInPlaceOfClp()
    {
        Assessment assessment = Assessment.Of(AssessmentCase.Fig(), AssessmentCase.States)!;
        Assert.Null(assessment.Label);
        Assert.Equal(FhsaBand.Flammable, assessment.UsLabel!.Band);
        Assert.Equal("WARNING", assessment.UsLabel.Signal);
    }

    [Fact]
    public void Of_MeasuredValues_OverrideTheEstimates()
    {
        AssessedFormula formula = AssessmentCase.Fig() with { Measured = new(Density: new(0.815m), FlashPoint: new Celsius(24m), BoilingPoint: new Celsius(79m)) };
        Assessment assessment = Assessment.Of(formula, AssessmentCase.Europe)!;
        Assert.Equal(0.815m, assessment.DensityAt20!.Value.GramsPerMillilitre);
        Assert.IsType<FlashPointResult.Measured>(assessment.Flash);
        Assert.Equal(HazardCategory.FlamLiq3, assessment.Hazards.In(HazardClass.FlammableLiquid)!.Category);
    }

    [Fact]
    public void Of_LinesThatDoNotAddUp_AreAssessedAsTheyStandAndSaidSo()
    {
        Assessment whole = Assessment.Of(AssessmentCase.Fig(), AssessmentCase.Europe)!;
        Assessment half = Assessment.Of(AssessmentCase.Fig(0.06m, 0.025m, 0.415m), AssessmentCase.Europe)!;
        Assert.False(half.AddsUp);
        Assert.Contains(half.Unknown, each => each.What == "The lines come to 50 %, not to 100 %.");
        Assert.Equal(whole.DensityAt20, half.DensityAt20);
        Assert.Equal(whole.Hazards.Findings.Select(each => each.Category), half.Hazards.Findings.Select(each => each.Category));
    }

    [Fact]
    public void Of_NoLineWithMass_IsNothingToAssess() => Assert.Null(Assessment.Of(AssessmentCase.Fig(0m, 0m, 0m), AssessmentCase.Europe));

    [Fact]
    public void Of_LineBelowZero_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Assessment.Of(AssessmentCase.Fig(-0.1m, 0.2m, 0.9m), AssessmentCase.Europe));

    [Fact]
    public void Of_DensityUnknown_StillGivesTheRestAndSaysWhatCannotBe()
    {
        AssessedFormula fig = AssessmentCase.Fig();
        AssessedFormula formula = fig with { Lines = [fig.Lines[0] with { Material = AssessmentCase.Fragrance with { Density = null } }, .. fig.Lines.Skip(1)] };
        Assessment assessment = Assessment.Of(formula, AssessmentCase.Europe)!;
        Assert.Null(assessment.DensityAt20);
        Assert.Null(assessment.Alcohol.PercentVolume);
        Assert.NotEmpty(assessment.Hazards.Findings);
        Assert.Contains(assessment.Unknown, each => each.What.Contains("Fig fragrance has no density", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("container-candle")]
    [InlineData("wax-melt")]
    [InlineData("sachet")]
    public void Of_WaxOrDryMatter_IsNoLiquidAndHasNoFlashPointOfOne(string kind)
    {
        Assessment assessment = Assessment.Of(AssessmentCase.Of(ProductKinds.Get(kind), [0.12m, 0.05m, 0.83m]), AssessmentCase.Europe)!;
        Assert.Equal(PhysicalForm.Solid, assessment.Facts.Form);
        Assert.Null(assessment.Flash);
        Assert.Null(assessment.Hazards.In(HazardClass.FlammableLiquid));
    }

    [Fact]
    public void Of_UnreadableClass_IsSaidAndTheRestCounts()
    {
        AssessedMaterial odd = AssessmentCase.Fragrance with { Hazards = new("Skin Sens. 1 H317; smells nice", "Skin Sens. 1A lots") };
        AssessedFormula formula = AssessmentCase.Fig() with { Lines = [new(odd.Id, odd, 1m)] };
        Assessment assessment = Assessment.Of(formula, AssessmentCase.Europe)!;
        Assert.NotNull(assessment.Hazards.In(HazardClass.SkinSensitisation));
        Assert.Contains(assessment.Unknown, each => each.What.Contains("\"smells nice\"", StringComparison.Ordinal));
        Assert.Contains(assessment.Unknown, each => each.What.Contains("\"Skin Sens. 1A lots\"", StringComparison.Ordinal));
    }

    /// <summary>Aspiration hazard in a spray whose closure nobody described: the careful reading, and a word about it.</summary>
    [Fact]
    public void Of_SealedSpray_LeavesOutH304OnlyWhereItIsSaid()
    {
        var base1 = new AssessedMaterial(Guid.CreateVersion7(), "Isoparaffin base", MaterialKind.CarrierBase, CasNumber.Of("90622-58-5"), new Density(0.76m));
        AssessedFormula formula = AssessmentCase.Fig() with { Lines = [new(base1.Id, base1, 1m)] };
        Assessment notSaid = Assessment.Of(formula, AssessmentCase.Europe)!;
        Assessment said = Assessment.Of(formula with { HasSealedSpray = true }, AssessmentCase.Europe)!;
        Assert.Contains(notSaid.Label!.HazardStatements, each => each.Code == "H304");
        Assert.Contains(notSaid.Unknown, each => each.What == "Whether the sprayer is sealed on is not said.");
        Assert.DoesNotContain(said.Label!.HazardStatements, each => each.Code == "H304");
        Assert.DoesNotContain(said.Unknown, each => each.What == "Whether the sprayer is sealed on is not said.");
    }

    /// <summary>The estimate and the class that follows from it are of one mind: both take the stricter.</summary>
    [Theory]
    [InlineData(45)]
    [InlineData(55)]
    [InlineData(70)]
    [InlineData(96)]
    public void Of_EthanolAndWater_ClassFollowsTheDecisionOnTheFlashPoint(int percentVolume)
    {
        AssessedMaterial alcohol = AssessmentCase.Alcohol with { Strength = new(percentVolume, AlcoholBasis.PercentVolume), Density = null };
        Assessment assessment = Assessment.Of(AssessmentCase.Fig() with { Lines = [new(alcohol.Id, alcohol, 1m)] }, AssessmentCase.Europe)!;
        FlammableCategory taken = Assert.IsType<FlashPointResult.Estimated>(assessment.Flash).Decision.TakeAs;
        HazardCategory? expected = taken switch
        {
            FlammableCategory.Category2 => HazardCategory.FlamLiq2,
            FlammableCategory.Category3 => HazardCategory.FlamLiq3,
            _ => null,
        };
        Assert.Equal(expected, assessment.Hazards.In(HazardClass.FlammableLiquid)?.Category);
    }

    [Fact]
    public void Workings_EveryResult_NamesRuleAndSourceInTheReadersCulture()
    {
        Assessment assessment = Assessment.Of(AssessmentCase.Fig(), AssessmentCase.Europe)!;
        IReadOnlyList<OpenedResult> opened = assessment.Workings();
        Assert.Equal(["density", "alcohol", "flash-point", "hazards", "voc", "fragrance", "allergens"], opened.Select(each => each.Key).Take(7));
        Assert.All(opened.SelectMany(each => each.Steps), step =>
        {
            Assert.NotEmpty(step.Rule);
            Assert.NotEmpty(step.Source.Citation);
        });
        string german = string.Join('\n', opened[3].Steps.Select(step => step.Says(CultureInfo.GetCultureInfo("de-DE"))));
        Assert.Contains("linalool from Fig fragrance: 1,2 %", german, StringComparison.Ordinal);
        Assert.Contains(opened[3].Steps, step => step.LineId == AssessmentCase.Fragrance.Id);
    }
}
