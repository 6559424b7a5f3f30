using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Us;

/// <summary>The part of a pack that a buyer looks at: its area sets the type sizes.</summary>
/// <param name="SquareInches">Above 0. Tops, bottoms, shoulders, necks and flanges are left out.</param>
public sealed record DisplayPanel(double SquareInches)
{
    private const double MillimetresPerInch = 25.4;
    private const double PartOfSurface = 0.4;

    public static Citation Source { get; } = new("16 CFR 500.21(a)", DataStatus.Read);

    /// <summary>The front of a box.</summary>
    public static DisplayPanel OfFront(double widthMillimetres, double heightMillimetres) =>
        new(widthMillimetres * heightMillimetres / (MillimetresPerInch * MillimetresPerInch));

    /// <summary>A jar or bottle: 40 % of height times circumference.</summary>
    public static DisplayPanel OfCylinder(double diameterMillimetres, double heightMillimetres) =>
        OfFront(PartOfSurface * Math.PI * diameterMillimetres, heightMillimetres);

    /// <summary>Another shape: 40 % of its surface.</summary>
    public static DisplayPanel OfSurface(double squareMillimetres) => OfFront(PartOfSurface, squareMillimetres);
}

/// <summary>Smallest letters of cautionary text, in inches.</summary>
public sealed record CautionTypeSize(double SignalWord, double Hazard, double Other);

/// <summary>
/// Smallest type by the area of the display panel. Example: a cylinder 2 in across and 4 in high has 10.05 sq in: net
/// quantity 1/8 in, signal word 7/64 in, hazard 3/32 in, the rest 1/16 in.
/// </summary>
public static class TypeSizes
{
    public static Citation NetQuantitySource { get; } = new("16 CFR 500.21(b)", DataStatus.Memory);

    public static Citation CautionSource { get; } = new("16 CFR 1500.121(c)(2)", DataStatus.Memory);

    private static readonly (double UpTo, double Inches)[] NetQuantityRows =
        [(5, 1.0 / 16), (25, 1.0 / 8), (100, 3.0 / 16), (400, 1.0 / 4), (double.PositiveInfinity, 1.0 / 2)];

    private static readonly (double UpTo, CautionTypeSize Size)[] CautionRows =
    [
        (2, new(3.0 / 64, 3.0 / 64, 1.0 / 32)),
        (5, new(1.0 / 16, 3.0 / 64, 3.0 / 64)),
        (10, new(3.0 / 32, 1.0 / 16, 1.0 / 16)),
        (15, new(7.0 / 64, 3.0 / 32, 1.0 / 16)),
        (30, new(1.0 / 8, 3.0 / 32, 5.0 / 64)),
        (double.PositiveInfinity, new(5.0 / 32, 7.0 / 64, 3.0 / 32)),
    ];

    /// <summary>Smallest height of the net quantity in inches.</summary>
    public static double NetQuantityInches(DisplayPanel panel) => NetQuantityRows.First(row => Area(panel) <= row.UpTo).Inches;

    public static CautionTypeSize Caution(DisplayPanel panel) => CautionRows.First(row => Area(panel) <= row.UpTo).Size;

    /// <summary>Rounded so that a panel measured in millimetres does not miss its row by the conversion.</summary>
    private static double Area(DisplayPanel panel)
    {
        const int decimals = 6;
        ArgumentNullException.ThrowIfNull(panel);
        return Math.Round(panel.SquareInches, decimals);
    }
}
