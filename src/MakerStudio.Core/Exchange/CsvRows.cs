using System.Text;

namespace MakerStudio.Core.Exchange;

/// <param name="Line">Line of the file on which the row begins, from 1.</param>
/// <param name="Cells">Quotes taken off; a text column still wants <see cref="CsvCell.TextOf"/>.</param>
/// <param name="Problem">Why the row cannot be read, in a sentence; null when it can.</param>
public sealed record CsvRow(long Line, IReadOnlyList<string> Cells, string? Problem = null)
{
    public bool IsEmpty => Cells.All(string.IsNullOrWhiteSpace);
}

/// <summary>Reads a comma-separated file row by row; only the row in hand is in memory.</summary>
public static class CsvRows
{
    /// <summary>A longer row is taken for a quote that was never closed. Own bound.</summary>
    public const int MostCharacters = 100_000;

    private const char Quote = '"';
    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>Comma, semicolon or tab: whichever parts the heading into most cells.</summary>
    public static char SeparatorOf(string heading)
    {
        ArgumentNullException.ThrowIfNull(heading);
        return Separators.MaxBy(s => heading.Count(c => c == s));
    }

    /// <summary>
    /// Every row, the heading too; a cell in quotes may hold separators and line ends. Reading ends after a row that
    /// is too long or whose quote is not closed, since nothing after it can be trusted.
    /// </summary>
    public static IEnumerable<CsvRow> Read(TextReader reader, char separator = ',')
    {
        ArgumentNullException.ThrowIfNull(reader);
        var line = 1L;
        var text = new Ahead(reader);
        while (text.Next >= 0)
        {
            var row = ReadRow(text, separator, ref line);
            yield return row;
            if (row.Problem is not null)
            {
                yield break;
            }
        }
    }

    private static CsvRow ReadRow(Ahead text, char separator, ref long line)
    {
        var (first, length, isQuoted) = (line, 0, false);
        var cells = new List<string>();
        var cell = new StringBuilder();
        while (text.Next >= 0)
        {
            var c = text.Take();
            if (++length > MostCharacters)
            {
                return new CsvRow(first, [], $"The row is longer than {MostCharacters} characters; a quote may not be closed.");
            }

            line += c == '\n' || (c == '\r' && text.Next != '\n') ? 1 : 0;
            switch (c)
            {
                case Quote when isQuoted && text.Next == Quote:
                    cell.Append(text.Take());
                    break;
                case Quote when isQuoted || cell.Length == 0:
                    isQuoted = !isQuoted;
                    break;
                case '\r' when !isQuoted && text.Next == '\n':
                    break;
                case '\r' or '\n' when !isQuoted:
                    cells.Add(cell.ToString());
                    return new CsvRow(first, cells);
                case var _ when c == separator && !isQuoted:
                    cells.Add(cell.ToString());
                    cell.Clear();
                    break;
                default:
                    cell.Append(c);
                    break;
            }
        }

        cells.Add(cell.ToString());
        return new CsvRow(first, cells, isQuoted ? "A quote is opened and never closed." : null);
    }

    /// <summary>A reader that knows the character after the one in hand; the reader's own look ahead may stop at a buffer's end.</summary>
    private sealed class Ahead(TextReader reader)
    {
        /// <summary>Below 0 at the end.</summary>
        public int Next { get; private set; } = reader.Read();

        public char Take()
        {
            var taken = (char)Next;
            Next = reader.Read();
            return taken;
        }
    }
}
