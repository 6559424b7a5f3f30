using System.Globalization;
using CsCheck;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Properties;

/// <summary>What holds of every formula, whatever is in it and however much is known.</summary>
public class AssessmentProperties
{
    private const int Units = 10_000;
    private static readonly string[] Kinds = ["room-spray-alcohol", "linen-spray", "reed-diffuser", "container-candle", "sachet", "pre-blend"];
    private static readonly string?[] Sheets = [null, "not classified", "Skin Sens. 1 H317; Aquatic Chronic 2 H411", "Eye Dam. 1 H318"];

    private static readonly AssessedMaterial Filler = new(
        Guid.CreateVersion7(), "DPG", MaterialKind.CarrierBase, CasNumber.Of("25265-71-8"), new Density(1.023m), FlashPoint: new Celsius(124));

    private static readonly Gen<StatedSubstance> Part = Gen.Select(Gen.Int[0, SubstanceTable.Rows.Count - 1], Gen.Int[0, 9], Gen.Int[0, 9], Gen.Bool).Select(
        (row, low, width, isKnown) => new StatedSubstance(
            SubstanceTable.Rows[row].Name, isKnown ? SubstanceTable.Rows[row].Cas : null, low, low + width));

    private static readonly Gen<AssessedMaterial> Fragrance = Gen.Select(
        Part.Array[0, 6], Gen.Int[0, Sheets.Length - 1].Select(sheet => Sheets[sheet]), Gen.Bool, Gen.Bool, Gen.Int[1, 1_000_000]).Select(
        (parts, classes, hasDensity, isEssential, number) => new AssessedMaterial(
            new Guid(number, 1, 0, new byte[8]),
            $"oil {number}",
            isEssential ? MaterialKind.EssentialOil : MaterialKind.FragranceOil,
            Density: hasDensity ? new Density(0.95m) : null,
            FlashPoint: new Celsius(70),
            Hazards: classes is null ? null : new(classes),
            Composition: parts));

    private static readonly Gen<AssessedMaterial> Alcohol = Gen.Int[5, 100].Select(strength => new AssessedMaterial(
        new Guid(strength, 2, 0, new byte[8]), $"alcohol {strength}", MaterialKind.Solvent, Strength: new(strength, AlcoholBasis.PercentVolume)));

    /// <summary>Oils and an alcohol at up to 3,000 of 10,000 each; the filler takes the rest.</summary>
    private static readonly Gen<AssessedFormula> Formulas = Gen.Select(
        Gen.Select(Fragrance, Gen.Int[1, 1500]).Array[1, 4], Alcohol, Gen.Int[0, 3000], Gen.Int[0, Kinds.Length - 1].Select(kind => Kinds[kind])).Select(
        (oils, alcohol, share, kind) => Filled(kind, [.. oils.Select(oil => (oil.Item1, oil.Item2)), (alcohol, share)]));

    private static readonly Gen<MarketChoices> Markets = Gen.Enum<LabelScheme>().Select(scheme => new MarketChoices(
        scheme, ["us-air-freshener-liquid", "ca-air-freshener-liquid"], 0.01m, [], new(2026, 11, 25)));

    [Fact]
    public void Order_OfLines_ChangesNothing() => Gen.Select(Formulas, Markets, Gen.Int).Sample((formula, market, seed) =>
    {
        AssessedLine[] shuffled = [.. formula.Lines];
        new Random(seed).Shuffle(shuffled);
        Assert.Equal(Said(formula, market), Said(formula with { Lines = shuffled }, market));
    }, iter: 200);

