using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Serious eye damage and eye irritation: Σ(share ÷ limit) ≥ 1. A skin corrosive counts as damaging the eye, once,
/// also when it is classed for both. Ingredients whose effects do not add up are judged singly by Table 3.3.4.
/// </summary>
public sealed class EyeDamageAndIrritation : HazardRule
{
    private const decimal DamagingToDamage = 3m;
    private const decimal DamagingToIrritation = 1m;
    private const decimal IrritantToIrritation = 10m;
    private const decimal SingleDamaging = 1m;
    private const decimal SingleIrritant = 3m;

    private static readonly Citation Added = new("CLP Annex I, 3.3.3.3.2 and Table 3.3.3", DataStatus.Memory);
    private static readonly Citation Singly = new("CLP Annex I, 3.3.3.3.4 and Table 3.3.4", DataStatus.Memory);
    private static readonly Citation ByPh = new("CLP Annex I, 3.3.3.1.2", DataStatus.Memory);

    private static readonly HazardCategory[] Damage = [HazardCategory.EyeDam1];
    private static readonly HazardCategory[] Irritation = [HazardCategory.EyeIrrit2];

    public override string Key => "eye-damage-irritation";

    public override string Title => "Serious eye damage and eye irritation";

    public override string AppliesTo => "Any mixture with an ingredient that damages or irritates eyes, or is corrosive, from 1 % or from its own lower limit; also any mixture of extreme pH.";

    public override IReadOnlyList<Citation> Sources => [Added, Singly, ByPh];

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.Eye];

    public override WorkedExample Example => new(
        "1.2 % of geraniol, Eye Dam. 1: below 3 %, above 1 %",
        WorkedExample.Of(("geraniol", 1.2m, "Eye Dam. 1 H318")),
        ["Eye Irrit. 2"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        List<Ingredient> counting = [.. Relevant(mixture).Where(Counts)];
        List<Ingredient> adding = [.. counting.Where(each => SkinCorrosionAndIrritation.AddsUp(each.Facts))];
        List<RuleStep> steps =
        [
            .. PhStep(mixture.Facts.Ph),
            .. SingleSteps(counting.Where(each => !SkinCorrosionAndIrritation.AddsUp(each.Facts)), damage: true),
            .. Steps(adding),
            .. SingleSteps(counting.Where(each => !SkinCorrosionAndIrritation.AddsUp(each.Facts)), damage: false),
        ];
        HazardFinding? finding = steps.Where(step => step.IsReached)
            .OrderByDescending(step => HazardCategories.Of(step.Becomes!.Value).Rank)
            .Select(step => new HazardFinding(step.Becomes!.Value, HazardCategories.Of(step.Becomes.Value).Code, step))
            .FirstOrDefault();
        return RuleResult.Of(steps, finding);
    }

    /// <summary>The eye's ingredients, and corrosive materials that only the skin class has as a whole.</summary>
    private static IEnumerable<Ingredient> Relevant(Mixture mixture)
    {
        IReadOnlyList<Ingredient> own = mixture.ToAdd(HazardClass.Eye);
        return own.Concat(mixture.ToAdd(HazardClass.Skin)
            .Where(each => each.IsWhole && each.Facts.IsCorrosive && !own.Any(other => other.IsWhole && other.Name == each.Name)));
    }

    private static bool IsDamaging(HazardFacts facts) =>
        facts.IsCorrosive || facts.In(HazardClass.Eye)?.Category == HazardCategory.EyeDam1;

    private static bool Counts(Ingredient ingredient)
    {
        HazardFacts facts = ingredient.Facts;
        decimal own = facts.LimitIn(HazardClass.Eye) ?? SkinCorrosionAndIrritation.CountsFromPercent;
        return (IsDamaging(facts) || facts.In(HazardClass.Eye) is not null)
            && ingredient.Percent >= Math.Min(SkinCorrosionAndIrritation.CountsFromPercent, own);
    }

    private static IEnumerable<RuleStep> PhStep(decimal? ph)
    {
        if (ph is { } known && SkinCorrosionAndIrritation.IsExtreme(known))
        {
            decimal limit = known <= SkinCorrosionAndIrritation.AcidFromPh ? SkinCorrosionAndIrritation.AcidFromPh : SkinCorrosionAndIrritation.AlkaliFromPh;
            yield return new("pH of the mixture is extreme", known, limit, "pH", true, HazardCategory.EyeDam1, [], ByPh);
        }
    }

    private static IEnumerable<RuleStep> Steps(List<Ingredient> adding)
    {
        List<Contribution> damage = [.. Over(adding.Where(each => IsDamaging(each.Facts)), DamagingToDamage, Damage)];
        List<Contribution> irritation =
        [
            .. Over(adding.Where(each => IsDamaging(each.Facts)), DamagingToIrritation, Irritation),
            .. Over(adding.Where(each => !IsDamaging(each.Facts)), IrritantToIrritation, Irritation),
        ];
        if (damage.Count > 0)
        {
            yield return Sum("Σ (Skin Corr. 1 or Eye Dam. 1 ÷ 3 %), own limits first", damage, HazardCategory.EyeDam1);
        }

        if (irritation.Count > 0)
        {
            yield return Sum("Σ (Skin Corr. 1 or Eye Dam. 1 ÷ 1 % + Eye Irrit. 2 ÷ 10 %), own limits first", irritation, HazardCategory.EyeIrrit2);
        }
    }

    private static IEnumerable<RuleStep> SingleSteps(IEnumerable<Ingredient> ingredients, bool damage) =>
        from each in ingredients
        where IsDamaging(each.Facts) == damage
        let limit = (damage ? each.Facts.LimitFor(Damage) : each.Facts.LimitFor(Irritation)) ?? (damage ? SingleDamaging : SingleIrritant)
        select new RuleStep(
            $"{each.Name} on its own: effects do not add up",
            each.Percent,
            limit,
            "%",
            each.Percent >= limit,
            damage ? HazardCategory.EyeDam1 : HazardCategory.EyeIrrit2,
            [new(each, each.Percent, 1, limit)],
            Singly);

    private static IEnumerable<Contribution> Over(IEnumerable<Ingredient> ingredients, decimal generic, HazardCategory[] limitOf) =>
        from each in ingredients
        let limit = each.Facts.LimitFor(limitOf) ?? generic
        select new Contribution(each, each.Percent / limit, 1, limit);

    private static RuleStep Sum(string says, List<Contribution> from, HazardCategory becomes)
    {
        decimal sum = from.Sum(each => each.Counted);
        return new(says, sum, 1m, "", Reaches(sum, 1m), becomes, from, Added);
    }
}
