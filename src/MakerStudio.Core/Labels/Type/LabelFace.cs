using System.Reflection;

namespace MakerStudio.Core.Labels.Type;

/// <summary>
/// A face that labels are set in. Everything the law asks for stands in one sans-serif family, regular and bold; the
/// scent's name alone in the italic serif.
/// </summary>
public sealed class LabelFace
{
    private readonly Lazy<byte[]> _bytes;
    private readonly Lazy<FontFile> _font;

    private LabelFace(string key, string family, string file, bool isBold, bool isItalic)
    {
        (Key, Family, IsBold, IsItalic) = (key, family, isBold, isItalic);
        _bytes = new(() => Read(file));
        _font = new(() => new FontFile(_bytes.Value));
    }

    /// <summary>Roboto Condensed, Apache License 2.0: narrow, with a tall x, so that much text fits at a lawful height.</summary>
    public static LabelFace Regular { get; } = new("regular", "Label Sans", "RobotoCondensed-Regular.ttf", false, false);

    public static LabelFace Bold { get; } = new("bold", "Label Sans", "RobotoCondensed-Bold.ttf", true, false);

    /// <summary>Petrona italic, SIL Open Font License 1.1.</summary>
    public static LabelFace Scent { get; } = new("scent", "Label Scent", "Petrona-Italic.ttf", false, true);

    public static IReadOnlyList<LabelFace> All { get; } = [Regular, Bold, Scent];

    /// <summary>"regular", "bold" or "scent".</summary>
    public string Key { get; }

    public string Family { get; }

    public bool IsBold { get; }

    public bool IsItalic { get; }

    /// <summary>Height of a small x as a part of the size.</summary>
    public double XHeight => Part(_font.Value.XHeight);

    public double CapitalHeight => Part(_font.Value.CapitalHeight);

    /// <summary>Height of the figure 0.</summary>
    public double FigureHeight => Part(_font.Value.FigureHeight);

    /// <summary>The font file, TrueType.</summary>
    public ReadOnlyMemory<byte> File => _bytes.Value;

    /// <summary>In the unit of the size.</summary>
    public double WidthOf(string text, double size)
    {
        ArgumentNullException.ThrowIfNull(text);
        long units = 0;
        foreach (System.Text.Rune letter in text.EnumerateRunes())
        {
            units += _font.Value.Width(letter.Value);
        }

        return units * size / _font.Value.UnitsPerEm;
    }

    /// <summary>Letters of the text that the face does not have; each once.</summary>
    public IReadOnlyList<string> Lacks(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return [.. text.EnumerateRunes().Where(letter => !_font.Value.Has(letter.Value)).Select(letter => letter.ToString()).Distinct()];
    }

    private double Part(int units) => (double)units / _font.Value.UnitsPerEm;

    private static byte[] Read(string file)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(file)
            ?? throw new InvalidOperationException($"The font {file} is not in the program.");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
