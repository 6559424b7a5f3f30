using System.Globalization;

namespace MakerStudio.Core.Hazards;

/// <param name="Rule">The rule asked.</param>
/// <param name="Result">What it said, with every comparison, reached or not.</param>
public sealed record RuleJudgement(HazardRule Rule, RuleResult Result);

/// <summary>The classes of a mixture, by calculation: a working draft that a competent person confirms.</summary>
/// <param name="Findings">One a class at most.</param>
/// <param name="Unknown">What nobody knows, and what that means.</param>
/// <param name="Ingredients">Every substance in the mixture with its share.</param>
public sealed record HazardsFound(
    IReadOnlyList<HazardFinding> Findings,
    IReadOnlyList<SupplementalSentence> Sentences,
    IReadOnlyList<UnknownHazard> Unknown,
    IReadOnlyList<RuleJudgement> Judgements,
    IReadOnlyList<Ingredient> Ingredients)
{
    public HazardFinding? In(HazardClass hazardClass) =>
        Findings.FirstOrDefault(finding => HazardCategories.ClassOf(finding.Category) == hazardClass);
}

/// <summary>Classifies a mixture by asking every rule.</summary>
public static class HazardAssessment
{
    /// <summary>Classes that only a test of the finished product can give.</summary>
    private static readonly HazardClass[] ByTestOnly = [HazardClass.FlammableSolid, HazardClass.CorrosiveToMetals, HazardClass.Aerosol];

    /// <exception cref="ArgumentOutOfRangeException">A share below 0 or above 100 %.</exception>
    public static HazardsFound Of(MixtureFacts facts)
    {
        var mixture = new Mixture(facts);
        IReadOnlyList<RuleJudgement> judgements = [.. HazardRules.All.Select(rule => new RuleJudgement(rule, rule.Judge(mixture)))];
        List<HazardFinding> findings = [.. judgements.SelectMany(judgement => judgement.Result.Findings)];
        AddEyeDamageOfCorrosives(findings);
        return new(
            findings,
            [.. judgements.SelectMany(judgement => judgement.Result.Sentences)],
            [.. WhollyUnknown(mixture), .. judgements.SelectMany(judgement => judgement.Result.Unknown), .. AquaticUnknown(mixture), .. NeedsTest(mixture)],
            judgements,
            mixture.All);
    }

    /// <summary>How severe each class is in a material made of these constituents alone.</summary>
    /// <param name="constituents">What is not listed counts as not classified.</param>
    internal static IReadOnlyDictionary<HazardClass, int> RanksOf(IReadOnlyList<Constituent> constituents)
    {
        const decimal whole = 100m;
        var alone = new MixtureFacts([new(Guid.Empty, "", whole, MaterialHazards.Of("", HazardFacts.NotClassified, constituents))]);
        return Of(alone).Findings.ToDictionary(
            finding => HazardCategories.ClassOf(finding.Category),
            finding => HazardCategories.Of(finding.Category).Rank);
    }

    /// <summary>A skin corrosive damages the eye as well (CLP Annex I, 3.3.2.4): the class is stated, and H314 covers its statement.</summary>
    private static void AddEyeDamageOfCorrosives(List<HazardFinding> findings)
    {
        int skin = findings.FindIndex(each => HazardCategories.ClassOf(each.Category) == HazardClass.Skin && each.Category != HazardCategory.SkinIrrit2);
        if (skin < 0 || findings.Exists(each => each.Category == HazardCategory.EyeDam1))
        {
            return;
        }

        findings.RemoveAll(each => HazardCategories.ClassOf(each.Category) == HazardClass.Eye);
        HazardFinding eye = findings.Find(each => HazardCategories.ClassOf(each.Category) == HazardClass.Skin)!;
        findings.Insert(findings.IndexOf(eye) + 1, eye with { Category = HazardCategory.EyeDam1, Code = HazardCategories.Of(HazardCategory.EyeDam1).Code });
    }

    private static IEnumerable<UnknownHazard> WhollyUnknown(Mixture mixture) => mixture.All
        .Where(each => each.Facts.IsWhollyUnknown)
        .Select(each => new UnknownHazard(
            $"Nothing is known of {each.Name}, {Percent(each.Percent)} % of the mixture.",
            "Every class here may be milder than the truth. Ask the supplier for the safety data sheet.",
            null,
            each.Percent));

    private static IEnumerable<UnknownHazard> AquaticUnknown(Mixture mixture)
    {
        decimal percent = mixture.All
            .Where(each => each.Facts.IsUnknown(HazardClass.AquaticChronic) || each.Facts.IsUnknown(HazardClass.AquaticAcute))
            .Sum(each => each.Percent);
        if (percent > 0)
        {
            yield return new(
                $"Contains {Percent(percent)} % of components with unknown hazards to the aquatic environment.",
                "The aquatic classes are those of the known part; the sentence belongs on the safety data sheet.",
                HazardClass.AquaticChronic,
                percent);
        }
    }

    private static IEnumerable<UnknownHazard> NeedsTest(Mixture mixture) =>
        from hazardClass in ByTestOnly
        from each in mixture.Singly(hazardClass)
        let entry = each.Facts.In(hazardClass)
        where entry is not null
        select new UnknownHazard(
            $"{each.Name} is {HazardCategories.Name(entry.Category)}.",
            "This class is not calculated for a mixture: a test of the finished product decides.",
            hazardClass,
            each.Percent);

    private static string Percent(decimal percent) => percent.ToString("0.##", CultureInfo.InvariantCulture);
}
