using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Label;

/// <param name="WidthMillimetres">Smallest label, either way round.</param>
/// <param name="IsIfPossible">The size is asked for "if possible": a smaller pack may have a smaller label.</param>
/// <param name="PictogramSideMillimetres">Smallest side of the square set on its point.</param>
/// <param name="PictogramSideIfPossible">The side asked for where there is room.</param>
/// <param name="LetterHeightMillimetres">Height of a small x by Reg. (EU) 2024/2865, when it applies.</param>
public sealed record LabelSize(
    decimal WidthMillimetres,
    decimal HeightMillimetres,
    bool IsIfPossible,
    decimal PictogramSideMillimetres,
    decimal? PictogramSideIfPossible,
    decimal LetterHeightMillimetres);

/// <summary>
/// Smallest sizes by the capacity of the pack. A pictogram also covers at least a fifteenth of the smallest label and
/// 1 cm². Example: 100 mL asks for 52 × 74 mm if possible, pictograms of 10 mm, 16 mm if possible.
/// </summary>
public static class LabelSizes
{
    /// <summary>A pictogram covers at least this part of the smallest label.</summary>
    public const int PartOfLabel = 15;

    public static Citation Source { get; } = new("CLP Annex I, 1.2.1 and Table 1.3", DataStatus.Read);

    public static Citation LetterHeightSource { get; } = new("Reg. (EU) 2024/2865, x-heights; application postponed, see Reg. (EU) 2025/2439", DataStatus.Secondary);

    private static readonly (decimal UpToMillilitres, LabelSize Size)[] Rows =
    [
        (500m, new(52m, 74m, true, 10m, 16m, 1.2m)),
        (3_000m, new(52m, 74m, true, 10m, 16m, 1.4m)),
        (50_000m, new(74m, 105m, false, 23m, null, 1.8m)),
        (500_000m, new(105m, 148m, false, 32m, null, 2.0m)),
        (decimal.MaxValue, new(148m, 210m, false, 46m, null, 2.0m)),
    ];

    /// <exception cref="ArgumentOutOfRangeException">A capacity of 0 or less.</exception>
    public static LabelSize For(decimal capacityMillilitres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(capacityMillilitres);
        return Rows.First(row => capacityMillilitres <= row.UpToMillilitres).Size;
    }

    /// <summary>Smallest side in mm of a pictogram on a label of this area in mm²: a fifteenth of it, and never under 10 mm.</summary>
    public static double PictogramSide(double labelSquareMillimetres)
    {
        const double smallest = 10;
        return Math.Max(smallest, Math.Sqrt(labelSquareMillimetres / PartOfLabel));
    }
}
