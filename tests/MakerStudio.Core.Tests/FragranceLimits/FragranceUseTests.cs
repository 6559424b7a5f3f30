using MakerStudio.Core.Assessing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Tests.Published;

namespace MakerStudio.Core.Tests.FragranceLimits;

public class FragranceUseTests
{
    private const string CinnamylAlcohol = "104-54-1";

    [Fact]
    public void Categories_EveryRowAndPlacement_HasASource()
    {
        Assert.All(FragranceCategories.All, category => Assert.True(category.Title.Length > 3 && category.Source.Citation.Length > 5));
        Assert.Equal(18, FragranceCategories.All.SelectMany(category => category.Keys).Distinct().Count());
        Assert.All(ProductKinds.All, kind => Assert.Equal(kind.IsSold, kind.FragranceCategories.Count > 0));
        Assert.All(ProductKinds.All.SelectMany(kind => kind.FragranceCategories), placement =>
        {
            Assert.NotEmpty(FragranceCategories.Find(placement.Category)!.HomeFragrance);
            Assert.NotNull(placement.Source.Caution);
        });
    }

    /// <summary>Reed diffusers and sachets 10A, sprays 10B, candles and melts 12; a linen spray is cloth and spray.</summary>
    [Theory]
    [InlineData("room-spray-alcohol", "10B")]
    [InlineData("room-spray-water", "10B")]
    [InlineData("linen-spray", "10A 10B")]
    [InlineData("reed-diffuser", "10A")]
    [InlineData("container-candle", "12")]
    [InlineData("wax-melt", "12")]
    [InlineData("sachet", "10A")]
    [InlineData("pre-blend", "")]
    public void Kinds_FallIntoTheirCategories(string kind, string categories) =>
        Assert.Equal(categories, string.Join(' ', ProductKinds.Get(kind).FragranceCategories.Select(placement => placement.Category)));

    [Fact]
    public void Limits_EveryRow_HasANumberASourceAndAnAmendment() => Assert.All(RestrictedSubstances.All, each =>
    {
        Assert.NotEmpty(each.Limit.Cas);
        Assert.All(each.Limit.Cas, cas => Assert.True(CasNumber.TryParse(cas, out _, out string? why), why));
        Assert.NotEmpty(each.Source.Citation);
        Assert.Equal("49", each.Limit.Amendment);
        Assert.Equal(each.Kind == RestrictionKind.Prohibited, each.Limit.MaxPercent.Count > 0 && each.Limit.MaxPercent.Values.All(limit => limit == 0));
    });

    [Theory]
    [InlineData("10a")]
    [InlineData(" Category 10 A")]
    [InlineData("Cat. 10A")]
    public void Certificate_CategoryAsPapersWriteIt_IsFound(string written) => Assert.Equal(
        FragranceVerdict.Within, Use("reed-diffuser", (LimitFormulas.Oil("Fig").Certified((written, 20)), 20)).Verdict);

    [Theory]
    [InlineData(14.99, FragranceVerdict.Within)]
    [InlineData(15, FragranceVerdict.Within)]
    [InlineData(15.01, FragranceVerdict.Above)]
    public void Certificate_EqualIsWithin(double use, FragranceVerdict verdict)
    {
        FragranceUse found = Use("reed-diffuser", (LimitFormulas.Oil("Fig").Certified(("10A", 15)), (decimal)use));
        Assert.Equal(verdict, found.Verdict);
        Assert.Equal(15m, found.LargestPercent);
    }

    [Fact]
    public void Certificate_OfZero_AllowsNone()
    {
        FragranceUse found = Use("reed-diffuser", (LimitFormulas.Oil("Fig").Certified(("10A", 0)), 0.01m));
        Assert.Equal(FragranceVerdict.Above, found.Verdict);
        Assert.Equal(0m, found.LargestPercent);
        Assert.Equal(FragranceVerdict.Within, Use("reed-diffuser", (LimitFormulas.Oil("Fig").Certified(("10A", 0)), 0m)).Verdict);
    }

