using System.Text.Json;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>A value that the file writes as a word.</summary>
internal sealed record Word<T>(T Value);

/// <summary>The words of the file and what each stands for.</summary>
internal static class FileWords
{
    internal static IReadOnlyDictionary<string, Word<MaterialKind>> MaterialKinds { get; } = Enum.GetValues<MaterialKind>()
        .Where(kind => !Core.Materials.MaterialKinds.IsPackaging(kind))
        .ToDictionary(Name, kind => new Word<MaterialKind>(kind), StringComparer.Ordinal);

    internal static IReadOnlyDictionary<string, ProductKind> ProductKinds { get; } =
        Core.Products.ProductKinds.All.ToDictionary(kind => kind.Key, StringComparer.Ordinal);

    internal static IReadOnlyDictionary<string, Word<LabelScheme>> Schemes { get; } = new Dictionary<string, Word<LabelScheme>>(StringComparer.Ordinal)
    {
        ["eu"] = new(LabelScheme.EuropeanUnion),
        ["gb"] = new(LabelScheme.GreatBritain),
        ["us"] = new(LabelScheme.UnitedStates),
    };

    internal static IReadOnlyDictionary<string, Word<PaperKind>> Papers { get; } =
        Enum.GetValues<PaperKind>().ToDictionary(Name, kind => new Word<PaperKind>(kind), StringComparer.Ordinal);

    /// <summary>Unit (UCUM) and what it is a share of; null where the unit says all.</summary>
    internal static IReadOnlyList<(LineBasis Basis, string Ucum, string? Of)> Bases { get; } =
    [
        (LineBasis.PercentByWeight, "%", "mass"),
        (LineBasis.PercentByVolume, "%", "volume"),
        (LineBasis.PercentOfWax, "%", "wax"),
        (LineBasis.PartsByWeight, "{parts}", "mass"),
        (LineBasis.PartsByVolume, "{parts}", "volume"),
        (LineBasis.Grams, "g", null),
        (LineBasis.Millilitres, "mL", null),
        (LineBasis.Drops, "[drp]", null),
    ];

    internal static IReadOnlyList<(AlcoholBasis Basis, string Ucum, string? Of)> Strengths { get; } =
    [
        (AlcoholBasis.PercentVolume, "%", "volume"),
        (AlcoholBasis.PercentMass, "%", "mass"),
        (AlcoholBasis.UsProof, "{US_proof}", null),
    ];

    /// <summary>"FragranceOil" is "fragrance-oil".</summary>
    internal static string Name<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>Reads "unit" and "basis" of a quantity; null, and a fault, where the two are none of these.</summary>
    internal static T? BasisOf<T>(JsonFields fields, IReadOnlyList<(T Basis, string Ucum, string? Of)> all)
        where T : struct
    {
        var unit = fields.Needed("unit");
        if (unit?.Text() is not { } ucum)
        {
            return null;
        }

        var withUnit = all.Where(each => each.Ucum == ucum).ToArray();
        if (withUnit.Length == 0)
        {
            unit.Value.Fault<string>($"{unit.Value.Shown()} is not a unit this amount is read in. Write one of: {string.Join(", ", all.Select(each => each.Ucum).Distinct())} (UCUM codes).");
            return null;
        }

        if (withUnit is [{ Of: null } only])
        {
            fields["basis"]?.Fault<string>($"An amount in {ucum} has no basis. Leave it out.");
            return only.Basis;
        }

        var basis = fields.Needed("basis");
        if (basis?.Text() is not { } of)
        {
            return null;
        }

        foreach (var each in withUnit)
        {
            if (each.Of == of)
            {
                return each.Basis;
            }
        }

        basis.Value.Fault<string>($"{basis.Value.Shown()} is not a basis of {ucum}. Write one of: {string.Join(", ", withUnit.Select(each => each.Of))}.");
        return null;
    }
}
