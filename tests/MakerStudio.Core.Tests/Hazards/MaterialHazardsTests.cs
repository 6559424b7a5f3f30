using MakerStudio.Core.Hazards;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Hazards;

/// <summary>How a supplier's sheet becomes ingredients of the mixture. The materials are invented.</summary>
public class MaterialHazardsTests
{
    private static readonly ClassifiedSubstance Limonene = Of("limonene", "5989-27-5", "Skin Sens. 1B H317; Skin Irrit. 2 H315");
    private static readonly ClassifiedSubstance Linalool = Of("linalool", "78-70-6", "Skin Sens. 1B H317");

    [Fact]
    public void SameSubstance_FromTwoLines_IsSummed()
    {
        MaterialHazards one = Oil("Fig", "Skin Sens. 1 H317", new Constituent(Limonene, 1, 5));
        MaterialHazards other = Oil("Quince", "Skin Sens. 1 H317", new Constituent(Limonene, 5, 10));
        HazardsFound found = HazardAssessment.Of(new([Line(one, 10), Line(other, 5)]));
        HazardFinding finding = found.In(HazardClass.SkinSensitisation)!;
        Assert.Equal(HazardCategory.SkinSens1B, finding.Category);
        Contribution counted = Assert.Single(finding.By.From);
        Assert.Equal(1.0m, counted.Counted);
        Assert.Equal([0.5m, 0.5m], counted.Ingredient.Lines.Select(line => line.Percent));
    }

    [Fact]
    public void Range_WorstEndIsUsed_UnlessTheMakerStatesTheValue()
    {
        Assert.Equal(5m, new Constituent(Limonene, 1, 5).UsedPercent);
        Assert.Equal(2m, new Constituent(Limonene, 1, 5, 2m).UsedPercent);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Constituent(Limonene, 5, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Constituent(Limonene, 0, 101));
    }

    [Fact]
    public void Composition_ThatAccountsForTheClass_StandsInForTheWhole()
    {
        // 20 % of an oil with 5 % limonene is 1.0 % limonene; as a whole the oil would be 20 % of a sensitiser.
        MaterialHazards oil = Oil("Fig", "Skin Sens. 1B H317", new Constituent(Limonene, 1, 4));
        Assert.Null(HazardAssessment.Of(new([Line(oil, 20)])).In(HazardClass.SkinSensitisation));
        Assert.Contains(HazardAssessment.Of(new([Line(oil, 20)])).Sentences, sentence => sentence.Code == "EUH208" && sentence.Names.Contains("limonene"));
    }

    [Fact]
    public void Composition_ThatDoesNot_LeavesTheWholeAsOneIngredient()
    {
        // The sheet says irritant; 5 % of an irritant does not make it one, so something is not listed.
        MaterialHazards oil = Oil("Fig", "Skin Irrit. 2 H315; Skin Sens. 1B H317", new Constituent(Limonene, 1, 5));
        Assert.False(oil.Explains(HazardClass.Skin));
        Assert.True(oil.Explains(HazardClass.SkinSensitisation));
        HazardFinding finding = HazardAssessment.Of(new([Line(oil, 10)])).In(HazardClass.Skin)!;
        Assert.Equal(HazardCategory.SkinIrrit2, finding.Category);
        Assert.True(Assert.Single(finding.By.From).Ingredient.IsWhole);
    }

    [Fact]
    public void Whole_OnTwoLines_IsSummedLikeASubstance()
    {
        // Two accounts of one material, 0.6 % each: together they reach the 1 % of a sensitiser.
        HazardFinding finding = HazardAssessment.Of(new(
            [Line(Unlisted(), 0.6m), Line(Unlisted(), 0.6m)])).In(HazardClass.SkinSensitisation)!;
        Assert.Equal(1.2m, Assert.Single(finding.By.From).Counted);

        static MaterialHazards Unlisted() => Oil("Fig", "Skin Sens. 1 H317", new Constituent(Of("A", "1-1-1", "Eye Irrit. 2"), 1, 2));
    }

