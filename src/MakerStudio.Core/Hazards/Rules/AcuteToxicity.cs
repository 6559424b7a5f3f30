using System.Globalization;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Acute toxicity by the estimate of the mixture, route by route: 100 ÷ ATEmix = Σ(share ÷ ATE). Where more than
/// 10 % of the mixture is of unknown toxicity, (100 − unknown) stands for 100. An ingredient's own estimate goes
/// before the point estimate of its category.
/// </summary>
public sealed class AcuteToxicity : HazardRule
{
    private const decimal Whole = 100m;
    private const decimal TraceCountsFromPercent = 0.1m;
    private const decimal CountsFromPercent = 1m;
    private const decimal UnknownUpToPercent = 10m;
    private const int MildestCategory = 4;
    private const decimal Un5PointEstimate = 2500m;

    private static readonly Citation Formula = new("CLP Annex I, 3.1.3.6; formula read through UN worked examples 3.1", DataStatus.Read);
    private static readonly Citation CutOffs = new("CLP Annex I, Table 1.1 and 3.1.3.3(a)", DataStatus.Memory);
    private static readonly HazardClass[] Routes = [HazardClass.AcuteOral, HazardClass.AcuteDermal, HazardClass.AcuteInhalation];

    public override string Key => "acute-toxicity";

    public override string Title => "Acute toxicity";

    public override string AppliesTo => "Any mixture with ingredients of acute toxicity 1 to 3 from 0.1 %, or 4 from 1 %.";

    public override IReadOnlyList<Citation> Sources => [Formula, AcuteRanges.Ranges, AcuteRanges.PointEstimates, CutOffs];

    public override IReadOnlyList<HazardClass> Classes => Routes;

    public override WorkedExample Example => new(
        "25 % of a category 4 ingredient: ATEmix = 100 ÷ (25 ÷ 500) = 2000 mg/kg, still category 4",
        WorkedExample.Of(("A", 25m, "Acute Tox. 4 H302")),
        ["Acute Tox. 4 (oral)"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var findings = new List<HazardFinding>();
        var steps = new List<RuleStep>();
        var unknown = new List<UnknownHazard>();
        foreach (AcuteRoute route in (AcuteRoute[])[AcuteRoute.Oral, AcuteRoute.Dermal, mixture.Facts.InhaledAs])
        {
            decimal unknownPercent = UnknownOn(route, mixture);
            if (unknownPercent > 0)
            {
                unknown.Add(Said(route, unknownPercent));
            }

            if (Step(route, mixture, unknownPercent) is { } step)
            {
                steps.Add(step);
                findings.AddRange(step.IsReached ? [new(step.Becomes!.Value, HazardCategories.Of(step.Becomes.Value).Code, step)] : []);
            }
        }

        return new(findings, steps, [], unknown);
    }

    private static RuleStep? Step(AcuteRoute route, Mixture mixture, decimal unknownPercent)
    {
        List<Contribution> from = [.. mixture.ToAdd(AcuteRanges.ClassOf(route))
            .Select(each => Counted(each, route, mixture.Facts.Scheme))
            .OfType<Contribution>()];
        if (from.Count == 0)
        {
            return null;
        }

        const int decimals = 6;
        decimal known = unknownPercent > UnknownUpToPercent ? Whole - unknownPercent : Whole;
        decimal estimate = known / from.Sum(each => each.Counted);
        AcuteRange? range = AcuteRanges.Of(route, decimal.Round(estimate, decimals));
        decimal limit = (range ?? AcuteRanges.Of(route, MildestCategory)).UpTo;
        HazardCategory? becomes = range is null ? null : AcuteRanges.Category(AcuteRanges.ClassOf(route), range.Category);
        return new(
            $"ATEmix {AcuteRanges.InWords(route)}: {known.ToString("0.##", CultureInfo.InvariantCulture)} ÷ Σ(share ÷ ATE), at most the limit",
            estimate, limit, AcuteRanges.UnitOf(route), becomes is not null, becomes, from, Formula);
    }

    /// <summary>Share over ATE; null for an ingredient that does not count. The ATE used stands as its limit.</summary>
    private static Contribution? Counted(Ingredient ingredient, AcuteRoute route, HazardScheme scheme)
    {
        HazardEntry? entry = ingredient.Facts.In(AcuteRanges.ClassOf(route));
        decimal? own = ingredient.Facts.EstimateFor(route);
        int? category = own is { } stated ? AcuteRanges.Of(route, stated)?.Category : null;
        category ??= entry is null ? null : AcuteRanges.Number(entry.Category);
        bool isUn5 = category is null && scheme == HazardScheme.UnGhs && route is AcuteRoute.Oral or AcuteRoute.Dermal && own <= AcuteRanges.UnCategory5UpTo;
        if ((category is null && !isUn5) || ingredient.Percent < (category < MildestCategory ? TraceCountsFromPercent : CountsFromPercent))
        {
            return null;
        }

        decimal estimate = own ?? (category is { } known ? AcuteRanges.Of(route, known).PointEstimate : Un5PointEstimate);
        return new(ingredient, ingredient.Percent / estimate, 1, estimate);
    }

    private static decimal UnknownOn(AcuteRoute route, Mixture mixture) => mixture.ToAdd(AcuteRanges.ClassOf(route))
        .Where(each => each.Percent >= CountsFromPercent && each.Facts.IsUnknown(AcuteRanges.ClassOf(route)) && each.Facts.EstimateFor(route) is null)
        .Sum(each => each.Percent);

    private static UnknownHazard Said(AcuteRoute route, decimal percent) => new(
        $"{percent.ToString("0.##", CultureInfo.InvariantCulture)} % of the mixture consists of ingredients of unknown acute toxicity ({AcuteRanges.InWords(route)}).",
        percent > UnknownUpToPercent
            ? "More than 10 %: the estimate is made for the known part alone."
            : "At most 10 %: the formula takes it as not toxic.",
        AcuteRanges.ClassOf(route),
        percent);
}
