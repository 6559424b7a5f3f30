using CsCheck;
using MakerStudio.Core.Allergens;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Tests.Properties;

public class LimitProperties
{
    private static readonly string[] Names =
        ["cinnamic alcohol", "Estragole", "methyl eugenol", "bergamot oil", "lemon oil", "linalool", "CITRAL", "benzyl benzoate", "d-limonene", "carvone", "Nobody knows"];

    private static readonly MaterialKind[] Kinds =
        [MaterialKind.FragranceOil, MaterialKind.EssentialOil, MaterialKind.PreBlend, MaterialKind.Solvent, MaterialKind.Wax, MaterialKind.Water, MaterialKind.Fixative];

    private static readonly Gen<StatedSubstance> Part = Gen.Select(Gen.Int[0, Names.Length - 1], Gen.Int[0, 300], Gen.Int[0, 300], Gen.Bool)
        .Select((name, low, more, isStated) => new StatedSubstance(Names[name], null, low / 100m, (low + more) / 100m, isStated ? low / 100m : null));

    private static readonly Gen<AssessedMaterial> Material = Gen.Select(
        Gen.Int[0, 30], Gen.Int[0, Kinds.Length - 1], Part.Array[0, 5], Gen.Int[-1, 100], Gen.Int[-1, 100], Gen.Int[0, 100],
        (number, kind, parts, certified, volatilePercent, scent) => new AssessedMaterial(
            Guid.CreateVersion7(),
            $"material {number}",
            Kinds[kind],
            Composition: parts,
            Certificate: certified < 0 ? null : new("51", null, new Dictionary<string, decimal> { ["10A"] = certified, ["10B"] = certified / 2m, ["12"] = 100 }),
            VolatilePercent: volatilePercent < 50 ? null : volatilePercent,
            ScentShare: scent / 100m));

    private static readonly Gen<AssessedFormula> Formula = Gen.Select(
        Gen.Int[0, ProductKinds.All.Count - 1],
        Gen.Select(Material, Gen.Int[0, 1000]).Array[1, 6]).Select((kind, lines) => new AssessedFormula(
            ProductKinds.All[kind],
            [.. lines.Select(line => new AssessedLine(Guid.CreateVersion7(), line.Item1, line.Item2 / 1000m / lines.Length))],
            MeasuredFacts.None));

    private static readonly Gen<MarketChoices> Choices = Gen.Select(Gen.Int[2020, 2035], Gen.Bool).Select((year, hasOwn) => new MarketChoices(
        LabelScheme.UnitedStates,
        ["us-air-freshener-liquid", "ca-air-freshener-liquid", "ca-fabric-refresher-non-aerosol"],
        0.01m,
        hasOwn ? [new("Linalool and citral", ["78-70-6", "5392-40-5"], "51", new Dictionary<string, decimal> { ["10A"] = 0.1m, ["10B"] = 0.2m })] : [],
        new(year, 6, 1)));

    [Fact]
    public void Order_OfLines_ChangesNothing() => Gen.Select(Formula, Choices).Sample((formula, choices) =>
    {
        AssessedFormula turned = formula with { Lines = [.. formula.Lines.Reverse()] };
        Assert.Equal(Figures(formula, choices), Figures(turned, choices));
    });

    /// <summary>The grown line takes the place of something that does not count; the others keep their shares.</summary>
    [Fact]
    public void Voc_WhenOneLineAloneGrows_NeverFalls() => Gen.Select(Formula, Choices, Gen.Int[0, 5], Gen.Int[0, 500]).Sample((formula, choices, which, by) =>
    {
        VocContent before = VocContent.Of(formula, choices);
        VocContent after = VocContent.Of(Grown(formula, which, by), choices);
        foreach (VocDefinition definition in Enum.GetValues<VocDefinition>())
        {
            Assert.True(after.In(definition).Percent >= before.In(definition).Percent);
            Assert.True(after.In(definition).CautiousPercent >= before.In(definition).CautiousPercent);
            Assert.InRange(after.In(definition).LowestPercent, 0, after.In(definition).Percent);
            Assert.True(after.In(definition).CautiousPercent >= after.In(definition).Percent);
        }

        Assert.All(before.Comparisons.Zip(after.Comparisons), pair => Assert.True(pair.First.Verdict != VocVerdict.Exceeds || pair.Second.Verdict == VocVerdict.Exceeds));
    });

