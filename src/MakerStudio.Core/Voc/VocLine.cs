using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;

namespace MakerStudio.Core.Voc;

/// <summary>What a line brings of VOC, in per cent of the product by weight.</summary>
internal sealed record VocLine(AssessedLine Line, VocShare Share)
{
    private const decimal Whole = 100m;

    internal decimal Percent => Line.Fraction * Share.Percent;

    internal decimal Unknown => Line.Fraction * Share.Unknown;

    /// <summary>Fragrance in the line, volatile or not.</summary>
    internal decimal FragranceWhole => Whole * Line.Fraction * Scent;

    /// <summary>
    /// VOC from fragrance. Of a pre-blend only what cannot come from the rest of it: nobody knows which part of it is
    /// volatile, and what is not from fragrance is not exempt.
    /// </summary>
    internal decimal FragrancePercent => Line.Fraction * Math.Max(0, Share.Percent - (Whole * (1 - Scent)));

    internal decimal FragranceUnknown => Math.Min(Unknown, FragrancePercent);

    private decimal Scent => Line.Material.Kind switch
    {
        MaterialKind.FragranceOil or MaterialKind.EssentialOil => 1,
        MaterialKind.PreBlend => Math.Clamp(Line.Material.ScentShare ?? 0, 0, 1),
        _ => 0,
    };
}
