using System.Globalization;
using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using static MakerStudio.Core.Advice.ExampleLines;
using static MakerStudio.Core.Tests.Advice.AdviceCase;

namespace MakerStudio.Core.Tests.Advice;

/// <summary>What an override answers, and what makes it lapse.</summary>
public class OverriddenAdviceTests
{
    private static readonly AssessedMaterial Unstated = OilMaterial with { PhthalateFree = null };

    private static OverriddenAdvice Override(string key, AssessedFormula formula, bool isBeingReleased = false) =>
        OverriddenAdvice.Of(Given(key, formula, isBeingReleased).Single());

    [Fact]
    public void Override_SameMaterialInANewVersion_Holds()
    {
        OverriddenAdvice overridden = Override("phthalate-statement", Spray(Line(Unstated, 12m), Alcohol(88m)));
        AssessedLine newLine = new(new Guid("0193f2a0-0000-7000-8000-000000000007"), Unstated, 0.10m);
        Assert.True(overridden.Answers(Given("phthalate-statement", Spray(newLine, Alcohol(90m))).Single()));
    }

    [Fact]
    public void Override_AnotherMaterialJoins_Lapses()
    {
        OverriddenAdvice overridden = Override("phthalate-statement", Spray(Line(Unstated, 12m), Alcohol(88m)));
        AssessedMaterial second = Unstated with { Id = new Guid("0193f2a0-0000-7000-8000-000000000008"), Name = "Cedar" };
        Assert.False(overridden.Answers(Given("phthalate-statement", Spray(Line(Unstated, 6m), Line(second, 6m), Alcohol(88m))).Single()));
        Assert.False(overridden.Answers(Given("phthalate-statement", Spray(Line(second, 12m), Alcohol(88m))).Single()));
    }

    [Theory]
    [InlineData("16", true)]
    [InlineData("18", true)]
    [InlineData("18.01", false)]
    [InlineData("60", false)]
    public void Override_OfALoad_HoldsUpToTheLoadItWasGivenFor(string scent, bool expected)
    {
        OverriddenAdvice overridden = Override("load-above-usual", Spray(Oil(18m), Alcohol(82m)));
        AdviceGiven now = Given("load-above-usual", Spray(Oil(Numbers.Of(scent)), Alcohol(100m - Numbers.Of(scent)))).Single();
        Assert.Equal(expected, overridden.Answers(now));
    }

    [Fact]
    public void Override_OfTooLittle_LapsesWithLess()
    {
        AssessedFormula With(decimal solubiliser) => Of(new RoomSprayWater(), Oil(3m), Solubiliser(solubiliser), Water(97m - solubiliser));
        OverriddenAdvice overridden = Override("solubiliser-ratio", With(6m));
        Assert.True(overridden.Answers(Given("solubiliser-ratio", With(7m)).Single()));
        Assert.False(overridden.Answers(Given("solubiliser-ratio", With(5m)).Single()));
        Assert.False(overridden.Answers(Given("solubiliser-ratio", With(2m)).Single()));
        OverriddenAdvice ofLess = Override("solubiliser-ratio", With(2m));
        Assert.True(ofLess.Answers(Given("solubiliser-ratio", With(2.5m)).Single()));
        Assert.False(ofLess.Answers(Given("solubiliser-ratio", With(1.5m)).Single()));
    }

    [Fact]
    public void Override_GraverKindOrAnotherRule_Lapses()
    {
        AssessedFormula formula = Spray(Line(OilMaterial with { MissingPapers = [PaperKind.Sds] }, 12m), Alcohol(88m));
        AdviceGiven atRelease = Given("missing-paper", formula, isBeingReleased: true).Single();
        Assert.False(Override("missing-paper", formula).Answers(atRelease));
        Assert.True(Override("missing-paper", formula, isBeingReleased: true).Answers(atRelease));
        Assert.False((Override("missing-paper", formula, isBeingReleased: true) with { Rule = "drops" }).Answers(atRelease));
    }

