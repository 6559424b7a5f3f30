using MakerStudio.Core.Labels.Type;

namespace MakerStudio.Core.Labels.Layout;

/// <summary>What stands between two spaces; parts of it may be bold.</summary>
internal sealed record Word(IReadOnlyList<(string Text, LabelFace Face)> Parts, double Width)
{
    /// <param name="face">For all of it; null takes regular and bold as the runs say.</param>
    public static IEnumerable<Word> Of(LabelText text, double size, LabelFace? face)
    {
        var parts = new List<(string, LabelFace)>();
        foreach (LabelRun run in text.Runs)
        {
            LabelFace own = face ?? (run.IsBold ? LabelFace.Bold : LabelFace.Regular);
            string[] pieces = run.Text.Split(' ');
            for (int i = 0; i < pieces.Length; i++)
            {
                if (i > 0 && parts.Count > 0)
                {
                    yield return With(parts, size);
                    parts = [];
                }

                if (pieces[i].Length > 0)
                {
                    parts.Add((pieces[i], own));
                }
            }
        }

        if (parts.Count > 0)
        {
            yield return With(parts, size);
        }
    }

    /// <summary>Cut into pieces where it is wider than any line.</summary>
    public IEnumerable<Word> Broken(double widest, double size)
    {
        if (Width <= widest)
        {
            yield return this;
            yield break;
        }

        var parts = new List<(string Text, LabelFace Face)>();
        double width = 0;
        foreach ((string letter, LabelFace face) in Parts.SelectMany(part => part.Text.EnumerateRunes().Select(rune => (rune.ToString(), part.Face))))
        {
            double more = face.WidthOf(letter, size);
            if (parts.Count > 0 && width + more > widest)
            {
                yield return With(parts, size);
                (parts, width) = ([], 0);
            }

            bool joins = parts.Count > 0 && ReferenceEquals(parts[^1].Face, face);
            if (joins)
            {
                parts[^1] = (parts[^1].Text + letter, face);
            }
            else
            {
                parts.Add((letter, face));
            }

            width += more;
        }

        yield return With(parts, size);
    }

    private static Word With(IReadOnlyList<(string Text, LabelFace Face)> parts, double size) => new(parts, parts.Sum(part => part.Face.WidthOf(part.Text, size)));
}
