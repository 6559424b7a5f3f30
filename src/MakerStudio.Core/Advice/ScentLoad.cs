using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Advice;

/// <summary>How much scent a formula holds: oils wholly, a pre-blend by its stated share of scent.</summary>
/// <param name="OfTotal">Fraction of the total by weight, 0 to 1. Certificate limits count from this.</param>
/// <param name="OfBasis">Fraction of what the kind's load is a share of; null where none of that is in it.</param>
/// <param name="Basis">"the total", "wax" or "dry weight".</param>
public sealed record ScentLoad(decimal OfTotal, decimal? OfBasis, string Basis)
{
    public const string Total = "the total";
    public const string Wax = "wax";
    public const string DryWeight = "dry weight";

    /// <summary>Whether the load is above a limit; what lies beyond the sixth decimal came from rounding the lines.</summary>
    public bool IsAbove(decimal limit)
    {
        const int decimals = 6;
        return OfBasis is { } load && decimal.Round(load, decimals) > limit;
    }

    /// <summary>How much of a material is scent, 0 to 1.</summary>
    public static decimal ShareOf(AssessedMaterial material)
    {
        ArgumentNullException.ThrowIfNull(material);
        return material.Kind switch
        {
            MaterialKind.FragranceOil or MaterialKind.EssentialOil => 1m,
            MaterialKind.PreBlend => material.ScentShare ?? 1m,
            _ => 0m,
        };
    }

    public static ScentLoad Of(AssessedFormula formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        decimal scent = formula.Lines.Sum(line => line.Fraction * ShareOf(line.Material));
        string basis = formula.Kind.UsualLoad?.Of ?? Total;
        decimal whole = basis switch
        {
            Wax => Share(formula, MaterialKind.Wax),
            DryWeight => Share(formula, MaterialKind.DryBotanical),
            _ => 1m,
        };
        return new(scent, whole > 0 ? scent / whole : null, basis);
    }

    private static decimal Share(AssessedFormula formula, MaterialKind kind) =>
        formula.Lines.Where(line => line.Material.Kind == kind).Sum(line => line.Fraction);
}