    /// <summary>The grown line takes the filler's place. How a flash point moves is tried below, with what burns.</summary>
    [Fact]
    public void Class_WhenOneLineAloneGrows_NeverBecomesMilder() => Gen.Select(Formulas, Markets, Gen.Int[0, 3], Gen.Int[1, 1000]).Sample((formula, market, which, by) =>
    {
        int grows = which % (formula.Lines.Count - 1);
        Assessment before = Assessment.Of(formula, market)!;
        Assessment after = Assessment.Of(formula with { Lines = [.. formula.Lines.Select((line, i) => i == grows ? line with { Fraction = line.Fraction + Share(by) }
            : i == formula.Lines.Count - 1 ? line with { Fraction = line.Fraction - Share(by) }
            : line)] }, market)!;
        foreach (HazardFinding finding in before.Hazards.Findings.Where(each => Grows(before, after, HazardCategories.ClassOf(each.Category))))
        {
            HazardFinding? now = after.Hazards.In(HazardCategories.ClassOf(finding.Category));
            Assert.True(
                now is not null && !HazardCategories.IsMoreSevere(finding.Category, now.Category),
                $"{HazardCategories.Name(finding.Category)} became {(now is null ? "none" : HazardCategories.Name(now.Category))} as {formula.Lines[grows].Material.Name} grew.");
        }
    }, iter: 300);

    [Fact]
    public void FlammableClass_AsEthanolGrowsInWater_NeverBecomesMilder()
    {
        AssessedMaterial water = new(Guid.CreateVersion7(), "Water", MaterialKind.Water);
        AssessedMaterial ethanol = new(Guid.CreateVersion7(), "Ethanol", MaterialKind.Solvent, Strength: new(100, AlcoholBasis.PercentVolume));
        MarketChoices market = new(LabelScheme.EuropeanUnion, [], null, [], new(2026, 11, 25));
        int rank = 0;
        for (int percent = 1; percent < 100; percent++)
        {
            Assessment assessment = Assessment.Of(new(
                new RoomSprayAlcohol(), [new(water.Id, water, (100 - percent) / 100m), new(ethanol.Id, ethanol, percent / 100m)], MeasuredFacts.None), market)!;
            int now = assessment.Hazards.In(HazardClass.FlammableLiquid) is { } finding ? HazardCategories.Of(finding.Category).Rank : 0;
            Assert.True(now >= rank, $"Milder at {percent} % by weight.");
            rank = now;
        }

        Assert.Equal(HazardCategories.Of(HazardCategory.FlamLiq2).Rank, rank);
    }

    /// <summary>Shares that stand to one another as before give the same, save for the word about the sum.</summary>
    [Fact]
    public void Scale_OfTheWhole_ChangesNothing() => Gen.Select(Formulas, Markets).Sample((formula, market) =>
    {
        AssessedFormula half = formula with { Lines = [.. formula.Lines.Select(line => line with { Fraction = line.Fraction / 2 })] };
        Assert.Equal(Said(formula, market), Said(half, market).Where(fact => !fact.StartsWith("Not known: The lines come to", StringComparison.Ordinal)));
    }, iter: 100);

    /// <summary>Acute toxicity is an estimate of the known part: more of what is unknown may move it either way.</summary>
    private static bool Grows(Assessment before, Assessment after, HazardClass hazardClass) =>
        hazardClass != HazardClass.FlammableLiquid
        && !((hazardClass is HazardClass.AcuteOral or HazardClass.AcuteDermal or HazardClass.AcuteInhalation)
            && new[] { before, after }.Any(each => each.Hazards.Unknown.Any(unknown => unknown.Class == hazardClass)));

    /// <summary>Advice names materials in the order of the lines, so of it the rule and its subject stand for the words.</summary>
    private static string[] Said(AssessedFormula formula, MarketChoices market) =>
        [.. AssessmentFacts.Of(Assessment.Of(formula, market)!).Select(fact => fact.Key.StartsWith("advice", StringComparison.Ordinal)
            ? fact.Key
            : $"{fact.What}: {fact.Says(CultureInfo.InvariantCulture)}").Order(StringComparer.Ordinal)];

    private static AssessedFormula Filled(string kind, (AssessedMaterial Material, int Share)[] lines) => new(
        ProductKinds.Get(kind),
        [
            .. lines.Select((line, i) => new AssessedLine(new Guid(i + 1, 0, 0, new byte[8]), line.Material, Share(line.Share))),
            new(new Guid(99, 0, 0, new byte[8]), Filler, 1 - lines.Sum(line => Share(line.Share))),
        ],
        MeasuredFacts.None,
        PackMillilitres: 100);

    private static decimal Share(int units) => (decimal)units / Units;
}
