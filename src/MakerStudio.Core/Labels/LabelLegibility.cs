using System.Globalization;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Labels.Drawing;
using MakerStudio.Core.Labels.Layout;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels;

public enum Legible
{
    /// <summary>At or above what is asked for.</summary>
    Yes,

    /// <summary>Below what is asked for only "if possible".</summary>
    BelowWish,

    /// <summary>Below the smallest allowed.</summary>
    No,
}

/// <param name="Title">What was measured.</param>
/// <param name="Found">On the label as it was laid out, with its unit.</param>
/// <param name="Asked">With its unit.</param>
public sealed record LegibilityCheck(string Title, string Found, string Asked, Legible Verdict, Citation Source);

/// <summary>Measures a label as it was laid out against the smallest sizes of its scheme.</summary>
public static class LabelLegibility
{
    /// <summary>Side of one square of a code that a phone reads safely on a curved label, mm. Common practice, no source.</summary>
    public const double SmallestModule = 0.33;

    /// <summary>mm; more only takes room. Own choice.</summary>
    private const double LargestModule = 0.45;

    /// <summary>A code takes at most this part of the short side. Own choice.</summary>
    private const double MostOfSide = 0.42;

    private const double Hundred = 100;

    /// <summary>What the last bit of a double may be off by, mm.</summary>
    private const double Hair = 1e-6;

    private static readonly Citation Practice = new("what phones read on a curved label", DataStatus.CommonPractice);
    private static readonly Citation Spacing = new("Reg. (EU) 2024/2865, 120 % of the font size; application postponed", DataStatus.Secondary);

    public static IReadOnlyList<LegibilityCheck> Check(LabelLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return [.. SizeOf(layout), .. Letters(layout), .. Net(layout), .. PictogramsOf(layout), .. CodeOf(layout)];
    }

    /// <summary>Side of a square for this label; null where it would be too small to read.</summary>
    internal static double? ModuleFor(CodeModules code, Box inner, bool isLean)
    {
        double most = Math.Min(inner.Width, inner.Height) * MostOfSide / code.Side;
        return most < SmallestModule ? null : isLean ? SmallestModule : Math.Min(most, LargestModule);
    }

    private static IEnumerable<LegibilityCheck> SizeOf(LabelLayout layout)
    {
        if (layout.Content.Facts.IsUnitedStates || !layout.Content.Facts.Hazards.HasAny)
        {
            yield break;
        }

        LabelSize size = LabelSizes.For(layout.Content.Facts.Net.Amount);
        (decimal shorter, decimal longer) = layout.Stock.Width <= layout.Stock.Height ? (layout.Stock.Width, layout.Stock.Height) : (layout.Stock.Height, layout.Stock.Width);
        bool isReached = shorter >= size.WidthMillimetres && longer >= size.HeightMillimetres;
        yield return new(
            "Size of the label", $"{Mm((double)layout.Stock.Width)} × {Mm((double)layout.Stock.Height)} mm",
            $"{Mm((double)size.WidthMillimetres)} × {Mm((double)size.HeightMillimetres)} mm{(size.IsIfPossible ? " if possible" : "")}",
            isReached ? Legible.Yes : size.IsIfPossible ? Legible.BelowWish : Legible.No, LabelSizes.Source);
    }