    [Fact]
    public void Certificate_MissingOrWithoutTheCategory_IsSaid()
    {
        FragranceUse found = Use("reed-diffuser", (LimitFormulas.Oil("Rose"), 5), (LimitFormulas.Oil("Fig").Certified(("12", 100)), 5));
        Assert.Equal(FragranceVerdict.NotShown, found.Verdict);
        Assert.Null(found.LargestPercent);
        Assert.Contains(found.Unknown, each => each is { What: "Rose has no fragrance certificate.", Percent: 5 });
        Assert.Contains(found.Unknown, each => each.What == "Fig is not certified for category 10A (its certificate is of amendment 51).");
        Assert.Contains(found.Workings, step => step.ToString().Contains("amendment 51, does not have this category", StringComparison.Ordinal));
    }

    [Fact]
    public void Fragrance_AtZero_AsksForNothing()
    {
        FragranceUse found = Use("reed-diffuser", (LimitFormulas.Oil("Rose"), 0), (LimitFormulas.Oil("Fig").Certified(("10A", 20)), 5));
        Assert.Equal(FragranceVerdict.Within, found.Verdict);
        Assert.Equal(20m, found.LargestPercent);
        Assert.Empty(found.Unknown);
        Assert.False(found.Categories[0].SumDecides);
    }

    /// <summary>A pre-blend has no certificate, and its maker is the studio; one without scent asks for none.</summary>
    [Fact]
    public void PreBlend_WithScent_IsNotShown()
    {
        AssessedMaterial accord = LimitFormulas.Material("Accord", MaterialKind.PreBlend);
        FragranceUse found = Use("reed-diffuser", (accord, 5));
        Assert.Equal(FragranceVerdict.NotShown, found.Verdict);
        Assert.DoesNotContain("supplier", Assert.Single(found.Unknown).Means, StringComparison.Ordinal);
        Assert.Equal(FragranceVerdict.Within, Use("reed-diffuser", (accord with { ScentShare = 0 }, 5)).Verdict);
    }

    [Fact]
    public void Certificate_OfAnOlderAmendment_IsSaid()
    {
        AssessedMaterial fig = LimitFormulas.Oil("Fig") with { Certificate = new("IFRA 48th", null, new Dictionary<string, decimal> { ["10A"] = 50 }) };
        Assert.Contains(Use("reed-diffuser", (fig, 5)).Workings, step => step.ToString().Contains("the categories of amendment 48 are other ones", StringComparison.Ordinal));
        AssessedMaterial newer = fig with { Certificate = fig.Certificate with { Amendment = "50" } };
        FragranceUse On(DateOnly day) => FragranceUse.Of(LimitFormulas.Formula("reed-diffuser", (newer, 100)), LimitFormulas.Choices() with { On = day });
        Assert.Contains(On(new(2025, 10, 30)).Workings, step => step.ToString().Contains("existing fragrances", StringComparison.Ordinal));
        Assert.Contains(On(new(2025, 10, 29)).Workings, step => step.ToString().Contains("new fragrances", StringComparison.Ordinal));
        Assert.DoesNotContain(On(new(2024, 3, 29)).Workings, step => step.ToString().Contains("amendment 51", StringComparison.Ordinal));
    }

    /// <summary>"When a product fits two categories take the stricter" (common reading of the guidance, from memory).</summary>
    [Fact]
    public void LinenSpray_KeepsBothCategories()
    {
        AssessedMaterial fig = LimitFormulas.Oil("Fig").Certified(("10A", 2), ("10B", 8));
        Assert.Equal(FragranceVerdict.Above, Use("linen-spray", (fig, 3)).Verdict);
        Assert.Equal(2m, Use("linen-spray", (fig, 3)).LargestPercent);
        Assert.Equal(FragranceVerdict.NotShown, Use("linen-spray", (LimitFormulas.Oil("Rose").Certified(("10B", 8)), 3)).Verdict);
    }

    [Fact]
    public void SameMaterial_OnTwoLines_IsOne()
    {
        AssessedMaterial fig = LimitFormulas.Oil("Fig").Certified(("10A", 10));
        FragranceCategoryUse found = Assert.Single(Use("reed-diffuser", (fig, 6), (fig, 6)).Categories);
        Assert.Equal(12m, Assert.Single(found.Materials).Percent);
        Assert.Equal(FragranceVerdict.Above, found.Verdict);
        Assert.Equal(10m, found.LargestPercent);
    }

