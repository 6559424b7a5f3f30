using MakerStudio.Core.Assessing;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>A product's fragrance against the limits of one category.</summary>
/// <param name="Materials">By name.</param>
/// <param name="Substances">Restricted substances known to be in it, over all lines; phototoxic ones too.</param>
/// <param name="SumDecides">Several fragrances share the product, and their listed substances do not account for their certificates: Σ(use ÷ limit) must not exceed 1.</param>
public sealed record FragranceCategoryUse(
    FragrancePlacement Placement,
    IReadOnlyList<FragranceMaterialUse> Materials,
    IReadOnlyList<SubstanceTotal> Substances,
    bool SumDecides)
{
    private const decimal Whole = 100m;

    public string Category => Placement.Category;

    /// <summary>Σ(use ÷ limit) over the fragrances that have a limit in the category: a careful test, since the same substance may limit all of them.</summary>
    public decimal SumOfRatios => Materials.Sum(use => use.Ratio ?? 0);

    /// <summary>Σ(share ÷ limit) over phototoxic substances, at most 1; null where none is known to be in it.</summary>
    public decimal? PhototoxicSum => Phototoxic.Length > 0 ? Phototoxic.Sum(total => total.Ratio) : null;

    /// <summary>Whether the phototoxic sum decides, or the certificate of the only fragrance that brings any.</summary>
    public bool PhototoxicDecides =>
        Phototoxic.Any(total => !total.LeftToCertificate) || SubstanceTotals.Bringers(Phototoxic.SelectMany(total => total.From)) > 1;

    public FragranceVerdict Verdict => IsAbove ? FragranceVerdict.Above
        : Materials.Any(use => use.Verdict == FragranceVerdict.NotShown) ? FragranceVerdict.NotShown
        : FragranceVerdict.Within;

    /// <summary>
    /// All fragrance together, in the proportions it has now, when the first limit is just reached: per cent of the
    /// finished product, at most 100. What other lines bring of a restricted substance stays as it is. Null where a
    /// fragrance has no limit to reach, or there is none.
    /// </summary>
    public decimal? LargestPercent
    {
        get
        {
            if (Materials.Count == 0 || Materials.Any(use => use is { MaxPercent: null, Percent: > 0 }))
            {
                return null;
            }

            decimal all = Materials.Sum(use => use.Percent);
            return all > 0 ? Largest(all) : Materials is [var only] ? only.MaxPercent : null;
        }
    }

    private SubstanceTotal[] Phototoxic => [.. Substances.Where(total => total.IsPhototoxic)];

    private bool IsAbove =>
        Materials.Any(use => use.Verdict == FragranceVerdict.Above)
        || Substances.Any(total => total is { IsAbove: true, LeftToCertificate: false })
        || (SumDecides && !LimitRatio.IsWithin(SumOfRatios))
        || (PhototoxicDecides && !LimitRatio.IsWithin(PhototoxicSum ?? 0));

    private decimal Largest(decimal all)
    {
        List<decimal> each = [Whole];
        each.AddRange(Materials.Where(use => use.Percent > 0).Select(use => Reached(all, 0, use.Ratio!.Value)));
        if (SumDecides)
        {
            each.Add(Reached(all, 0, SumOfRatios));
        }

        each.AddRange(Substances.Where(total => !total.LeftToCertificate).Select(total => Reached(all, [total])));
        if (PhototoxicDecides)
        {
            each.Add(Reached(all, Phototoxic));
        }

        return LimitRatio.Rounded(each.Min());
    }

    private decimal Reached(decimal all, IReadOnlyList<SubstanceTotal> totals)
    {
        decimal Part(bool isFragrance) => totals.Sum(total =>
            LimitRatio.Of(total.From.Where(from => Materials.Any(use => use.IsOn(from.Line)) == isFragrance).Sum(from => from.Percent), total.Limit));
        return Reached(all, Part(false), Part(true));
    }

    /// <summary>The share of fragrance at which a ratio comes to 1, when part of the ratio does not grow with it.</summary>
    private static decimal Reached(decimal all, decimal standing, decimal growing) =>
        !LimitRatio.IsWithin(standing) || (standing >= 1 && growing > 0) || growing >= LimitRatio.FarBeyond ? 0
        : standing >= 1 || growing <= all * (1 - standing) / Whole ? Whole
        : all * (1 - standing) / growing;
}
