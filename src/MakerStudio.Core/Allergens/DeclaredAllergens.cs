using MakerStudio.Core.Assessing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Allergens;

/// <summary>A declarable allergen in the finished product.</summary>
/// <param name="Percent">By weight, over all lines: stated shares, else the high ends of the ranges.</param>
/// <param name="From">The lines that bring it.</param>
/// <param name="IsDeclared">At or above the share from which the studio declares.</param>
public sealed record AllergenShare(FragranceAllergen Allergen, decimal Percent, IReadOnlyList<SubstanceFrom> From, bool IsDeclared);

/// <summary>
/// Fragrance allergens to declare by name, against the share the studio's market sets. Apart from what CLP asks for:
/// EUH208 and H317 follow their own limits in the hazard rules. See docs/science/declared-allergens.md.
/// </summary>
/// <param name="ThresholdPercent">Per cent of the finished product; null where the market asks for none.</param>
/// <param name="Found">All that are known to be in it, by name.</param>
/// <param name="Unknown">Fragrances that may bring more.</param>
public sealed record DeclaredAllergens(
    decimal? ThresholdPercent, IReadOnlyList<AllergenShare> Found, IReadOnlyList<NotKnown> Unknown, IReadOnlyList<WorkingStep> Workings)
{
    private const string Rule = "Declared allergens";

    /// <summary>Those to print, by name.</summary>
    public IReadOnlyList<AllergenShare> Declared => [.. Found.Where(share => share.IsDeclared)];

    public static DeclaredAllergens Of(AssessedFormula formula, MarketChoices choices)
    {
        ArgumentNullException.ThrowIfNull(formula);
        ArgumentNullException.ThrowIfNull(choices);
        return Of(formula, choices, SubstanceShares.Of(formula));
    }

    internal static DeclaredAllergens Of(AssessedFormula formula, MarketChoices choices, IReadOnlyDictionary<string, SubstanceShare> shares)
    {
        AllergenShare[] found =
        [
            .. shares.Values
                .Select(share => (Share: share, Allergen: FragranceAllergens.Find(share.Identity)))
                .Where(pair => pair.Allergen is not null)
                .GroupBy(pair => pair.Allergen!, pair => pair.Share)
                .OrderBy(same => same.Key.Name, StringComparer.OrdinalIgnoreCase)
                .Select(same => Of(same.Key, [.. same.SelectMany(share => share.From)], choices.AllergenPercent)),
        ];
        return new(choices.AllergenPercent, found, NotListed(formula), [.. found.SelectMany(share => Steps(share, choices.AllergenPercent))]);
    }

    private static AllergenShare Of(FragranceAllergen allergen, IReadOnlyList<SubstanceFrom> from, decimal? threshold)
    {
        decimal percent = LimitRatio.Rounded(from.Sum(each => each.Percent));
        return new(allergen, percent, from, threshold is { } limit && percent > 0 && percent >= limit);
    }

    private static IReadOnlyList<NotKnown> NotListed(AssessedFormula formula) =>
    [
        .. formula.Lines
            .Where(line => line.Fraction > 0 && FragranceMaterials.IsFragrance(line.Material) && line.Material.Composition.Count == 0)
            .Select(line => new NotKnown(
                $"What {line.Material.Name} is made of is not known.",
                "It may bring allergens that are not counted here. Ask the supplier for its declaration of allergens.",
                100 * line.Fraction,
                [line.LineId])),
    ];

    private static IEnumerable<WorkingStep> Steps(AllergenShare share, decimal? threshold)
    {
        Source source = share.Allergen.NameSource with { Status = DataStatuses.Weaker(share.Allergen.NameSource.Status, share.Allergen.CasStatus) };
        foreach (SubstanceFrom from in share.From)
        {
            yield return from.Known == ShareKnown.ByHighEnd
                ? new(Rule, $"{share.Allergen.Name}: {from.Percent:0.######} % of the product from {from.Line.Material.Name}, by the high end of its range.", source, from.Line.LineId)
                : new(Rule, $"{share.Allergen.Name}: {from.Percent:0.######} % of the product from {from.Line.Material.Name}.", source, from.Line.LineId);
        }

        if (share.Allergen.IsProhibitedInCosmetics)
        {
            yield return new(Rule, $"{share.Allergen.Name} may no longer be used in cosmetics.", source);
        }

        yield return (threshold, share.IsDeclared) switch
        {
            (null, _) => new(Rule, $"{share.Allergen.Name}: {share.Percent:0.######} %; the market chosen asks for no declaration.", source),
            ({ } limit, true) => new(Rule, $"{share.Allergen.Name}: {share.Percent:0.######} % is at or above {limit:0.####} %: declared.", source),
            ({ } limit, false) => new(Rule, $"{share.Allergen.Name}: {share.Percent:0.######} % is below {limit:0.####} %: not declared.", source),
        };
    }
}