    /// <summary>Both hold cinnamyl alcohol, limit 0.76 % (read): 10 × 4 % + 4 × 7.6 % = 0.704 %. One more per cent of the second is too much.</summary>
    [Theory]
    [InlineData(4, FragranceVerdict.Within)]
    [InlineData(5, FragranceVerdict.Above)]
    public void TwoFragrances_WithASharedSubstance_AreAddedUp(int second, FragranceVerdict verdict)
    {
        FragranceCategoryUse found = Assert.Single(Use(
            "reed-diffuser",
            (LimitFormulas.Oil("Fig", new StatedSubstance("Cinnamyl Alcohol", null, 1, 4)).Certified(("10A", 19)), 10),
            (LimitFormulas.Oil("Rose", LimitFormulas.Exactly("cinnamic alcohol", 7.6m, CinnamylAlcohol)).Certified(("10A", 10)), second)).Categories);
        Assert.False(found.SumDecides);
        SubstanceTotal total = Assert.Single(found.Substances);
        Assert.Equal(0.4m + (0.076m * second), total.Percent);
        Assert.False(total.LeftToCertificate);
        Assert.Equal(verdict, found.Verdict);
        Assert.Equal(decimal.Round((10m + second) * 0.76m / total.Percent, 8), found.LargestPercent);
    }

    /// <summary>What limits the one is not in the other: 15 ÷ 19 + 5 ÷ 10 is above 1, and each is within.</summary>
    [Fact]
    public void TwoFragrances_LimitedByDifferentSubstances_AreNotAddedUp()
    {
        AssessedMaterial fig = LimitFormulas.Oil("Fig", LimitFormulas.Exactly("cinnamic alcohol", 4)).Certified(("10A", 19));
        AssessedMaterial basil = LimitFormulas.Oil("Basil", LimitFormulas.Exactly("ESTRAGOLE", 0.5m)).Certified(("10A", 10));
        FragranceCategoryUse found = Assert.Single(Use("reed-diffuser", (fig, 15), (basil, 5)).Categories);
        Assert.True(found.SumOfRatios > 1);
        Assert.False(found.SumDecides);
        Assert.Equal(FragranceVerdict.Within, found.Verdict);

        // A certificate stricter than the listed substances: something is not listed, and the careful sum decides.
        FragranceCategoryUse careful = Assert.Single(Use("reed-diffuser", (fig.Certified(("10A", 16)), 15), (basil, 5)).Categories);
        Assert.True(careful.SumDecides);
        Assert.Equal(FragranceVerdict.Above, careful.Verdict);
        Assert.Equal(decimal.Round(20 / ((15m / 16) + (5m / 10)), 8), careful.LargestPercent);
    }

    /// <summary>Both hold citral, which is restricted with a limit that is not known here.</summary>
    [Fact]
    public void TwoFragrances_SharingASubstanceWithoutALimit_KeepTheCarefulSum()
    {
        AssessedMaterial fig = LimitFormulas.Oil("Fig", LimitFormulas.Exactly("cinnamic alcohol", 4), LimitFormulas.Exactly("Citral", 1)).Certified(("10A", 19));
        AssessedMaterial basil = LimitFormulas.Oil("Basil", LimitFormulas.Exactly("estragole", 0.5m), LimitFormulas.Exactly("citral", 1)).Certified(("10A", 10));
        FragranceUse found = Use("reed-diffuser", (fig, 15), (basil, 5));
        Assert.True(Assert.Single(found.Categories).SumDecides);
        Assert.Contains(found.Unknown, each => each.What == "Citral is restricted, and no limit for category 10A is entered.");
    }

    [Fact]
    public void OwnLimit_StandsInForTheBuiltInOneOfItsCategory()
    {
        var own = new SubstanceLimit("Cinnamyl alcohol, newer", [CinnamylAlcohol], "52", new Dictionary<string, decimal> { ["10A"] = 0.3m });
        (AssessedMaterial, decimal)[] lines = [(LimitFormulas.Oil("Fig", LimitFormulas.Exactly("Cinnamyl alcohol", 4)).Certified(("10A", 19), ("10B", 50)), 10)];
        SubstanceTotal total = Assert.Single(Assert.Single(Use("reed-diffuser", [own], lines).Categories).Substances);
        Assert.True(total is { Limit: 0.3m, IsOwn: true, IsAbove: true });
        Assert.Equal(2.0m, Assert.Single(Assert.Single(Use("room-spray-water", [own], lines).Categories).Substances).Limit);
    }

