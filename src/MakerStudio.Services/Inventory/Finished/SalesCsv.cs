using System.Globalization;
using System.Runtime.CompilerServices;
using CsvHelper;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>One line of a sales file as it was read, or why it could not be.</summary>
/// <param name="Line">Line of the file, the header being line 1.</param>
internal sealed record CsvSale(
    long Line, DateOnly SoldOn, string Channel, string? Order, string? Customer, string? Product, string? Size, string? Batch, int Quantity, decimal Price, decimal Tax, decimal Fees, string? Problem);

/// <summary>The header lacks columns: nothing of the file can be read.</summary>
public sealed record ColumnsMissing(IReadOnlyList<string> Names) : Refusal
{
    public override string Happened => $"The first line does not name {string.Join(", ", Names)}.";
    public override string ToDo => $"Give the columns these names: {string.Join(", ", SalesCsv.Columns)}. Only {string.Join(", ", SalesCsv.Required)} and product or batch are needed.";
}

/// <summary>
/// Reads a sales file line by line: UTF-8 with or without a mark at its start, comma, semicolon or tab between columns,
/// ISO dates, numbers in either decimal mark. No more than one line is held.
/// </summary>
internal static class SalesCsv
{
    public static readonly IReadOnlyList<string> Columns = ["date", "channel", "order", "customer", "product", "size", "batch", "quantity", "price", "tax", "fees"];
    public static readonly IReadOnlyList<string> Required = ["date", "quantity", "price"];

    /// <summary>Longest line, bytes: a line with every column filled is far shorter. Own bound.</summary>
    private const int LongestLine = 16 * 1024;
    private const int LongestText = 120;

    /// <summary>Why the file cannot be read at all, or null.</summary>
    public static async Task<ColumnsMissing?> WhyNotAsync(Stream file, CancellationToken cancel)
    {
        await using var reader = Open(file);
        try
        {
            await reader.ReadHeaderAsync(cancel);
        }
        catch (CsvFormatException)
        {
            return new ColumnsMissing(Required);
        }

        var missing = Required.Where(c => !reader.TryGetFieldIndex(c, out _)).ToList();
        if (!reader.TryGetFieldIndex("product", out _) && !reader.TryGetFieldIndex("batch", out _))
        {
            missing.Add("product or batch");
        }

        return missing.Count == 0 ? null : new ColumnsMissing(missing);
    }

    /// <param name="decimalMark">The studio's own; it decides where a number could be read either way.</param>
    public static async IAsyncEnumerable<CsvSale> ReadAsync(Stream file, char decimalMark, [EnumeratorCancellation] CancellationToken cancel)
    {
        await using var reader = Open(file);
        await reader.ReadHeaderAsync(cancel);
        var at = Columns.ToDictionary(c => c, c => reader.TryGetFieldIndex(c, out var index) ? index : -1);
        while (true)
        {
            CsvSale? broken = null;
            try
            {
                if (!await reader.ReadAsync(cancel))
                {
                    yield break;
                }
            }
            catch (CsvFormatException e)
            {
                broken = Rejected(e.LineNumber, "The line cannot be read: a quotation mark is open, or it is longer than 16,384 bytes. Nothing after it was looked at.");
            }

            if (broken is not null)
            {
                yield return broken;
                yield break;
            }

            yield return Read(reader, at, decimalMark);
        }
    }

    private static CsvReader Open(Stream file) => CsvReader.Create(
        file, new CsvReaderOptions { TrackLineNumbers = true, TrimWhitespace = true, MaxRecordSize = LongestLine, MalformedData = CsvMalformedDataHandling.Throw, SkipEmptyLines = true }, true);

    private static CsvSale Read(CsvReader reader, Dictionary<string, int> at, char decimalMark)
    {
        string? Text(string column) => at[column] is >= 0 and var i && reader.GetString(i).Trim() is { Length: > 0 } text ? text : null;
        var line = reader.LineNumber;
        foreach (var column in Columns)
        {
            if (Text(column) is { } text && (text.Length > LongestText || PlainText.WhyNot(text, severalLines: false) is not null))
            {
                return Rejected(line, $"The {column} has more than {LongestText} characters, or some that cannot be read.");
            }
        }

        if (!DateOnly.TryParseExact(Text("date"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return Rejected(line, $"The date “{Text("date")}” is not written as 2026-11-14.");
        }

        var numbers = new decimal[4];
        foreach (var (column, i, decimals) in new[] { ("quantity", 0, 0), ("price", 1, 4), ("tax", 2, 2), ("fees", 3, 4) })
        {
            if (Text(column) is not { } text)
            {
                if (i < 2)
                {
                    return Rejected(line, $"The {column} is missing.");
                }

                continue;
            }

            if (QuantityText.Parse(text, new QuantityTextOptions(decimalMark, null, decimals, false, true)) is not QuantityReading.Read { Unit: null } read)
            {
                return Rejected(line, $"The {column} “{text}” is no number{(decimals == 0 ? " of whole units" : "")} of zero or more.");
            }

            numbers[i] = read.Value;
        }

        var product = Text("product");
        return numbers switch
        {
            [< 1 or > RecordFillValidator.MostUnits, ..] => Rejected(line, "The quantity is between 1 and 100,000."),
            [_, > RecordSaleValidator.LargestPrice, ..] or [_, _, > 100, _] or [_, _, _, > RecordSaleValidator.LargestPrice] => Rejected(line, "A price, a tax or a fee is larger than can be."),
            _ when product is null && Text("batch") is null => Rejected(line, "Neither product nor batch is named."),
            _ when Text("channel") is { Length: > 40 } || Text("order") is { Length: > 60 } => Rejected(line, "The channel has at most 40 characters, the order at most 60."),
            _ => new CsvSale(line, day, Text("channel") ?? "File", Text("order"), Text("customer"), product, Text("size"), Text("batch"), (int)numbers[0], numbers[1], numbers[2], numbers[3], null),
        };
    }

    private static CsvSale Rejected(long line, string problem) => new(line, default, "", null, null, null, null, null, 0, 0, 0, 0, problem);
}