    [Fact]
    public void Composition_RestOfAClassedMaterial_DoesNotMakeItExplainMore()
    {
        // 20 % of category 4 alone is ATEmix 2500, not classified; the unlisted 80 % must not turn that into 500.
        MaterialHazards oil = Oil("Fig", "Acute Tox. 4 H302", new Constituent(Of("A", "1-1-1", "Acute Tox. 4 H302"), 10, 20));
        Assert.False(oil.Explains(HazardClass.AcuteOral));
    }

    [Fact]
    public void Composition_WithoutClassesOfTheWhole_LeavesItsRestUnknown()
    {
        MaterialHazards oil = MaterialHazards.Of("Fig", null, [new Constituent(Linalool, 10, 20)]);
        HazardsFound found = HazardAssessment.Of(new([Line(oil, 20)]));
        Assert.Contains(found.Unknown, unknown => unknown.What == "Nothing is known of rest of Fig, 16 % of the mixture.");
        Assert.Contains(found.Unknown, unknown => unknown.Class == HazardClass.AcuteOral && unknown.Percent == 16m);
    }

    [Fact]
    public void Material_WithoutAnySheet_IsUnknownAndNotHarmless()
    {
        HazardsFound found = HazardAssessment.Of(new([Line(MaterialHazards.Unknown("Old oil"), 12)]));
        Assert.Empty(found.Findings);
        Assert.Contains(found.Unknown, unknown => unknown is { Class: null, Percent: 12m });
        Assert.Contains(found.Unknown, unknown => unknown.Class == HazardClass.AquaticChronic);
    }

    [Fact]
    public void Substance_WithTwoAccounts_TakesTheWorseOfEach()
    {
        HazardFacts one = new([new(HazardCategory.SkinSens1B)], acuteM: 1);
        HazardFacts other = new([new(HazardCategory.SkinSens1A)], [new(HazardCategory.SkinSens1A, 0.01m)], acuteM: 10);
        HazardFacts both = one.Or(other);
        Assert.Equal(HazardCategory.SkinSens1A, both.In(HazardClass.SkinSensitisation)!.Category);
        Assert.Equal(0.01m, both.LimitIn(HazardClass.SkinSensitisation));
        Assert.Equal(10, both.AcuteM);
        Assert.False(HazardFacts.Unknown.Or(one).IsWhollyUnknown);
    }

    [Theory]
    [InlineData("Flam. Liq. 2 H225; Eye Irrit. 2 H319", "Flam. Liq. 2, Eye Irrit. 2")]
    [InlineData("Acute Tox. 4 H302 H332", "Acute Tox. 4 (oral), Acute Tox. 4 (inhalation)")]
    [InlineData("Acute Tox. 3 (dermal)", "Acute Tox. 3 (dermal)")]
    [InlineData("skin sens 1b, h317", "Skin Sens. 1B")]
    [InlineData("STOT SE 3, H336", "STOT SE 3 (narcotic)")]
    [InlineData("H317; H314; H360Fd", "Skin Sens. 1, Skin Corr. 1, Repr. 1A")]
    [InlineData("Skin sensitization (Category 1B), H317; Eye irritation, Category 2A, H319", "Skin Sens. 1B, Eye Irrit. 2")]
    [InlineData("Acute toxicity, oral (Category 4), H302; Eye Irrit. 2A H319", "Acute Tox. 4 (oral), Eye Irrit. 2")]
    [InlineData("not classified", "")]
    public void Text_AsASheetWritesIt_IsRead(string text, string expected)
    {
        ClassificationReading reading = ClassificationText.Parse(text);
        Assert.Empty(reading.NotRead);
        Assert.Equal(expected, string.Join(", ", reading.Entries.Select(entry => HazardCategories.Name(entry.Category))));
    }

    [Fact]
    public void Text_NotUnderstood_IsHandedBackAsTyped()
    {
        ClassificationReading reading = ClassificationText.Parse("Skin Irrit. 2 H315; smells strong; Acute Tox. 4");
        Assert.Equal(["smells strong", "Acute Tox. 4"], reading.NotRead);
        Assert.Single(reading.Entries);
    }