    [Fact]
    public void Group_CountsAsOne()
    {
        var group = new SubstanceLimit("Rose ketones", ["57378-68-4", "23696-85-7"], "51", new Dictionary<string, decimal> { ["10A"] = 0.05m });
        AssessedMaterial rose = LimitFormulas.Oil("Rose", LimitFormulas.Exactly("delta-damascone", 0.4m), LimitFormulas.Exactly("beta-damascenone", 0.2m, "23696-85-7")).Certified(("10A", 50));
        SubstanceTotal total = Assert.Single(Assert.Single(Use("reed-diffuser", [group], (rose, 10)).Categories).Substances);
        Assert.Equal(0.06m, total.Percent);
        Assert.True(total.IsAbove);
        Assert.Equal(0.05m * 100 / 0.6m, MaximumUse.Of(rose.Composition, "10A", [group]).Percent);
    }

    /// <summary>An own limit without a number is found by the name on the sheet, though the sheet gives a number as well.</summary>
    [Fact]
    public void OwnLimit_WithANameOnly_IsFoundByName()
    {
        var own = new SubstanceLimit("house MUSK", [], "51", new Dictionary<string, decimal> { ["10A"] = 1m });
        AssessedMaterial oil = LimitFormulas.Oil("Fig", LimitFormulas.Exactly("House Musk", 50, "1222-05-5")).Certified(("10A", 50));
        Assert.Equal(5m, Assert.Single(Assert.Single(Use("reed-diffuser", [own], (oil, 10)).Categories).Substances).Percent);
        Assert.Equal(2m, MaximumUse.Of(oil.Composition, "10A", [own]).Percent);
    }

    [Fact]
    public void Prohibited_AnyOfItIsAbove()
    {
        AssessedMaterial oil = LimitFormulas.Oil("Old stock", LimitFormulas.Exactly("musk ambrette", 0.5m));
        Assert.Equal(FragranceVerdict.Above, Use("container-candle", (oil.Certified(("12", 100)), 8)).Verdict);
        Assert.Equal(0m, MaximumUse.Of(oil.Composition, "12", []).Percent);
    }

    /// <summary>The high end of one fragrance's range is above the limit; its certificate knows better.</summary>
    [Fact]
    public void HighEnd_OfOneCertifiedFragrance_IsLeftToTheCertificate()
    {
        AssessedMaterial fig = LimitFormulas.Oil("Fig", new StatedSubstance("cinnamic alcohol", null, 1, 10));
        FragranceCategoryUse found = Assert.Single(Use("reed-diffuser", (fig.Certified(("10A", 15)), 10)).Categories);
        Assert.True(Assert.Single(found.Substances) is { IsAbove: true, LeftToCertificate: true });
        Assert.Equal(FragranceVerdict.Within, found.Verdict);
        Assert.Equal(15m, found.LargestPercent);
        Assert.Equal(FragranceVerdict.Above, Use("reed-diffuser", (fig, 10)).Verdict);
    }

    /// <summary>Two natural oils by their numbers: 0.3 ÷ 0.4 + 1 ÷ 2 = 1.25. In a diffuser there is no such limit.</summary>
    [Fact]
    public void PhototoxicOils_AsMaterials_AreAddedUp()
    {
        (AssessedMaterial, decimal)[] lines =
        [
            (LimitFormulas.Material("Bergamot", MaterialKind.EssentialOil, "8007-75-8").Certified(("10A", 100), ("10B", 0.4m)), 0.3m),
            (LimitFormulas.Material("Lemon oil", MaterialKind.EssentialOil).Certified(("10A", 100), ("10B", 2)), 1m),
        ];
        FragranceCategoryUse spray = Assert.Single(Use("room-spray-water", lines).Categories);
        Assert.Equal(1.25m, spray.PhototoxicSum);
        Assert.Equal(FragranceVerdict.Above, spray.Verdict);
        Assert.Equal(1.04m, spray.LargestPercent);
        FragranceCategoryUse diffuser = Assert.Single(Use("reed-diffuser", lines).Categories);
        Assert.Null(diffuser.PhototoxicSum);
        Assert.Equal(FragranceVerdict.Within, diffuser.Verdict);
    }

