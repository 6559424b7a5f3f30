using System.Globalization;
using System.Text;

namespace MakerStudio.Services.Inventory;

/// <summary>What an uploaded file is, read off its first bytes and never off its name.</summary>
/// <param name="Extension">With its dot.</param>
public sealed record PaperType(string ContentType, string Extension, IReadOnlyList<string> OtherExtensions)
{
    public static PaperType Pdf { get; } = new("application/pdf", ".pdf", []);
    public static PaperType Png { get; } = new("image/png", ".png", []);
    public static PaperType Jpeg { get; } = new("image/jpeg", ".jpg", [".jpeg", ".jfif"]);
    public static PaperType Text { get; } = new("text/plain", ".txt", [".text", ".csv", ".md"]);

    /// <summary>Signatures: PDF ISO 32000-1 §7.5.2, PNG ISO/IEC 15948 §5.2, JPEG ISO/IEC 10918-1 Annex B (SOI and a marker).</summary>
    public static PaperType? Of(ReadOnlySpan<byte> content) =>
        content.StartsWith("%PDF-"u8) ? Pdf
        : content.StartsWith<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) ? Png
        : content.StartsWith<byte>([0xFF, 0xD8, 0xFF]) ? Jpeg
        : IsPlainText(content) ? Text
        : null;

    /// <summary>Readable UTF-8 that no browser could take for a page or a drawing.</summary>
    private static bool IsPlainText(ReadOnlySpan<byte> content)
    {
        try
        {
            var text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(content);
            return !string.IsNullOrWhiteSpace(text)
                && text.All(c => !char.IsControl(c) || c is '\n' or '\r' or '\t' or '\f')
                && !Markup.Any(tag => text.Contains(tag, StringComparison.OrdinalIgnoreCase));
        }
        catch (DecoderFallbackException)
        {
            return false;
        }
    }

    private static readonly string[] Markup = ["<!doctype", "<html", "<svg", "<script", "<?xml", "<body", "<iframe"];
}

/// <summary>The name a paper is kept and downloaded under.</summary>
internal static class PaperName
{
    public const int Longest = 120;

    /// <summary>Only the last part of a path, without what cannot be seen, ending as its content asks.</summary>
    public static string Tidy(string? typed, PaperType type)
    {
        var last = (typed ?? "").Split('/', '\\', ':')[^1];
        var seen = new StringBuilder();
        foreach (var rune in last.EnumerateRunes().Where(IsSeen))
        {
            seen.Append(rune.ToString());
        }

        var name = seen.ToString().Trim(' ', '.');
        var extension = Path.GetExtension(name);
        var fits = extension.Equals(type.Extension, StringComparison.OrdinalIgnoreCase) || type.OtherExtensions.Contains(extension, StringComparer.OrdinalIgnoreCase);
        var stem = fits ? name[..^extension.Length] : name;
        stem = Cut(stem.Trim(' ', '.'), Longest);
        return (stem.Length == 0 ? "paper" : stem) + (fits ? extension.ToLowerInvariant() : type.Extension);
    }

    private static bool IsSeen(Rune rune) => rune != Rune.ReplacementChar && !Rune.IsControl(rune)
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Format or UnicodeCategory.PrivateUse or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
        && rune.Value is not ('"' or '<' or '>' or '|' or '?' or '*');

    private static string Cut(string text, int longest)
    {
        var end = Math.Min(text.Length, longest);
        return text[..(end > 0 && char.IsHighSurrogate(text[end - 1]) ? end - 1 : end)];
    }
}
