using MakerStudio.Core.Hazards;
using MakerStudio.Core.Labels.Type;

namespace MakerStudio.Core.Labels.Drawing;

/// <summary>What a piece of the drawing is, for the checks of legibility.</summary>
public enum DrawnRole
{
    Text,
    ScentName,
    NetQuantity,
    SignalWord,
    Hazard,
    Rule,
    Pictogram,
    SquareCode,
    Mark,
}

public enum Ink
{
    Black,
    White,

    /// <summary>The frame of a pictogram.</summary>
    Red,
}

/// <summary>A rectangle. Millimetres from the label's top left corner.</summary>
public sealed record Box(double Left, double Top, double Width, double Height)
{
    public double Right => Left + Width;

    public double Bottom => Top + Height;
}

/// <summary>Letters on one base line. Millimetres; the size is that of the em.</summary>
public sealed record DrawnText(string Text, LabelFace Face, double Size, double Left, double Baseline, DrawnRole Role)
{
    public double Width => Face.WidthOf(Text, Size);
}

/// <summary>A drawing of our own, set into a square.</summary>
/// <param name="Shapes">On a field of 100 by 100.</param>
public sealed record DrawnPicture(IReadOnlyList<Shape> Shapes, Box Box, DrawnRole Role, Pictogram? Pictogram = null);

/// <param name="Width">Of the line, mm.</param>
public sealed record DrawnRule(double Left, double Top, double Right, double Width);

/// <summary>The dark squares of a square code, joined along their rows.</summary>
/// <param name="Module">Side of one square, mm.</param>
public sealed record DrawnCode(IReadOnlyList<Box> Dark, Box Box, double Module);

/// <summary>A label laid out: what is drawn where, in millimetres from its top left corner. One drawing makes the PDF and the page's picture.</summary>
public sealed record LabelDrawing(
    double Width,
    double Height,
    IReadOnlyList<DrawnText> Texts,
    IReadOnlyList<DrawnPicture> Pictures,
    IReadOnlyList<DrawnRule> Rules,
    DrawnCode? Code);
