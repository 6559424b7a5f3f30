using System.Buffers;
using System.Globalization;

namespace MakerStudio.Core.Exchange;

/// <summary>
/// Writes cells of a comma-separated file (RFC 4180 section 2, rules 5 to 7, read in a copy of its text) so that a
/// spreadsheet shows what was typed and never runs it. Numbers and dates are written plain, with a point and in ISO 8601,
/// and stay numbers: −5.2 is written -5.2, though the guidance below would mark it; we write it, nobody types it.
/// </summary>
public static class CsvCell
{
    /// <summary>Ends a row.</summary>
    public const string RowEnd = "\r\n";

    private const char TextMark = '\'';

    /// <summary>
    /// A spreadsheet takes text that begins so for a formula: CWE-1236 names = + - and @, OWASP ASVS 1.2.10 adds tab and
    /// the zero character, OWASP's page on CSV injection the carriage return (all read second-hand). The line feed is our
    /// own addition, and the wide forms, which mean the same in some tables.
    /// </summary>
    private static readonly SearchValues<char> FormulaStarts = SearchValues.Create("=+-@\t\r\n\0＝＋－＠");

    /// <summary>The semicolon and tab too, which part cells where a spreadsheet's culture says so.</summary>
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",;\t\"\r\n");

    /// <summary>
    /// Text as a cell. What begins like a formula gets an apostrophe in front, which a spreadsheet takes as "this is
    /// text"; <see cref="TextOf"/> takes it off again.
    /// </summary>
    public static string Text(string? text) => string.IsNullOrEmpty(text) ? string.Empty : Quoted(IsMarked(text) ? TextMark + text : text);

    /// <summary>Every digit, a point, no grouping; empty when there is no number.</summary>
    public static string Number(decimal? number) => number?.ToString(CultureInfo.InvariantCulture) ?? string.Empty;

    /// <summary>yyyy-MM-dd.</summary>
    public static string Date(DateOnly? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? string.Empty;

    /// <summary>To the second, with its offset from UTC.</summary>
    public static string Moment(DateTimeOffset? moment) => moment?.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture) ?? string.Empty;

    /// <summary>Cells as one row, its end included.</summary>
    /// <param name="cells">As the methods here write them.</param>
    public static string Row(params IEnumerable<string> cells) => string.Join(',', cells) + RowEnd;

    /// <summary>The text that <see cref="Text"/> was given, from a cell as it was read, quotes off.</summary>
    public static string TextOf(string cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.Length > 1 && cell[0] == TextMark && IsMarked(cell[1..]) ? cell[1..] : cell;
    }

    /// <summary>
    /// Begins like a formula, or with apostrophes before one: those get one more, so that taking one off gives back
    /// what was there.
    /// </summary>
    private static bool IsMarked(string text)
    {
        var rest = text.AsSpan().TrimStart(TextMark);
        return rest.Length > 0 && FormulaStarts.Contains(rest[0]);
    }

    private static string Quoted(string text) => text.AsSpan().ContainsAny(NeedsQuotes) || text[0] == ' ' || text[^1] == ' '
        ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
        : text;
}
