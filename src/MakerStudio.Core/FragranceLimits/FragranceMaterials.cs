using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.FragranceLimits;

/// <summary>A share, or a product, against the limits for fragrance.</summary>
public enum FragranceVerdict
{
    /// <summary>Not above any limit that is known; equal is within.</summary>
    Within,
    Above,

    /// <summary>A certificate is missing, or does not certify the category: nothing shows that it is within.</summary>
    NotShown,
}

/// <summary>A fragrance material in the product, over all lines that hold it, against its certificate in one category.</summary>
/// <param name="Percent">Of the finished product by weight.</param>
/// <param name="MaxPercent">By the certificate; null without one, or where it does not certify the category.</param>
public sealed record FragranceMaterialUse(AssessedMaterial Material, IReadOnlyList<Guid> LineIds, decimal Percent, decimal? MaxPercent)
{
    private const decimal Whole = 100m;

    /// <summary>Whether a line holds it. A line of the formula may come as several, one for each part of a pre-blend.</summary>
    public bool IsOn(AssessedLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.Material.Id == Material.Id && line.Material.Name == Material.Name;
    }

    public bool HasCertificate => Material.Certificate is not null;

    /// <summary>Use ÷ limit, at most 1 within; null where there is no limit to compare with.</summary>
    public decimal? Ratio => MaxPercent is { } max ? LimitRatio.Of(Percent, max) : null;

    /// <summary>None of it is within, whatever its papers say.</summary>
    public FragranceVerdict Verdict => Percent == 0 ? FragranceVerdict.Within
        : Ratio is not { } ratio ? FragranceVerdict.NotShown
        : LimitRatio.IsWithin(ratio) ? FragranceVerdict.Within
        : FragranceVerdict.Above;

    /// <summary>How many times the use fits into the limit; null where there is no limit or no use.</summary>
    public decimal? Headroom => MaxPercent is { } max && Percent > 0 ? max / Percent : null;

    /// <summary>The certificate allows 100 %: no limit of the standards, and no recommendation.</summary>
    public bool IsNotLimited => MaxPercent >= Whole;
}

internal static class FragranceMaterials
{
    private const decimal Whole = 100m;

    /// <summary>Scents, pre-blends with scent in them, and whatever has a certificate. The same material on two lines is one.</summary>
    internal static IReadOnlyList<FragranceMaterialUse> In(AssessedFormula formula, string category) =>
    [
        .. formula.Lines.Where(line => IsFragrance(line.Material))
            .GroupBy(line => (line.Material.Id, line.Material.Name))
            .OrderBy(lines => lines.Key.Name, StringComparer.OrdinalIgnoreCase).ThenBy(lines => lines.Key.Id)
            .Select(lines => Use([.. lines], category)),
    ];

    internal static bool IsFragrance(AssessedMaterial material) =>
        material.Certificate is not null
        || material is { Kind: MaterialKind.FragranceOil or MaterialKind.EssentialOil } or { Kind: MaterialKind.PreBlend, ScentShare: not 0 };

    private static FragranceMaterialUse Use(AssessedLine[] lines, string category)
    {
        AssessedMaterial material = lines[0].Material;
        decimal? max = material.Certificate is { } certificate ? FragranceCategories.In(certificate.MaxPercent, category) : null;
        return new(
            material,
            [.. lines.Select(line => line.LineId).Distinct()],
            LimitRatio.Sum(lines.Select(line => Whole * line.Fraction)),
            max is { } percent ? Math.Clamp(percent, 0, Whole) : null);
    }
}