    [Fact]
    public void Fragrance_WhenOneLineAloneGrows_NoSumFalls() => Gen.Select(Formula, Choices, Gen.Int[0, 5], Gen.Int[0, 500]).Sample((formula, choices, which, by) =>
    {
        FragranceUse before = FragranceUse.Of(formula, choices);
        FragranceUse after = FragranceUse.Of(Grown(formula, which, by), choices);
        Assert.True(before.Verdict != FragranceVerdict.Above || after.Verdict == FragranceVerdict.Above);
        Assert.All(before.Categories.Zip(after.Categories), pair =>
        {
            Assert.True(pair.Second.SumOfRatios >= pair.First.SumOfRatios);
            Assert.True((pair.Second.PhototoxicSum ?? 0) >= (pair.First.PhototoxicSum ?? 0));
            Assert.InRange(pair.Second.LargestPercent ?? 0, 0, 100);
        });
        DeclaredAllergens declared = DeclaredAllergens.Of(formula, choices);
        DeclaredAllergens grown = DeclaredAllergens.Of(Grown(formula, which, by), choices);
        Assert.Subset(grown.Declared.Select(share => share.Allergen.Name).ToHashSet(), declared.Declared.Select(share => share.Allergen.Name).ToHashSet());
    });

    /// <summary>At the largest share everything is within or on the limit; a little more of all fragrance is not.</summary>
    [Fact]
    public void LargestPercent_IsWhereTheVerdictTurns() => Gen.Select(Formula, Choices).Sample((formula, choices) =>
    {
        FragranceUse use = FragranceUse.Of(formula, choices);
        HashSet<Guid> fragrance = [.. use.Categories.SelectMany(category => category.Materials).SelectMany(each => each.LineIds)];
        decimal all = 100 * formula.Lines.Where(line => fragrance.Contains(line.LineId)).Sum(line => line.Fraction);
        if (use.LargestPercent is not { } largest || all == 0 || largest is 0 or 100)
        {
            return;
        }

        FragranceVerdict At(decimal percent) => FragranceUse.Of(
            formula with
            {
                Lines = [.. formula.Lines.Select(line => fragrance.Contains(line.LineId) ? line with { Fraction = line.Fraction * percent / all } : line)],
            },
            choices).Verdict;
        Assert.Equal(FragranceVerdict.Within, At(largest * 0.99999m));
        Assert.Equal(FragranceVerdict.Above, At(largest * 1.0001m));
    });

    private static AssessedFormula Grown(AssessedFormula formula, int which, int by)
    {
        AssessedLine[] lines = [.. formula.Lines];
        int index = which % lines.Length;
        lines[index] = lines[index] with { Fraction = lines[index].Fraction + (by / 1000m / 2) };
        return formula with { Lines = lines };
    }

    private static IEnumerable<string> Figures(AssessedFormula formula, MarketChoices choices)
    {
        VocContent voc = VocContent.Of(formula, choices);
        FragranceUse use = FragranceUse.Of(formula, choices);
        return
        [
            $"{voc.Federal} {voc.California} {voc.OtherStates}",
            .. voc.Comparisons.Select(comparison => $"{comparison.Limit.Key} {comparison.Verdict} {comparison.IsDecidedByUnknown}"),
            .. use.Categories.Select(category => $"{category.Category} {category.Verdict} {category.SumOfRatios} {category.SumDecides} {category.PhototoxicSum} {category.LargestPercent}"),
            .. use.Categories.SelectMany(category => category.Substances).Select(total => $"{total.Name} {total.Percent} {total.LeftToCertificate}"),
            .. DeclaredAllergens.Of(formula, choices).Found.Select(share => $"{share.Allergen.Name} {share.Percent} {share.IsDeclared}"),
            .. voc.Unknown.Concat(use.Unknown).Select(each => $"{each.What} {each.Percent}").Order(StringComparer.Ordinal),
        ];
    }
}
