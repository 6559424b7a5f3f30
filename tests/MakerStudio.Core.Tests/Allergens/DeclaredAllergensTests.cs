using MakerStudio.Core.Allergens;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Tests.Published;

namespace MakerStudio.Core.Tests.Allergens;

public class DeclaredAllergensTests
{
    private static readonly AssessedMaterial Water = LimitFormulas.Material("Water", MaterialKind.Water);

    /// <summary>10 % with 0.5 to 1 % of linalool, 5 % with 2 % stated: 0.1 + 0.1.</summary>
    [Fact]
    public void Allergens_AreSummedOverLines_HighEndUnlessStated()
    {
        DeclaredAllergens found = Of(
            0.2m,
            (LimitFormulas.Oil("Fig", new StatedSubstance("LINALOOL", null, 0.5m, 1)), 10),
            (LimitFormulas.Oil("Rose", new StatedSubstance("linalool", "78-70-6", 1, 3, 2)), 5));
        AllergenShare share = Assert.Single(found.Found);
        Assert.Equal("Linalool", share.Allergen.Name);
        Assert.Equal(0.2m, share.Percent);
        Assert.Equal([ShareKnown.ByHighEnd, ShareKnown.Exactly], share.From.Select(from => from.Known));
        Assert.Equal(["Fig", "Rose"], share.From.Select(from => from.Line.Material.Name));
        Assert.Same(share, Assert.Single(found.Declared));
        Assert.Empty(found.Unknown);
    }

    [Theory]
    [InlineData(0.01, true)]
    [InlineData(0.0099, false)]
    [InlineData(0.0101, true)]
    public void Threshold_IsTheShareFromWhichItIsDeclared(double percent, bool isDeclared) => Assert.Equal(
        isDeclared, Assert.Single(Of(0.01m, (LimitFormulas.Oil("Fig", LimitFormulas.Exactly("Coumarin", (decimal)percent * 10)), 10)).Found).IsDeclared);

    [Fact]
    public void Threshold_NoneOrZero()
    {
        (AssessedMaterial, decimal) fig = (LimitFormulas.Oil("Fig", LimitFormulas.Exactly("Coumarin", 1), LimitFormulas.Exactly("Citral", 0)), 10);
        DeclaredAllergens none = Of(null, fig);
        Assert.Equal(2, none.Found.Count);
        Assert.Empty(none.Declared);
        Assert.Equal(["Coumarin"], Of(0, fig).Declared.Select(share => share.Allergen.Name));
    }

    [Fact]
    public void IsomersAndGroups_CountUnderOneName()
    {
        AllergenShare share = Assert.Single(Of(
            0.01m, (LimitFormulas.Oil("Fig", LimitFormulas.Exactly("alpha-pinene", 1, "80-56-8"), LimitFormulas.Exactly("β-Pinene", 2)), 10)).Found);
        Assert.Equal("Pinene", share.Allergen.Name);
        Assert.Equal(0.3m, share.Percent);
    }

    [Fact]
    public void NaturalOil_IsAnAllergenItselfBesideItsSubstances()
    {
        AssessedMaterial lavender = LimitFormulas.Material("Lavender, Provence", MaterialKind.EssentialOil, "8000-28-0") with
        {
            Composition = [LimitFormulas.Exactly("linalool", 35), LimitFormulas.Exactly("linalyl acetate", 40)],
        };
        Assert.Equal(["Lavandula Oil/Extract", "Linalool", "Linalyl Acetate"], Of(0.1m, (lavender, 2)).Declared.Select(share => share.Allergen.Name));
    }

    [Fact]
    public void Unknown_FragranceWithoutAComposition_IsNamedWithItsLine()
    {
        DeclaredAllergens found = Of(0.01m, (LimitFormulas.Oil("Fig"), 10), (LimitFormulas.Material("DPG", MaterialKind.CarrierBase, "25265-71-8"), 20));
        Assert.Equal("What Fig is made of is not known.", Assert.Single(found.Unknown).What);
        Assert.Single(found.Unknown[0].LineIds);
        Assert.Empty(found.Found);
    }

    [Fact]
    public void Workings_NameTheLineAndTheSource()
    {
        DeclaredAllergens found = Of(0.01m, (LimitFormulas.Oil("Fig", new StatedSubstance("Coumarin", null, 0.1m, 1)), 10));
        Assert.Equal(2, found.Workings.Count);
        Assert.NotNull(found.Workings[0].LineId);
        Assert.Contains("by the high end of its range", found.Workings[0].ToString(), StringComparison.Ordinal);
        Assert.All(found.Workings, step => Assert.NotNull(step.Source.Caution));
    }

    private static DeclaredAllergens Of(decimal? threshold, params (AssessedMaterial Material, decimal Percent)[] lines) => DeclaredAllergens.Of(
        LimitFormulas.Formula("reed-diffuser", [.. lines, (Water, 100 - lines.Sum(line => line.Percent))]),
        LimitFormulas.Choices() with { AllergenPercent = threshold });
}
