using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Hazards;

public class SubstanceTableTests
{
    public static TheoryData<string> Numbers => [.. SubstanceTable.Rows.Select(row => row.Cas)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Row_IsReadWhole(string cas)
    {
        SubstanceRow row = SubstanceTable.Rows.Single(each => each.Cas == cas);
        Assert.True(CasNumber.TryParse(row.Cas, out _, out string? why), why);
        Assert.True(row.Ec is null || EcAgrees(row.Ec), row.Ec);
        ClassificationReading reading = ClassificationText.Parse(row.Classes);
        Assert.Empty(reading.NotRead);
        Assert.Equal(row.Classes == "not classified" || row.DriesSkin, reading.Entries.Count == 0 || row.DriesSkin);
        ClassifiedSubstance substance = SubstanceTable.Find(cas)!;
        Assert.Equal(reading.Entries, substance.Facts.Entries);
        Assert.Equal(DataStatus.Memory, substance.Facts.From!.Status);
        Assert.All(substance.Facts.Limits, limit => Assert.NotNull(substance.Facts.In(HazardCategories.ClassOf(limit.Category))));
    }

    [Fact]
    public void Find_NotInTheTable_IsNull() => Assert.Null(SubstanceTable.Find("50-00-0"));

    /// <summary>A room spray as the studio makes it; worked by hand from the rules.</summary>
    [Fact]
    public void RoomSpray_EthanolWithAnOil_HasTheLabelOneExpects()
    {
        MaterialHazards oil = MaterialHazards.Of("Fig", new(ClassificationText.Parse("Skin Sens. 1 H317; Aquatic Chronic 3 H412").Entries),
        [
            new(SubstanceTable.Find("5989-27-5")!, 5, 10),
            new(SubstanceTable.Find("78-70-6")!, 1, 5),
        ]);
        MixtureFacts facts = new(
            [Line("Ethanol", 83m, MaterialHazards.Of(SubstanceTable.Find("64-17-5")!)), Line("Fig", 12m, oil), Line("DPG", 5m, MaterialHazards.Of(SubstanceTable.Find("25265-71-8")!))],
            FlashPoint: new(15m, true),
            InitialBoilingPoint: 78m);
        HazardsFound found = HazardAssessment.Of(facts);
        // Limonene 1.2 %, linalool 0.6 %: H317 by the first, the second named. Ethanol 83 ÷ 50 ≥ 1: H319.
        Assert.Equal(
            [HazardCategory.FlamLiq2, HazardCategory.EyeIrrit2, HazardCategory.SkinSens1B],
            found.Findings.Select(finding => finding.Category));
        HazardLabel label = HazardLabel.For(found, new(CapacityMillilitres: 100m));
        Assert.Equal(SignalWord.Danger, label.Signal);
        Assert.Equal([Pictogram.Ghs02, Pictogram.Ghs07], label.Pictograms);
        Assert.Equal(["H225", "H317", "H319"], label.HazardStatements.Select(each => each.Code));
        Assert.Equal(["H225", "H319"], label.SmallPack.HazardStatements);
        Assert.Equal(["d-limonene"], label.SubstancesToName);
        Assert.Equal(["linalool"], Assert.Single(label.Supplemental).Names);
        Assert.Equal(["P102", "P210", "P280", "P303+P361+P353", "P305+P351+P338", "P501"], label.Precautions.Chosen.Select(each => each.Code));
        Assert.Equal(["P210", "P305+P351+P338"], label.SmallPack.Precautions);
        Assert.False(label.ChildResistant.IsNeeded);
        Assert.Equal(["Flam. Liq. 2"], label.Tactile.Because);
        Assert.True(label.NeedsUfi);
        Assert.Equal(16m, label.Size!.PictogramSideIfPossible);
    }

    private static HazardLine Line(string name, decimal percent, MaterialHazards material) => new(Guid.CreateVersion7(), name, percent, material);

    /// <summary>EC numbers: the sum of the first six digits times 1 to 6, modulo 11, is the seventh (ECHA, EC Inventory).</summary>
    private static bool EcAgrees(string ec)
    {
        int[] digits = [.. ec.Where(char.IsAsciiDigit).Select(each => each - '0')];
        return digits.Length == 7 && digits.Take(6).Select((digit, place) => digit * (place + 1)).Sum() % 11 == digits[6];
    }
}
