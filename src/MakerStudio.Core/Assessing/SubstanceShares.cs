using System.Runtime.CompilerServices;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Assessing;

/// <summary>How well the share of a substance in a material is known.</summary>
public enum ShareKnown
{
    /// <summary>Stated by the supplier, or a range without width.</summary>
    Exactly,

    /// <summary>The high end of the supplier's range stands in.</summary>
    ByHighEnd,

    /// <summary>The material is that substance, or that natural oil, by its number or name.</summary>
    AsWhole,
}

/// <param name="Percent">Of the finished product by weight.</param>
public sealed record SubstanceFrom(AssessedLine Line, decimal Percent, ShareKnown Known);

/// <summary>A substance in the finished product, summed over the lines that bring it.</summary>
/// <param name="Identity">Its CAS number, else its name in capitals.</param>
/// <param name="Names">As the lines call it.</param>
/// <param name="Percent">Of the finished product by weight: the stated shares, else the high ends.</param>
public sealed record SubstanceShare(string Identity, IReadOnlyList<string> Names, decimal Percent, IReadOnlyList<SubstanceFrom> From);

/// <summary>
/// What the lines are known to bring, by their compositions, and by the material itself where it is one substance or a
/// natural oil with a number of its own. What nobody listed is not in it.
/// </summary>
internal static class SubstanceShares
{
    private const decimal Whole = 100m;

    /// <summary>What a material holds stays the same while its amount is typed, so it is looked up once.</summary>
    private static readonly ConditionalWeakTable<AssessedMaterial, List<Part>> Parts = [];

    private sealed record Part(string Identity, string Name, decimal Percent, ShareKnown Known);

    /// <summary>By identity. The order of lines changes no sum.</summary>
    internal static IReadOnlyDictionary<string, SubstanceShare> Of(AssessedFormula formula)
    {
        var found = new Dictionary<string, (List<string> Names, List<SubstanceFrom> From)>(StringComparer.Ordinal);
        foreach (AssessedLine line in formula.Lines.Where(line => line.Fraction > 0))
        {
            foreach ((string identity, string name, decimal percent, ShareKnown known) in Parts.GetValue(line.Material, In))
            {
                if (!found.TryGetValue(identity, out var before))
                {
                    found.Add(identity, before = ([], []));
                }

                if (!before.Names.Contains(name, StringComparer.OrdinalIgnoreCase))
                {
                    before.Names.Add(name);
                }

                before.From.Add(new(line, line.Fraction * percent, known));
            }
        }

        return found.ToDictionary(
            each => each.Key,
            each => new SubstanceShare(each.Key, each.Value.Names, each.Value.From.Sum(from => from.Percent), each.Value.From),
            StringComparer.Ordinal);
    }

    /// <summary>The number a material goes by as a whole: its own, else the one that goes with its name.</summary>
    internal static string? CasOf(AssessedMaterial material) =>
        material.Cas?.Text ?? (HasAnInventedName(material.Kind) ? null : SubstanceNames.CasOf(material.Name));

    /// <summary>A blend may be called "Lemon oil" and be none.</summary>
    private static bool HasAnInventedName(MaterialKind kind) => kind is MaterialKind.FragranceOil or MaterialKind.PreBlend;

    private static List<Part> In(AssessedMaterial material)
    {
        var parts = new List<Part>(material.Composition.Count + 1);
        bool listsItself = false;
        string? own = CasOf(material);
        foreach (StatedSubstance part in material.Composition)
        {
            string identity = SubstanceNames.Identity(part.Name, part.Cas);
            listsItself |= identity == own;
            bool isExact = part.StatedPercent is not null || part.LowPercent == part.HighPercent;
            parts.Add(new(identity, part.Name, part.StatedPercent ?? part.HighPercent, isExact ? ShareKnown.Exactly : ShareKnown.ByHighEnd));
        }

        if (own is not null && !listsItself)
        {
            parts.Add(new(own, material.Name, Whole, ShareKnown.AsWhole));
        }

        return parts;
    }
}
