using MakerStudio.Core.Assessing;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>
/// A product against its fragrance certificates and the limits of the fragrance standards (an industry code, not law).
/// Says nothing of hazard classes, VOC or flash point. See docs/science/fragrance-limits.md.
/// </summary>
/// <param name="Categories">One for each category the kind falls into; where there are two, both must be kept.</param>
public sealed record FragranceUse(
    IReadOnlyList<FragranceCategoryUse> Categories, IReadOnlyList<NotKnown> Unknown, IReadOnlyList<WorkingStep> Workings)
{
    /// <summary>A certificate is rounded; own calculation may come out this much above it and still account for it.</summary>
    private const decimal CertificateRounding = 1.01m;

    /// <summary>The gravest of the categories; not shown for a kind that has none.</summary>
    public FragranceVerdict Verdict =>
        Categories.Any(use => use.Verdict == FragranceVerdict.Above) ? FragranceVerdict.Above
        : Categories.Count == 0 || Categories.Any(use => use.Verdict == FragranceVerdict.NotShown) ? FragranceVerdict.NotShown
        : FragranceVerdict.Within;

    /// <summary>
    /// The share of all fragrance, in present proportions, that just reaches the first limit: per cent of the finished
    /// product. Null where it cannot be said.
    /// </summary>
    public decimal? LargestPercent =>
        Categories.Count > 0 && Categories.All(use => use.LargestPercent is not null) ? Categories.Min(use => use.LargestPercent) : null;

    /// <param name="choices">Its own substance limits stand in for built-in ones of the same substance.</param>
    public static FragranceUse Of(AssessedFormula formula, MarketChoices choices)
    {
        ArgumentNullException.ThrowIfNull(formula);
        ArgumentNullException.ThrowIfNull(choices);
        return Of(formula, choices, SubstanceShares.Of(formula));
    }

    internal static FragranceUse Of(AssessedFormula formula, MarketChoices choices, IReadOnlyDictionary<string, SubstanceShare> shares)
    {
        FragranceCategoryUse[] uses = [.. formula.Kind.FragranceCategories.Select(placement => In(placement, formula, choices, shares))];
        return new(
            uses,
            FragranceUnknowns.Of(formula, choices, uses, shares),
            [.. uses.SelectMany(use => FragranceWorkings.Of(use, choices))]);
    }

    private static FragranceCategoryUse In(
        FragrancePlacement placement, AssessedFormula formula, MarketChoices choices, IReadOnlyDictionary<string, SubstanceShare> shares)
    {
        IReadOnlyList<FragranceMaterialUse> materials = FragranceMaterials.In(formula, placement.Category);
        IReadOnlyList<LimitInForce> limits = RestrictedSubstances.In(placement.Category, choices.SubstanceLimits);
        FragranceMaterialUse[] limited = [.. materials.Where(use => use is { MaxPercent: not null, Percent: > 0 })];
        bool sumDecides = limited.Length > 1
            && !(limited.All(use => IsAccountedFor(use, limits)) && NoneIsSharedWithoutLimit(shares, limits));
        return new(placement, materials, SubstanceTotals.Of(shares, limits, materials), sumDecides);
    }

    /// <summary>The listed substances give at least as low a limit as the certificate states.</summary>
    private static bool IsAccountedFor(FragranceMaterialUse use, IReadOnlyList<LimitInForce> limits) =>
        use.IsNotLimited
            ? use.Material.Composition.Count > 0
            : MaximumUse.Of(use.Material.Composition, limits).Percent <= use.MaxPercent * CertificateRounding;

    private static bool NoneIsSharedWithoutLimit(IReadOnlyDictionary<string, SubstanceShare> shares, IReadOnlyList<LimitInForce> limits) =>
        !RestrictedSubstances.WithoutLimit(limits).Any(each => each.Limit.Cas.Any(cas =>
            shares.TryGetValue(cas, out SubstanceShare? share) && SubstanceTotals.Bringers(share.From) > 1));
}
