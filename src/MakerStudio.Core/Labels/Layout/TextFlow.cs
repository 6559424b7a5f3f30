using MakerStudio.Core.Labels.Drawing;
using MakerStudio.Core.Labels.Type;

namespace MakerStudio.Core.Labels.Layout;

/// <summary>
/// Sets words into a frame from the top down, line by line, around what stands in the way at its left or right edge.
/// Millimetres.
/// </summary>
internal sealed class TextFlow(Box frame)
{
    /// <summary>Distance of base lines over the size; Reg. (EU) 2024/2865 asks for 120 %.</summary>
    public const double LineSpacing = 1.2;

    /// <summary>Base line below the top of its line, over the size.</summary>
    private const double BaselineAt = 0.95;

    /// <summary>A gap beside an obstacle narrower than this, over the size, is left white.</summary>
    private const double NarrowestLine = 8;

    private readonly List<Box> _obstacles = [];
    private readonly List<DrawnText> _texts = [];

    public Box Frame => frame;

    /// <summary>Where the next line begins.</summary>
    public double Top { get; set; } = frame.Top;

    public IReadOnlyList<DrawnText> Texts => _texts;

    public void Avoid(Box obstacle) => _obstacles.Add(obstacle);

    public void Add(DrawnText text) => _texts.Add(text);

    /// <param name="narrowest">Least width of a line in mm; null takes the usual.</param>
    public void Paragraph(LabelText text, double size, DrawnRole role, LabelFace? face = null, double? narrowest = null)
    {
        double space = (face ?? LabelFace.Regular).WidthOf(" ", size);
        var waiting = new Queue<Word>(Word.Of(text, size, face).SelectMany(word => word.Broken(frame.Width, size)));
        while (waiting.Count > 0)
        {
            (double left, double right) = Line(size, Math.Max(waiting.Peek().Width, narrowest ?? Math.Min(NarrowestLine * size, frame.Width)));
            var line = new List<Word>();
            double width = 0;
            while (waiting.TryPeek(out Word? word) && (line.Count == 0 || width + space + word.Width <= right - left))
            {
                width += (line.Count == 0 ? 0 : space) + word.Width;
                line.Add(waiting.Dequeue());
            }

            Set(line, left, Top + (BaselineAt * size), size, space, role);
            Top += LineSpacing * size;
        }
    }

    /// <summary>Width of the line that would be set next, past what stands in the way.</summary>
    public double WidthOfNext(double size) => Span(Top, Top + (LineSpacing * size)) is var (left, right) ? right - left : 0;

    /// <summary>The free part of the next line; goes down past obstacles that leave too little.</summary>
    private (double Left, double Right) Line(double size, double least)
    {
        while (true)
        {
            double bottom = Top + (LineSpacing * size);
            (double left, double right) = Span(Top, bottom);
            List<Box> inTheWay = [.. _obstacles.Where(each => each.Top < bottom && each.Bottom > Top)];
            if (right - left >= least || inTheWay.Count == 0)
            {
                return (left, right);
            }

            Top = inTheWay.Min(each => each.Bottom);
        }
    }

    private (double Left, double Right) Span(double top, double bottom)
    {
        double left = frame.Left;
        double right = frame.Right;
        foreach (Box each in _obstacles.Where(each => each.Top < bottom && each.Bottom > top))
        {
            bool atLeft = each.Left - frame.Left <= frame.Right - each.Right;
            (left, right) = atLeft ? (Math.Max(left, each.Right), right) : (left, Math.Min(right, each.Left));
        }

        return (left, right);
    }

    /// <summary>Neighbours of one face become one text, so that they read as one.</summary>
    private void Set(List<Word> line, double left, double baseline, double size, double space, DrawnRole role)
    {
        var parts = new List<(string Text, LabelFace Face, bool AfterSpace)>();
        foreach (Word word in line)
        {
            for (int i = 0; i < word.Parts.Count; i++)
            {
                (string text, LabelFace face) = word.Parts[i];
                bool afterSpace = i == 0 && parts.Count > 0;
                if (parts.Count > 0 && ReferenceEquals(parts[^1].Face, face))
                {
                    parts[^1] = parts[^1] with { Text = parts[^1].Text + (afterSpace ? " " : "") + text };
                }
                else
                {
                    parts.Add((text, face, afterSpace));
                }
            }
        }

        double x = left;
        foreach ((string text, LabelFace face, bool afterSpace) in parts)
        {
            x += afterSpace ? space : 0;
            _texts.Add(new(text, face, size, x, baseline, role));
            x += face.WidthOf(text, size);
        }
    }
}
