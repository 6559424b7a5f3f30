using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Short-term hazard to water life: Σ(M × Aquatic Acute 1) ≥ 25 %.</summary>
public sealed class AquaticAcute : HazardRule
{
    internal const decimal LimitPercent = 25m;

    /// <summary>An ingredient of category 1 counts from this over its M-factor.</summary>
    internal const decimal CountsFromPercent = 0.1m;

    private static readonly Citation Text = new("CLP Annex I, 4.1.3.5.5.3 and Table 4.1.1; UN worked example 4.1(a)", DataStatus.Read);

    public override string Key => "aquatic-acute";

    public override string Title => "Hazardous to water life, short-term";

    public override string AppliesTo => "Any mixture with Aquatic Acute 1 ingredients from 0.1 % over M.";

    public override IReadOnlyList<Citation> Sources => [Text];

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.AquaticAcute];

    public override WorkedExample Example => new(
        "25 % of HHCB, M = 1, reaches 25 %", WorkedExample.Of(("HHCB", 25m, "Aquatic Acute 1 H400")), ["Aquatic Acute 1"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        List<Contribution> from = [.. mixture.ToAdd(HazardClass.AquaticAcute)
            .Where(each => each.Facts.In(HazardClass.AquaticAcute) is not null && each.Percent * (each.Facts.AcuteM ?? 1) >= CountsFromPercent)
            .Select(each => new Contribution(each, each.Percent * (each.Facts.AcuteM ?? 1), each.Facts.AcuteM ?? 1))];
        if (from.Count == 0)
        {
            return RuleResult.None;
        }

        decimal sum = from.Sum(each => each.Counted);
        var step = new RuleStep("Σ M × Aquatic Acute 1", sum, LimitPercent, "%", Reaches(sum, LimitPercent), HazardCategory.AquaticAcute1, from, Text);
        return RuleResult.Of([step], FirstReached([step]), [.. MissingM(from, HazardClass.AquaticAcute, facts => facts.AcuteM)]);
    }

    /// <summary>Ingredients of category 1 without a stated M-factor: 1 was used.</summary>
    internal static IEnumerable<UnknownHazard> MissingM(IEnumerable<Contribution> from, HazardClass hazardClass, Func<HazardFacts, int?> m) => from
        .Where(each => each.Ingredient.Facts.In(hazardClass)?.Category is HazardCategory.AquaticAcute1 or HazardCategory.AquaticChronic1 && m(each.Ingredient.Facts) is null)
        .Select(each => new UnknownHazard(
            $"No M-factor is stated for {each.Ingredient.Name}.",
            "1 was used. A higher one would count it ten times or more: ask the supplier.",
            hazardClass,
            each.Ingredient.Percent));
}
