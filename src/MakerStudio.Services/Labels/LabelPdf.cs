using MakerStudio.Core.Labels;
using MakerStudio.Core.Labels.Drawing;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace MakerStudio.Services.Labels;

/// <summary>Draws labels into a PDF at their exact places, letters embedded.</summary>
public static class LabelPdf
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <param name="positions">From <see cref="LabelStock.Positions"/>.</param>
    /// <param name="title">Of the document.</param>
    public static byte[] Of(LabelDrawing drawing, LabelStock stock, IReadOnlyList<LabelPosition> positions, string title)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        return Pages(stock, positions, title, (graphics, _) => Draw(graphics, drawing));
    }

    /// <summary>Outlines of every place of a page with its number, to hold against a sheet before labels are used up.</summary>
    public static byte[] Outlines(LabelStock stock, decimal across, decimal down, string title)
    {
        ArgumentNullException.ThrowIfNull(stock);
        return Pages(stock, stock.Positions(stock.PlacesAPage, 1, across, down), title, (graphics, position) =>
        {
            const double hairline = 0.15;
            const double letter = 4;
            const double inset = 2;
            graphics.DrawRectangle(new XPen(XColors.Black, hairline), 0, 0, (double)stock.Width, (double)stock.Height);
            graphics.DrawString(
                position.Place.ToString(System.Globalization.CultureInfo.InvariantCulture), LabelFonts.Font(Core.Labels.Type.LabelFace.Regular, letter),
                XBrushes.Black, inset, inset + letter);
        });
    }

    private static byte[] Pages(LabelStock stock, IReadOnlyList<LabelPosition> positions, string title, Action<XGraphics, LabelPosition> draw)
    {
        LabelFonts.Use();
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Creator = "MakerStudio";
        foreach (IGrouping<int, LabelPosition> page in positions.GroupBy(position => position.Page))
        {
            PdfPage sheet = document.AddPage();
            sheet.Width = XUnit.FromMillimeter((double)(stock.Sheet?.PageWidth ?? stock.Width));
            sheet.Height = XUnit.FromMillimeter((double)(stock.Sheet?.PageHeight ?? stock.Height));
            using XGraphics graphics = XGraphics.FromPdfPage(sheet);
            graphics.ScaleTransform(PointsPerMillimetre);
            foreach (LabelPosition position in page)
            {
                XGraphicsState before = graphics.Save();
                graphics.TranslateTransform((double)position.Left, (double)position.Top);
                draw(graphics, position);
                graphics.Restore(before);
            }
        }

        using var file = new MemoryStream();
        document.Save(file, closeStream: false);
        return file.ToArray();
    }

    private static void Draw(XGraphics graphics, LabelDrawing drawing)
    {
        foreach (DrawnPicture picture in drawing.Pictures)
        {
            Draw(graphics, picture);
        }

        foreach (DrawnRule rule in drawing.Rules)
        {
            graphics.DrawLine(new XPen(XColors.Black, rule.Width), rule.Left, rule.Top, rule.Right, rule.Top);
        }

        foreach (Box dark in drawing.Code?.Dark ?? [])
        {
            graphics.DrawRectangle(XBrushes.Black, dark.Left, dark.Top, dark.Width, dark.Height);
        }

        foreach (DrawnText text in drawing.Texts)
        {
            // One unit is a millimetre here, so the size in millimetres is the size of the font.
            graphics.DrawString(text.Text, LabelFonts.Font(text.Face, text.Size), XBrushes.Black, text.Left, text.Baseline);
        }
    }

    private static void Draw(XGraphics graphics, DrawnPicture picture)
    {
        const double field = 100;
        XGraphicsState before = graphics.Save();
        graphics.TranslateTransform(picture.Box.Left, picture.Box.Top);
        graphics.ScaleTransform(picture.Box.Width / field);
        foreach (Shape shape in picture.Shapes)
        {
            XGraphicsPath path = PathOf(shape);
            XColor colour = Colour(shape.Ink);
            if (shape.Stroke > 0)
            {
                graphics.DrawPath(new XPen(colour, shape.Stroke) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round }, path);
            }
            else
            {
                graphics.DrawPath(new XSolidBrush(colour), path);
            }
        }

        graphics.Restore(before);
    }

    private static XColor Colour(Ink ink)
    {
        const int opaque = unchecked((int)0xFF000000);
        return XColor.FromArgb(opaque | int.Parse(Inks.Hex(ink).AsSpan(1), System.Globalization.NumberStyles.HexNumber, System.Globalization.CultureInfo.InvariantCulture));
    }

    private static XGraphicsPath PathOf(Shape shape)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Alternate };
        var at = new XPoint(0, 0);
        foreach (PathStep step in shape.Steps)
        {
            IReadOnlyList<double> p = step.Points;
            switch (step.Command)
            {
                case 'M':
                    path.StartFigure();
                    at = new XPoint(p[0], p[1]);
                    break;
                case 'L':
                    path.AddLine(at, new XPoint(p[0], p[1]));
                    at = new XPoint(p[0], p[1]);
                    break;
                case 'C':
                    path.AddBezier(at, new XPoint(p[0], p[1]), new XPoint(p[2], p[3]), new XPoint(p[4], p[5]));
                    at = new XPoint(p[4], p[5]);
                    break;
                default:
                    path.CloseFigure();
                    break;
            }
        }

        return path;
    }
}