    private static IEnumerable<LegibilityCheck> Letters(LabelLayout layout)
    {
        bool isUs = layout.Content.Facts.IsUnitedStates;
        double smallest = layout.Drawing.Texts.Where(text => text.Role != DrawnRole.ScentName).Min(text => text.Size * (isUs ? text.Face.CapitalHeight : text.Face.XHeight));
        yield return Measured(isUs ? "Smallest capital" : "Smallest letter, height of x", smallest, layout.Minimums.LetterHeight, isUs ? TypeSizes.CautionSource : LabelSizes.LetterHeightSource);
        if (!isUs)
        {
            if (TightestLines(layout.Drawing) is { } spacing)
            {
                yield return new(
                    "Line spacing", $"{(spacing * Hundred).ToString("0", CultureInfo.InvariantCulture)} %", "120 %",
                    spacing + Hair < TextFlow.LineSpacing ? Legible.No : Legible.Yes, Spacing);
            }

            yield break;
        }

        foreach ((DrawnRole role, string title, double asked) in ((DrawnRole, string, double)[])
            [(DrawnRole.SignalWord, "Signal word, capitals", layout.Minimums.Signal), (DrawnRole.Hazard, "Hazard statement, capitals", layout.Minimums.Hazard)])
        {
            if (Heights(layout, role, text => text.Face.CapitalHeight) is { } found)
            {
                yield return Measured(title, found, asked, TypeSizes.CautionSource);
            }
        }
    }

    private static IEnumerable<LegibilityCheck> Net(LabelLayout layout)
    {
        if (Heights(layout, DrawnRole.NetQuantity, text => text.Face.FigureHeight) is { } found)
        {
            yield return Measured(
                "Figures of the net quantity", found, layout.Minimums.Net,
                layout.Content.Facts.IsUnitedStates ? TypeSizes.NetQuantitySource : LabelMinimums.FiguresSource);
        }
    }

    private static IEnumerable<LegibilityCheck> PictogramsOf(LabelLayout layout)
    {
        List<DrawnPicture> pictures = [.. layout.Drawing.Pictures.Where(each => each.Role == DrawnRole.Pictogram)];
        if (pictures.Count == 0)
        {
            yield break;
        }

        double side = pictures.Min(each => each.Box.Width) / PictogramShapes.FieldPerSide;
        (double least, double wanted) = (layout.Minimums.PictogramSide, layout.Minimums.PictogramWanted);
        yield return new(
            "Side of a pictogram", $"{Mm(side)} mm", wanted > least + Hair ? $"{Mm(least)} mm, {Mm(wanted)} mm if possible" : $"{Mm(least)} mm",
            side + Hair < least ? Legible.No : side + Hair < wanted ? Legible.BelowWish : Legible.Yes, LabelSizes.Source);
    }

    private static IEnumerable<LegibilityCheck> CodeOf(LabelLayout layout)
    {
        if (layout.Drawing.Code is { } code)
        {
            yield return new("Square of the code", $"{code.Module.ToString("0.00", CultureInfo.InvariantCulture)} mm", "0.33 mm", Legible.Yes, Practice);
        }
        else if (layout.Content["square-code"].State == ElementState.There)
        {
            yield return new("Square of the code", "left out, too small to read here", "0.33 mm", Legible.BelowWish, Practice);
        }
    }

    /// <summary>Least distance of two base lines over their size, among lines one above the other; null for a single line.</summary>
    private static double? TightestLines(LabelDrawing drawing)
    {
        List<double> distances = [.. from upper in drawing.Texts
            from lower in drawing.Texts
            where upper.Role is DrawnRole.Text or DrawnRole.Hazard && lower.Role == upper.Role && lower.Baseline > upper.Baseline + Hair
                && upper.Left < lower.Left + lower.Width && lower.Left < upper.Left + upper.Width
            select (lower.Baseline - upper.Baseline) / lower.Size];
        return distances.Count == 0 ? null : distances.Min();
    }

    private static double? Heights(LabelLayout layout, DrawnRole role, Func<DrawnText, double> part)
    {
        List<double> found = [.. layout.Drawing.Texts.Where(text => text.Role == role).Select(text => text.Size * part(text))];
        return found.Count == 0 ? null : found.Min();
    }

    private static LegibilityCheck Measured(string title, double found, double asked, Citation source) =>
        new(title, $"{Mm(found)} mm", $"{Mm(asked)} mm", found + Hair < asked ? Legible.No : Legible.Yes, source);

    private static string Mm(double length) => length.ToString("0.##", CultureInfo.InvariantCulture);
}
