using System.Collections.Frozen;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Allergens;

/// <summary>The list a declarable name stands on.</summary>
public enum AllergenList
{
    /// <summary>The 26 of Directive 2003/15/EC.</summary>
    Of2003,

    /// <summary>The 56 added by Regulation (EU) 2023/1545.</summary>
    Of2023,
}

/// <summary>
/// A fragrance allergen that cosmetics law has declared by name. Home fragrance is no cosmetic: whether it is declared
/// there is the studio's or its market's choice.
/// </summary>
/// <param name="Name">As declared (INCI).</param>
/// <param name="Cas">Of the substance and its isomers, or of the oil and its extracts.</param>
/// <param name="IsProhibitedInCosmetics">Two of the 26 may no longer be used in cosmetics.</param>
/// <param name="NameSource">The law, and how well the name on it is known.</param>
/// <param name="CasStatus">How well the numbers are known. The check digits agree.</param>
public sealed record FragranceAllergen(
    string Name, IReadOnlyList<string> Cas, AllergenList List, bool IsProhibitedInCosmetics, Source NameSource, DataStatus CasStatus);

public static class FragranceAllergens
{
    public static IReadOnlyList<FragranceAllergen> All { get; } =
    [
        .. DataTable.Read("fragrance_allergens.csv").Select(row => new FragranceAllergen(
            row.Text("name"),
            row.Texts("cas"),
            Enum.Parse<AllergenList>(row.Text("list")),
            row.Yes("prohibited_in_cosmetics"),
            row.Source("source", "name_status"),
            DataStatuses.Of(row.Text("cas_status")))),
    ];

    private static readonly FrozenDictionary<string, FragranceAllergen> ByCas = All
        .SelectMany(allergen => allergen.Cas.Select(cas => (cas, allergen)))
        .ToFrozenDictionary(pair => pair.cas, pair => pair.allergen, StringComparer.Ordinal);

    /// <summary>Null for a number that is on neither list.</summary>
    public static FragranceAllergen? Find(string cas) => ByCas.GetValueOrDefault(cas);
}
