using System.Runtime.CompilerServices;
using System.Text;
using CsvHelper;

namespace MakerStudio.Services.Exchange;

/// <summary>A row of a CSV file.</summary>
/// <param name="Line">Of the file, from 1; the headings stand on line 1.</param>
/// <param name="Broken">Why it cannot be read, in a sentence; nothing after it is looked at.</param>
internal sealed record CsvRecord(long Line, IReadOnlyList<string> Cells, string? Broken = null);

/// <summary>
/// A CSV file of people's making: UTF-8 with or without a mark at its start, comma, semicolon or tab between the cells
/// (found from the first lines). No more than one row is held.
/// </summary>
internal sealed class CsvSource : IAsyncDisposable
{
    /// <summary>Longest row, bytes: a row with every cell filled is shorter, so a longer one is a quotation mark left open. Own bound.</summary>
    public const int LongestRow = 64 * 1024;

    private const string CannotBeRead = "The line cannot be read: a quotation mark is open, or it is longer than 65,536 bytes. Nothing after it was looked at.";
    private readonly CsvReader _reader;

    private CsvSource(CsvReader reader, IReadOnlyList<string> headings)
    {
        _reader = reader;
        Headings = headings;
    }

    /// <summary>Empty when the first line cannot be read.</summary>
    public IReadOnlyList<string> Headings { get; }

    /// <summary>Reads the headings; the stream stays open.</summary>
    public static async Task<CsvSource> OpenAsync(Stream file, CancellationToken cancel)
    {
        var reader = CsvReader.Create(
            file, new CsvReaderOptions { TrackLineNumbers = true, TrimWhitespace = true, MaxRecordSize = LongestRow, MalformedData = CsvMalformedDataHandling.Throw, SkipEmptyLines = true }, true);
        try
        {
            await reader.ReadHeaderAsync(cancel);
            return new CsvSource(reader, [.. reader.Headers]);
        }
        catch (CsvFormatException)
        {
            return new CsvSource(reader, []);
        }
    }

    /// <summary>Every row that is not empty, in its order; ends after one that is broken.</summary>
    public async IAsyncEnumerable<CsvRecord> RowsAsync([EnumeratorCancellation] CancellationToken cancel)
    {
        while (Headings.Count > 0)
        {
            CsvRecord? row;
            try
            {
                row = await _reader.ReadAsync(cancel) ? Row() : null;
            }
            catch (CsvFormatException broken)
            {
                row = new CsvRecord(broken.LineNumber, [], CannotBeRead);
            }

            if (row is null)
            {
                yield break;
            }

            if (row.Broken is not null || row.Cells.Any(c => c.Length > 0))
            {
                yield return row;
            }

            if (row.Broken is not null)
            {
                yield break;
            }
        }
    }

    /// <summary>
    /// Why the bytes are no text in UTF-8, in a refusal; null when they are. Other encodings are not guessed: a wrong guess
    /// spoils names without a word.
    /// </summary>
    public static async Task<NotUtf8?> WhyNotUtf8Async(Stream file, CancellationToken cancel)
    {
        var decoder = new UTF8Encoding(false, throwOnInvalidBytes: true).GetDecoder();
        var (bytes, chars, line, isFirst) = (new byte[LongestRow], new char[LongestRow], 1L, true);
        int read;
        do
        {
            read = await file.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, cancel);
            if (isFirst && OtherKind(bytes.AsSpan(0, read)) is { } kind)
            {
                return new NotUtf8(kind, null);
            }

            isFirst = false;
            try
            {
                line += chars.AsSpan(0, decoder.GetChars(bytes, 0, read, chars, 0, flush: read == 0)).Count('\n');
            }
            catch (DecoderFallbackException)
            {
                return new NotUtf8("another encoding", line + LinesBeforeFault(bytes.AsSpan(0, read)));
            }
        }
        while (read > 0);

        return null;
    }

    public async ValueTask DisposeAsync() => await _reader.DisposeAsync();

    private CsvRecord Row()
    {
        var cells = new string[_reader.FieldCount];
        for (var i = 0; i < cells.Length; i++)
        {
            cells[i] = _reader.GetString(i).Trim();
        }

        return new CsvRecord(_reader.LineNumber, cells);
    }

    private static string? OtherKind(ReadOnlySpan<byte> start) => start switch
    {
        [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] => "UTF-16",
        [0x50, 0x4B, ..] => "a workbook or an archive", // "PK", as every ZIP begins
        _ when start.Contains((byte)0) => "no text",
        _ => null,
    };

    /// <summary>Whole lines that read well before the first bad byte.</summary>
    private static long LinesBeforeFault(ReadOnlySpan<byte> bytes)
    {
        var lines = 0L;
        var rest = bytes;
        while (rest.IndexOf((byte)'\n') is >= 0 and var end && System.Text.Unicode.Utf8.IsValid(rest[..end]))
        {
            lines++;
            rest = rest[(end + 1)..];
        }

        return lines;
    }
}

/// <summary>The file is not text in UTF-8.</summary>
/// <param name="Is">What it is instead.</param>
/// <param name="Line">The first line that cannot be read, where the rest can.</param>
public sealed record NotUtf8(string Is, long? Line) : Refusal
{
    public override string Happened => Line is { } line
        ? $"The file is not in UTF-8: line {line} holds characters of another encoding."
        : $"The file is not text in UTF-8; it is {Is}.";
    public override string Kept => "Nothing was kept; the form stays as it is.";
    public override string ToDo => "Save it once more as “CSV UTF-8”, and choose it again.";
}