    /// <summary>A fixative line brings some of the limit already: 0.06 % of 0.76 % stay, the fragrance may grow to 17.5 %.</summary>
    [Fact]
    public void OtherLines_TakePartOfALimit()
    {
        AssessedMaterial fixative = LimitFormulas.Material("Fixative", MaterialKind.Fixative) with { Composition = [LimitFormulas.Exactly("cinnamic alcohol", 2)] };
        FragranceUse found = Use("reed-diffuser", (LimitFormulas.Oil("Fig", LimitFormulas.Exactly("cinnamic alcohol", 4)).Certified(("10A", 19)), 10), (fixative, 3));
        Assert.Equal(17.5m, found.LargestPercent);
    }

    /// <summary>A pre-blend's parts come as lines of one id: 0.06 % from its fixative stay, as above.</summary>
    [Fact]
    public void LinesOfOneId_AreToldApartByTheirMaterial()
    {
        AssessedMaterial fixative = LimitFormulas.Material("Fixative", MaterialKind.Fixative) with { Composition = [LimitFormulas.Exactly("cinnamic alcohol", 2)] };
        AssessedMaterial fig = LimitFormulas.Oil("Fig", LimitFormulas.Exactly("cinnamic alcohol", 4)).Certified(("10A", 19));
        AssessedFormula formula = LimitFormulas.Formula("reed-diffuser", (fig, 10), (fixative, 3));
        Guid preBlend = Guid.CreateVersion7();
        FragranceUse found = FragranceUse.Of(
            formula with { Lines = [.. formula.Lines.Select(line => line with { LineId = preBlend })] }, LimitFormulas.Choices());
        Assert.Equal(17.5m, found.LargestPercent);
    }

    [Fact]
    public void NoFragrance_IsWithin_AndAPreBlendIsJudgedElsewhere()
    {
        Assert.Equal(FragranceVerdict.Within, Use("reed-diffuser").Verdict);
        Assert.Null(Use("reed-diffuser").LargestPercent);
        FragranceUse preBlend = Use("pre-blend", (LimitFormulas.Oil("Fig"), 50));
        Assert.Empty(preBlend.Categories);
        Assert.Equal(FragranceVerdict.NotShown, preBlend.Verdict);
        Assert.Single(preBlend.Unknown);
    }

    [Fact]
    public void MaximumUse_WithATraceOrNothing_IsNotAbove100()
    {
        Assert.Equal(new decimal?[] { 100, 100 }, new decimal?[]
        {
            MaximumUse.Of([LimitFormulas.Exactly("estragole", 0.0000000000000000000000000001m)], "10A", []).Percent,
            MaximumUse.Of([LimitFormulas.Exactly("estragole", 0)], "10A", []).Percent,
        });
        Assert.Null(MaximumUse.Of([], "10A", []).Limiting);
        Assert.Equal(100m, MaximumUse.Of([LimitFormulas.Exactly("estragole", 5)], "5A", []).Percent);
        Assert.Equal(1m, MaximumUse.Of([LimitFormulas.Exactly("estragole", 5)], "category 10a", []).Percent);
        MaximumUse citrus = MaximumUse.Of([LimitFormulas.Exactly("bergamot oil", 4), LimitFormulas.Exactly("lemon oil", 20)], "10B", []);
        Assert.Equal(5m, citrus.Percent);
        Assert.True(citrus.Substances[0].IsPhototoxic);
    }

    private static FragranceUse Use(string kind, params (AssessedMaterial Material, decimal Percent)[] lines) => Use(kind, [], lines);

    private static FragranceUse Use(string kind, SubstanceLimit[] own, params (AssessedMaterial Material, decimal Percent)[] lines) => FragranceUse.Of(
        LimitFormulas.Formula(kind, [.. lines, (LimitFormulas.Material("Water", MaterialKind.Water), 100 - lines.Sum(line => line.Percent))]),
        LimitFormulas.Choices() with { SubstanceLimits = own });
}
