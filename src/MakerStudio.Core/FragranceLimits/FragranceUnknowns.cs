using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>What is missing from an account of fragrance limits.</summary>
internal static class FragranceUnknowns
{
    internal static IReadOnlyList<NotKnown> Of(
        AssessedFormula formula, MarketChoices choices, IReadOnlyList<FragranceCategoryUse> uses, IReadOnlyDictionary<string, SubstanceShare> shares) =>
    [
        .. uses.Count == 0
            ? [new NotKnown($"{formula.Kind.Name} has no category of its own.", "Its fragrance is judged in the product it goes into.", null, [])]
            : Certificates(uses).Concat(WithoutLimit(uses, choices, shares)).Concat(Compositions(uses)),
    ];

    private static IEnumerable<NotKnown> Certificates(IReadOnlyList<FragranceCategoryUse> uses)
    {
        foreach (FragranceMaterialUse use in uses[0].Materials.Where(use => use is { HasCertificate: false, Percent: > 0 }))
        {
            yield return new(
                $"{use.Material.Name} has no fragrance certificate.",
                use.Material.Kind == MaterialKind.PreBlend
                    ? "The fragrances in it have theirs; hold each against its own, at the share it comes to in the product."
                    : "Nothing shows how much of it the product may hold. Ask the supplier for the certificate.",
                use.Percent,
                use.LineIds);
        }

        foreach (FragranceCategoryUse category in uses)
        {
            foreach (FragranceMaterialUse use in category.Materials.Where(use => use is { HasCertificate: true, MaxPercent: null, Percent: > 0 }))
            {
                yield return new(
                    $"{use.Material.Name} is not certified for category {category.Category} (its certificate is of amendment {use.Material.Certificate!.Amendment}).",
                    $"It may not be meant for {category.Placement.As}. Ask the supplier for a certificate with this category.",
                    use.Percent,
                    use.LineIds);
            }
        }
    }

    /// <summary>One certificate covers what its own fragrance holds; nothing covers what two of them share.</summary>
    private static IEnumerable<NotKnown> WithoutLimit(
        IReadOnlyList<FragranceCategoryUse> uses, MarketChoices choices, IReadOnlyDictionary<string, SubstanceShare> shares)
    {
        foreach (FragranceCategoryUse use in uses)
        {
            foreach (RestrictedSubstance each in RestrictedSubstances.WithoutLimit(RestrictedSubstances.In(use.Category, choices.SubstanceLimits)))
            {
                SubstanceFrom[] from = [.. each.Limit.Cas.Where(shares.ContainsKey).SelectMany(cas => shares[cas].From)];
                bool isCovered = SubstanceTotals.Bringers(from) == 1
                    && use.Materials.Any(material => material.MaxPercent is not null && material.IsOn(from[0].Line));
                if (from.Length > 0 && !isCovered)
                {
                    yield return new(
                        $"{each.Limit.Name} is restricted, and no limit for category {use.Category} is entered.",
                        "Its total is not compared. Enter the limit with its amendment.",
                        LimitRatio.Sum(from.Select(part => part.Percent)),
                        [.. from.Select(part => part.Line.LineId).Distinct()]);
                }
            }
        }
    }

    private static IEnumerable<NotKnown> Compositions(IReadOnlyList<FragranceCategoryUse> uses)
    {
        List<FragranceMaterialUse> materials = [.. uses[0].Materials.Where(use => use.Percent > 0)];
        return materials.Count < 2 ? [] : materials.Where(use => use.Material.Composition.Count == 0).Select(use => new NotKnown(
            $"What {use.Material.Name} is made of is not known.",
            "Substances it shares with the other fragrances cannot be added up; Σ(use ÷ limit) ≤ 1 stands in.",
            use.Percent,
            use.LineIds));
    }
}
