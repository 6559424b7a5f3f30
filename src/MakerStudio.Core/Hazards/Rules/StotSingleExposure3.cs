using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Respiratory irritation (H335) and drowsiness (H336) after one exposure: the shares of each effect add up, the two
/// effects never together. The 20 % is called "appropriate" by the text; expert judgement may go lower or higher.
/// </summary>
public sealed class StotSingleExposure3 : HazardRule
{
    private const decimal CountsFromPercent = 1m;
    private const decimal LimitPercent = 20m;

    private static readonly Citation Text = new("CLP Annex I, 3.8.3.4.5 and 3.8.3.4.6", DataStatus.Memory);

    public override string Key => "stot-single-3";

    public override string Title => "Respiratory irritation and drowsiness";

    public override string AppliesTo => "Any mixture with STOT SE 3 ingredients from 1 %, or from their own lower limit.";

    public override IReadOnlyList<Citation> Sources => [Text];

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.StotRespiratoryIrritation, HazardClass.StotNarcotic];

    public override WorkedExample Example => new(
        "12 % of propan-2-ol + 8 % of another narcotic reach 20 %; 10 % of a respiratory irritant stays alone",
        WorkedExample.Of(("propan-2-ol", 12m, "STOT SE 3 H336"), ("B", 8m, "STOT SE 3 H336"), ("C", 10m, "STOT SE 3 H335")),
        ["STOT SE 3 (narcotic)"]);

    public override RuleResult Judge(Mixture mixture)
    {
        List<RuleStep> steps =
        [
            .. Step(mixture, HazardClass.StotRespiratoryIrritation, HazardCategory.StotSe3Respiratory, "H335"),
            .. Step(mixture, HazardClass.StotNarcotic, HazardCategory.StotSe3Narcotic, "H336"),
        ];
        return new([.. steps.Where(step => step.IsReached).Select(step => FirstReached([step])!)], steps, [], []);
    }

    private static IEnumerable<RuleStep> Step(Mixture mixture, HazardClass hazardClass, HazardCategory category, string code)
    {
        List<Contribution> from =
        [
            .. from each in mixture.ToAdd(hazardClass)
               where each.Facts.In(hazardClass) is not null
               let own = each.Facts.LimitFor(category)
               where each.Percent >= Math.Min(CountsFromPercent, own ?? CountsFromPercent)
               select new Contribution(each, each.Percent / (own ?? LimitPercent), 1, own ?? LimitPercent),
        ];
        if (from.Count > 0)
        {
            decimal sum = from.Sum(each => each.Counted);
            yield return new($"Σ {code} ÷ limit", sum, 1m, "", Reaches(sum, 1m), category, from, Text);
        }
    }
}
