using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>What one limit allows of a mixture.</summary>
/// <param name="Content">Per cent of the mixture by weight, over all substances the limit counts together.</param>
/// <param name="Limit">Per cent of the finished product.</param>
/// <param name="Percent">Of the mixture in the finished product, at most 100.</param>
public sealed record SubstanceMaximum(string Name, decimal Content, decimal Limit, decimal Percent, bool IsPhototoxic, Source Source);

/// <summary>
/// Own calculation for a mixture whose restricted substances are known: the lowest of 100 × limit ÷ content, not above
/// 100. Different substances are judged one by one; phototoxic ones together, 100 ÷ Σ(content ÷ limit).
/// </summary>
/// <param name="Percent">Of the finished product. 100 is "not limited": no recommendation.</param>
/// <param name="Limiting">The substance that decides, or null where none limits it.</param>
/// <param name="Substances">Every limit that bears on it, the strictest first.</param>
public sealed record MaximumUse(decimal Percent, string? Limiting, IReadOnlyList<SubstanceMaximum> Substances)
{
    internal const string PhototoxicTogether = "phototoxic ingredients together";

    private const decimal Whole = 100m;

    /// <param name="composition">Of a range the high end counts.</param>
    /// <param name="category">"10A", "10B" or "12" have built-in limits; others only what the studio enters.</param>
    /// <param name="own">The studio's own limits.</param>
    public static MaximumUse Of(IReadOnlyList<StatedSubstance> composition, string category, IReadOnlyList<SubstanceLimit> own)
    {
        ArgumentNullException.ThrowIfNull(composition);
        ArgumentNullException.ThrowIfNull(category);
        ArgumentNullException.ThrowIfNull(own);
        return Of(composition, RestrictedSubstances.In(FragranceCategories.Plain(category), own));
    }

    internal static MaximumUse Of(IReadOnlyList<StatedSubstance> composition, IReadOnlyList<LimitInForce> limits)
    {
        var contents = new Dictionary<string, decimal>(StringComparer.Ordinal);
        var called = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (StatedSubstance part in composition)
        {
            string identity = SubstanceNames.Identity(part.Name, part.Cas);
            called.TryAdd(part.Name.Trim(), identity);
            contents[identity] = contents.GetValueOrDefault(identity) + (part.StatedPercent ?? part.HighPercent);
        }

        List<SubstanceMaximum> all = [];
        foreach (LimitInForce limit in limits)
        {
            decimal content = limit.Among(called).Sum(contents.GetValueOrDefault);
            if (content > 0)
            {
                all.Add(new(limit.Name, content, limit.MaxPercent, LimitRatio.MostUse(content, limit.MaxPercent), limit.IsPhototoxic, limit.Source));
            }
        }

        List<SubstanceMaximum> phototoxic = all.FindAll(each => each.IsPhototoxic);
        if (phototoxic.Count > 1)
        {
            decimal ratio = phototoxic.Sum(each => LimitRatio.Of(each.Content, each.Limit));
            all.Add(new(
                PhototoxicTogether,
                phototoxic.Sum(each => each.Content),
                1,
                LimitRatio.MostUse(ratio, 1),
                true,
                phototoxic[0].Source with { Status = phototoxic.Select(each => each.Source.Status).Aggregate(DataStatuses.Weaker) }));
        }

        SubstanceMaximum[] sorted = [.. all.OrderBy(each => each.Percent).ThenBy(each => each.Name, StringComparer.Ordinal)];
        return sorted is [{ Percent: < Whole } first, ..] ? new(first.Percent, first.Name, sorted) : new(Whole, null, sorted);
    }
}
