using MakerStudio.Core.Labels.Type;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace MakerStudio.Services.Labels;

/// <summary>Gives PDFsharp the program's own fonts and no others: nothing is looked up on the machine.</summary>
internal sealed class LabelFonts : IFontResolver
{
    private static readonly Lazy<LabelFonts> Installed = new(() =>
    {
        var fonts = new LabelFonts();
        GlobalFontSettings.FontResolver = fonts;
        return fonts;
    });

    /// <summary>PDFsharp keeps one resolver a process.</summary>
    public static void Use() => _ = Installed.Value;

    public static XFont Font(LabelFace face, double points) =>
        new(face.Family, points, (face.IsBold, face.IsItalic) switch { (true, _) => XFontStyleEx.Bold, (_, true) => XFontStyleEx.Italic, _ => XFontStyleEx.Regular }, XPdfFontOptions.UnicodeDefault);

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        LabelFace.All.FirstOrDefault(face => face.Family == familyName && face.IsBold == isBold && face.IsItalic == isItalic) is { } found
            ? new FontResolverInfo(found.Key)
            : null;

    public byte[]? GetFont(string faceName) => LabelFace.All.FirstOrDefault(face => face.Key == faceName)?.File.ToArray();
}