    [Fact]
    public void Text_KeepsTheLettersOfAStatement() =>
        Assert.Equal("H360Fd", Assert.Single(ClassificationText.Parse("Repr. 1B H360Fd").Entries).Code);

    [Fact]
    public void FlashPoint_CalculatedNearALimit_AssumesTheMoreSevere()
    {
        HazardFinding finding = HazardAssessment.Of(new([], FlashPoint: new(25m, IsMeasured: false))).In(HazardClass.FlammableLiquid)!;
        Assert.Equal(HazardCategory.FlamLiq2, finding.Category);
        Assert.True(finding.IsAssumed);
        Assert.Equal(HazardCategory.FlamLiq3, HazardAssessment.Of(new([], FlashPoint: new(28m, IsMeasured: false))).In(HazardClass.FlammableLiquid)!.Category);
        Assert.Equal(HazardCategory.FlamLiq3, HazardAssessment.Of(new([], FlashPoint: new(25m, IsMeasured: true))).In(HazardClass.FlammableLiquid)!.Category);
    }

    /// <summary>A figure that stands in for want of one of the mixture never passes for the mixture's own.</summary>
    [Fact]
    public void FlashPoint_ThatStandsIn_IsAssumedAndSaidSo()
    {
        HazardsFound found = HazardAssessment.Of(new([], FlashPoint: new(40m, IsMeasured: false, IsStandIn: true)));
        Assert.True(found.In(HazardClass.FlammableLiquid)!.IsAssumed);
        Assert.Contains(found.Unknown, unknown => unknown.What.Contains("40", StringComparison.Ordinal) && unknown.Means.Contains("closed-cup test", StringComparison.Ordinal));
        Assert.False(HazardAssessment.Of(new([], FlashPoint: new(40m, IsMeasured: false))).In(HazardClass.FlammableLiquid)!.IsAssumed);
    }

    [Fact]
    public void FlashPoint_DoesNotSustainCombustion_NeedNotBeCategory3()
    {
        Assert.Null(HazardAssessment.Of(new([], FlashPoint: new(35.1m, true), SustainsCombustion: false)).In(HazardClass.FlammableLiquid));
        Assert.NotNull(HazardAssessment.Of(new([], FlashPoint: new(35.0m, true), SustainsCombustion: false)).In(HazardClass.FlammableLiquid));
    }

    [Fact]
    public void Wax_IsNotAFlammableLiquidNorAnAspirationHazard()
    {
        MaterialHazards oil = Oil("Orange", "Flam. Liq. 3 H226; Asp. Tox. 1 H304; Skin Irrit. 2 H315");
        HazardsFound found = HazardAssessment.Of(new([Line(oil, 12)], PhysicalForm.Solid));
        Assert.Equal([HazardCategory.SkinIrrit2], found.Findings.Select(finding => finding.Category));
    }

    [Fact]
    public void CorrosiveMixture_IsStatedToDamageEyesAsWell() =>
        Assert.Equal(HazardCategory.EyeDam1, HazardAssessment.Of(new([], Ph: 1.5m)).In(HazardClass.Eye)!.Category);

    [Theory]
    [InlineData(DataStatus.Memory, "limit from memory of the text: check before relying on it")]
    [InlineData(DataStatus.Read, null)]
    public void Citation_SaysHowWellItIsKnown(DataStatus status, string? expected) =>
        Assert.Equal(expected, new Citation("CLP Annex I", status).Caution);

    private static ClassifiedSubstance Of(string name, string cas, string classes) => new(name, cas, new(ClassificationText.Parse(classes).Entries));

    private static MaterialHazards Oil(string name, string classes, params Constituent[] composition) =>
        MaterialHazards.Of(name, new(ClassificationText.Parse(classes).Entries), composition);

    private static HazardLine Line(MaterialHazards material, decimal percent) => new(Guid.CreateVersion7(), material.Name, percent, material);
}
