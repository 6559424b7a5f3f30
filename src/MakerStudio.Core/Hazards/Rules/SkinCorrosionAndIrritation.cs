using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Skin corrosion and irritation. Shares add up, each over its limit: Σ(share ÷ limit) ≥ 1, which is the plain sum
/// where no ingredient has a limit of its own. Ingredients whose effects do not add up (acids, bases, and those the
/// maker marks so) are judged singly by Table 3.2.4. A mixture of pH ≤ 2 or ≥ 11.5 is corrosive; what an acid or
/// alkali reserve might change is not modelled.
/// </summary>
public sealed class SkinCorrosionAndIrritation : HazardRule
{
    /// <summary>Lowest share that counts, in per cent, unless a specific limit is lower (3.2.3.3.1).</summary>
    internal const decimal CountsFromPercent = 1m;

    internal const decimal AcidFromPh = 2m;
    internal const decimal AlkaliFromPh = 11.5m;

    /// <summary>Per cent for the generic limits below.</summary>
    private const decimal CorrosiveToCorrosion = 5m;
    private const decimal CorrosiveToIrritation = 1m;
    private const decimal IrritantToIrritation = 10m;
    private const decimal SingleCorrosive = 1m;
    private const decimal SingleIrritant = 3m;

    private static readonly Citation Added = new("CLP Annex I, 3.2.3.3.2 and Table 3.2.3", DataStatus.Secondary);
    private static readonly Citation Singly = new("CLP Annex I, 3.2.3.3.4 and Table 3.2.4", DataStatus.Memory);
    private static readonly Citation ByPh = new("CLP Annex I, 3.2.3.1.2", DataStatus.Read);
    private static readonly Citation Normalised = new("ECHA, Guidance on the Application of the CLP Criteria, skin chapter: sum of shares over limits", DataStatus.Memory);

    private static readonly HazardCategory[] Corrosives =
        [HazardCategory.SkinCorr1A, HazardCategory.SkinCorr1, HazardCategory.SkinCorr1B, HazardCategory.SkinCorr1C];

    public override string Key => "skin-corrosion-irritation";

    public override string Title => "Skin corrosion and irritation";

    public override string AppliesTo => "Any mixture with a corrosive or irritant ingredient from 1 %, or from its own lower limit; also any mixture of extreme pH.";