    [Fact]
    public void Advice_TheGravestComesFirst()
    {
        // The load is warned of by an earlier rule than the one that stops for a missing paper.
        IReadOnlyList<AdviceGiven> given = All(Spray(Line(OilMaterial with { MissingPapers = [PaperKind.Sds] }, 16m), Alcohol(84m)), isBeingReleased: true);
        Assert.Equal(["missing-paper", "load-above-usual"], given.Take(2).Select(each => each.Rule));
        Assert.Equal(given.Select(each => each.Kind).OrderDescending(), given.Select(each => each.Kind));
        Assert.Equal(AdviceKind.Stop, given[0].Kind);
    }

    [Fact]
    public void Says_WritesFiguresInTheReadersCulture()
    {
        AdviceGiven given = Given("load-above-usual", Spray(Oil(18.5m), Alcohol(81.5m))).Single();
        Assert.Contains("18,50 %", given.Says(CultureInfo.GetCultureInfo("de-DE")), StringComparison.Ordinal);
        Assert.Contains("18.50 %", given.Says(CultureInfo.InvariantCulture), StringComparison.Ordinal);
    }

    [Fact]
    public void Says_ManyMaterials_NamesThreeAndCountsTheRest()
    {
        AssessedLine[] oils = [.. Enumerable.Range(1, 6).Select(i => new AssessedLine(
            new Guid(i, 0, 0, new byte[8]), Unstated with { Id = new Guid(i, 1, 0, new byte[8]), Name = $"Oil {i}" }, 0.02m))];
        Assert.Contains("that Oil 1, Oil 2, Oil 3 and 3 more are free", All(Spray([.. oils, Alcohol(88m)]))[0].ToString(), StringComparison.Ordinal);
        Assert.Contains("that Oil 1, Oil 2, Oil 3 and Oil 4 are free", All(Spray([.. oils[..4], Alcohol(92m)]))[0].ToString(), StringComparison.Ordinal);
    }

    /// <summary>Order of lines decides the order of names and nothing else.</summary>
    [Fact]
    public void Rules_LinesTurnedRound_GiveTheSame()
    {
        AssessedLine[] lines = [Line(Orange, 3m), Oil(9m), Dpm(5m), Solubiliser(2m), Water(20m), Alcohol(61m)];
        Assert.Equal(
            All(Spray(lines)).Select(each => (each.Rule, each.Kind, each.Subject, each.Measure)),
            All(Spray([.. lines.Reverse()])).Select(each => (each.Rule, each.Kind, each.Subject, each.Measure)));
    }

    /// <summary>What a pre-blend is made of comes as lines that share its id; each keeps its own composition.</summary>
    [Fact]
    public void Basis_LinesThatShareAnId_KeepTheirOwnComposition()
    {
        var preBlend = new Guid("0193f2a0-0000-7000-8000-000000000009");
        AssessedMaterial vanilla = OilMaterial with { Id = preBlend, Name = "Vanilla", VanillinPercent = null, Composition = [new("vanillin", "121-33-5", 10m, 10m)] };
        AssessedLine[] lines = [Alcohol(80m), Oil(6m), new(preBlend, vanilla, 0.06m), Water(8m)];
        AdviceBasis apart = AdviceBasis.Of(Spray(lines));
        AdviceBasis together = AdviceBasis.Of(Spray([.. lines.Select(line => line with { LineId = preBlend })]));
        Assert.Equal(0.08, together.AddedWater, 12);
        Assert.Equal(0.006, together.Vanillin, 12);
        Assert.Equal(
            AdviceRules.Judge(apart).Select(each => (each.Rule, each.Kind, each.Subject)),
            AdviceRules.Judge(together).Select(each => (each.Rule, each.Kind, each.Subject)));
    }

    [Fact]
    public void Basis_MixtureOfAnotherFormula_IsRefused()
    {
        AdviceBasis basis = AdviceBasis.Of(Spray(Oil(12m), Alcohol(88m)));
        Core.Blending.Mixture other = FormulaMixture.Of(Spray(Oil(12m), Dpm(8m), Alcohol(80m)));
        Assert.Throws<ArgumentException>(() => new AdviceBasis(basis.Formula, other, Core.Blending.AlcoholContent.Of(other, null), basis.Density));
    }
}
