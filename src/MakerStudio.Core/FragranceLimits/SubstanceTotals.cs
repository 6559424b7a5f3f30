using MakerStudio.Core.Assessing;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>A restricted substance, or a group that counts together, summed over the lines, against its limit.</summary>
/// <param name="Percent">Of the finished product by weight. What is on no composition is not in it.</param>
/// <param name="Amendment">Of the standards the limit is from.</param>
/// <param name="IsOwn">The studio's own limit.</param>
/// <param name="LeftToCertificate">
/// Only one fragrance brings it, by a range or as a whole, and that has a certificate: the certificate knows the exact
/// content and decides.
/// </param>
public sealed record SubstanceTotal(
    string Name,
    decimal Percent,
    decimal Limit,
    string Amendment,
    bool IsPhototoxic,
    bool IsOwn,
    bool LeftToCertificate,
    IReadOnlyList<SubstanceFrom> From,
    Source Source)
{
    /// <summary>Total ÷ limit, at most 1 within.</summary>
    public decimal Ratio => LimitRatio.Of(Percent, Limit);

    public bool IsAbove => !LimitRatio.IsWithin(Ratio);
}

internal static class SubstanceTotals
{
    /// <summary>Those that are there. Sorted by name.</summary>
    internal static IReadOnlyList<SubstanceTotal> Of(
        IReadOnlyDictionary<string, SubstanceShare> shares, IReadOnlyList<LimitInForce> limits, IReadOnlyList<FragranceMaterialUse> materials)
    {
        var called = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (SubstanceShare share in shares.Values.OrderBy(share => share.Identity, StringComparer.Ordinal))
        {
            foreach (string name in share.Names)
            {
                called.TryAdd(name.Trim(), share.Identity);
            }
        }

        return [.. limits.Select(limit => Of(shares, limit, called, materials)).OfType<SubstanceTotal>()];
    }

    /// <summary>Fragrance materials, or other lines, that bring a substance.</summary>
    internal static int Bringers(IEnumerable<SubstanceFrom> from) =>
        from.Select(each => (each.Line.Material.Id, each.Line.Material.Name)).Distinct().Count();

    private static SubstanceTotal? Of(
        IReadOnlyDictionary<string, SubstanceShare> shares, LimitInForce limit, Dictionary<string, string> called, IReadOnlyList<FragranceMaterialUse> materials)
    {
        SubstanceFrom[] from = [.. limit.Among(called).Where(shares.ContainsKey).SelectMany(identity => shares[identity].From)];
        return from.Length == 0 ? null : new(
            limit.Name,
            LimitRatio.Sum(from.Select(each => each.Percent)),
            limit.MaxPercent,
            limit.FromWords,
            limit.IsPhototoxic,
            limit.IsOwn,
            IsLeftToCertificate(from, materials),
            from,
            limit.Source);
    }

    private static bool IsLeftToCertificate(SubstanceFrom[] from, IReadOnlyList<FragranceMaterialUse> materials) =>
        Bringers(from) == 1
        && from.Any(each => each.Known != ShareKnown.Exactly)
        && materials.Any(use => use.MaxPercent is not null && use.IsOn(from[0].Line));
}