    public override IReadOnlyList<Citation> Sources => [Added, Singly, ByPh, Normalised];

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.Skin];

    public override WorkedExample Example => new(
        "6 % + 4 % of irritants reach 10 %",
        WorkedExample.Of(("A", 6m, "Skin Irrit. 2 H315"), ("B", 4m, "Skin Irrit. 2 H315")),
        ["Skin Irrit. 2"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        List<Ingredient> counting = [.. mixture.ToAdd(HazardClass.Skin).Where(Counts)];
        List<Ingredient> adding = [.. counting.Where(each => AddsUp(each.Facts))];
        List<RuleStep> steps =
        [
            .. PhStep(mixture.Facts.Ph),
            .. Corrosion(adding, counting),
            .. Irritation(adding),
            .. SingleSteps(counting.Where(each => !AddsUp(each.Facts))),
        ];
        HazardFinding? worst = steps.Where(step => step.IsReached)
            .OrderByDescending(step => HazardCategories.Of(step.Becomes!.Value).Rank)
            .Select(step => new HazardFinding(step.Becomes!.Value, HazardCategories.Of(step.Becomes.Value).Code, step))
            .FirstOrDefault();
        return RuleResult.Of(steps, worst);
    }

    /// <summary>Stated by the maker, else by an extreme pH.</summary>
    internal static bool AddsUp(HazardFacts facts) => facts.AdditivityApplies && !IsExtreme(facts.Ph);

    internal static bool IsExtreme(decimal? ph) => ph is <= AcidFromPh or >= AlkaliFromPh;

    private static bool Counts(Ingredient ingredient) => ingredient.Facts.In(HazardClass.Skin) is not null
        && ingredient.Percent >= Math.Min(CountsFromPercent, ingredient.Facts.LimitIn(HazardClass.Skin) ?? CountsFromPercent);

    private static IEnumerable<RuleStep> PhStep(decimal? ph)
    {
        if (ph is { } known && IsExtreme(known))
        {
            decimal limit = known <= AcidFromPh ? AcidFromPh : AlkaliFromPh;
            yield return new("pH of the mixture is extreme", known, limit, "pH", true, HazardCategory.SkinCorr1, [], ByPh);
        }
    }

    private static IEnumerable<RuleStep> Corrosion(List<Ingredient> adding, List<Ingredient> counting)
    {
        List<Contribution> all = [.. Over(adding, Corrosives, CorrosiveToCorrosion, Corrosives)];
        if (all.Count == 0)
        {
            yield break;
        }

        yield return Sum("Σ Skin Corr. 1A ÷ limit", Of(all, HazardCategory.SkinCorr1A), HazardCategory.SkinCorr1A);
        if (counting.Exists(each => each.Facts.In(HazardClass.Skin)!.Category == HazardCategory.SkinCorr1))
        {
            // Somebody's sub-category is not known, so that of the mixture is not either.
            yield return Sum("Σ Skin Corr. 1 ÷ limit", all, HazardCategory.SkinCorr1);
            yield break;
        }

        yield return Sum("Σ Skin Corr. 1A + 1B ÷ limit", Of(all, HazardCategory.SkinCorr1A, HazardCategory.SkinCorr1B), HazardCategory.SkinCorr1B);
        yield return Sum("Σ Skin Corr. 1A + 1B + 1C ÷ limit", all, HazardCategory.SkinCorr1C);
    }

    private static IEnumerable<RuleStep> Irritation(List<Ingredient> adding)
    {
        List<Contribution> all =
        [
            .. Over(adding, Corrosives, CorrosiveToIrritation, [HazardCategory.SkinIrrit2]),
            .. Over(adding, [HazardCategory.SkinIrrit2], IrritantToIrritation, [HazardCategory.SkinIrrit2]),
        ];
        if (all.Count > 0)
        {
            yield return Sum("Σ (Skin Corr. 1 ÷ 1 % + Skin Irrit. 2 ÷ 10 %), own limits first", all, HazardCategory.SkinIrrit2);
        }
    }

    private static IEnumerable<RuleStep> SingleSteps(IEnumerable<Ingredient> ingredients)
    {
        foreach (Ingredient each in ingredients)
        {
            bool isCorrosive = Corrosives.Contains(each.Facts.In(HazardClass.Skin)!.Category);
            HazardCategory becomes = isCorrosive ? HazardCategory.SkinCorr1 : HazardCategory.SkinIrrit2;
            decimal limit = (isCorrosive ? each.Facts.LimitFor(Corrosives) : each.Facts.LimitFor(HazardCategory.SkinIrrit2))
                ?? (isCorrosive ? SingleCorrosive : SingleIrritant);
            yield return new(
                $"{each.Name} on its own: effects do not add up", each.Percent, limit, "%", each.Percent >= limit, becomes, [new(each, each.Percent, 1, limit)], Singly);
        }
    }

    private static IEnumerable<Contribution> Over(List<Ingredient> ingredients, HazardCategory[] having, decimal generic, HazardCategory[] limitOf) =>
        from each in ingredients
        where having.Contains(each.Facts.In(HazardClass.Skin)!.Category)
        let limit = each.Facts.LimitFor(limitOf) ?? generic
        select new Contribution(each, each.Percent / limit, 1, limit);

    private static List<Contribution> Of(List<Contribution> all, params HazardCategory[] categories) =>
        all.FindAll(each => categories.Contains(each.Ingredient.Facts.In(HazardClass.Skin)!.Category));

    private static RuleStep Sum(string says, List<Contribution> from, HazardCategory becomes)
    {
        decimal sum = from.Sum(each => each.Counted);
        return new(says, sum, 1m, "", Reaches(sum, 1m), becomes, from, Added);
    }
}
