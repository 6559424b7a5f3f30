using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Long-term hazard to water life. In order, stopping at the first that reaches 25 %: Σ M×C1 gives Chronic 1;
/// Σ 10×M×C1 + C2 gives 2; Σ 100×M×C1 + 10×C2 + C3 gives 3; Σ C1 + C2 + C3 + C4, without M, gives 4.
/// </summary>
public sealed class AquaticChronic : HazardRule
{
    private const decimal OthersCountFromPercent = 1m;
    private const decimal Tenfold = 10m;
    private const decimal Hundredfold = 100m;

    private static readonly Citation Text = new("CLP Annex I, 4.1.3.5.5.4 and Table 4.1.2; UN worked example 4.1(a)", DataStatus.Read);

    public override string Key => "aquatic-chronic";

    public override string Title => "Hazardous to water life, long-term";

    public override string AppliesTo => "Any mixture with Aquatic Chronic 1 ingredients from 0.1 % over M, or Chronic 2 to 4 ingredients from 1 %.";

    public override IReadOnlyList<Citation> Sources => [Text];

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.AquaticChronic];

    public override WorkedExample Example => new(
        "2.5 % of benzyl benzoate, Chronic 2, counts tenfold towards Chronic 3",
        WorkedExample.Of(("benzyl benzoate", 2.5m, "Aquatic Chronic 2 H411")),
        ["Aquatic Chronic 3"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        List<Ingredient> counting = [.. mixture.ToAdd(HazardClass.AquaticChronic).Where(Counts)];
        if (counting.Count == 0)
        {
            return RuleResult.None;
        }

        List<RuleStep> steps =
        [
            Step("Σ M × Chronic 1", counting, HazardCategory.AquaticChronic1, each => WeightOf(each, 1, 0, 0, 0)),
            Step("Σ 10 × M × Chronic 1 + Chronic 2", counting, HazardCategory.AquaticChronic2, each => WeightOf(each, Tenfold, 1, 0, 0)),
            Step("Σ 100 × M × Chronic 1 + 10 × Chronic 2 + Chronic 3", counting, HazardCategory.AquaticChronic3, each => WeightOf(each, Hundredfold, Tenfold, 1, 0)),
            Step("Σ Chronic 1 + 2 + 3 + 4, without M", counting, HazardCategory.AquaticChronic4, _ => 1),
        ];
        return RuleResult.Of(steps, FirstReached(steps), [.. AquaticAcute.MissingM(steps[0].From, HazardClass.AquaticChronic, facts => facts.ChronicM)]);
    }

    private static bool Counts(Ingredient ingredient) => ingredient.Facts.In(HazardClass.AquaticChronic)?.Category switch
    {
        null => false,
        HazardCategory.AquaticChronic1 => ingredient.Percent * M(ingredient) >= AquaticAcute.CountsFromPercent,
        _ => ingredient.Percent >= OthersCountFromPercent,
    };

    private static int M(Ingredient ingredient) => ingredient.Facts.ChronicM ?? 1;

    private static decimal WeightOf(Ingredient ingredient, decimal first, decimal second, decimal third, decimal fourth) =>
        ingredient.Facts.In(HazardClass.AquaticChronic)!.Category switch
        {
            HazardCategory.AquaticChronic1 => first * M(ingredient),
            HazardCategory.AquaticChronic2 => second,
            HazardCategory.AquaticChronic3 => third,
            _ => fourth,
        };

    private static RuleStep Step(string says, List<Ingredient> counting, HazardCategory becomes, Func<Ingredient, decimal> weight)
    {
        List<Contribution> from = [.. counting
            .Select(each => new Contribution(each, each.Percent * weight(each), weight(each)))
            .Where(each => each.Weight > 0)];
        decimal sum = from.Sum(each => each.Counted);
        return new(says, sum, AquaticAcute.LimitPercent, "%", Reaches(sum, AquaticAcute.LimitPercent), becomes, from, Text);
    }
}
