using System.Globalization;
using System.Text.RegularExpressions;
using CsvHelper;
using ExcelDataReader;
using MakerStudio.Core.Exchange;

namespace MakerStudio.Browser.Tests.SavedTables;

/// <summary>One saved table read back by two libraries that know nothing of how it was written.</summary>
internal sealed partial record SavedFile(IReadOnlyList<string> Headings, IReadOnlyList<string[]> Csv, IReadOnlyList<object?[]> Workbook)
{
    /// <summary>What a double of a workbook may differ by from the decimal it was made of.</summary>
    private const decimal DoubleNoise = 0.000000001m;

    public static async Task<SavedFile> DownloadAsync(HttpClient client, string csvAddress)
    {
        var rows = ReadCsv(await GetAsync(client, csvAddress));
        return new SavedFile(rows[0], rows[1..], ReadWorkbook(await GetAsync(client, csvAddress.Replace(".csv", ".xlsx", StringComparison.Ordinal)), rows[0]));
    }

    /// <summary>Everything that is wrong with it, in sentences; empty when nothing is.</summary>
    public IEnumerable<string> Faults()
    {
        if (Headings.Any(string.IsNullOrWhiteSpace) || Headings.Distinct().Count() != Headings.Count)
        {
            yield return $"the headings are not all there and different: {string.Join(" | ", Headings)}";
        }

        if (Csv.Count != Workbook.Count)
        {
            yield return $"the CSV has {Csv.Count} rows, the workbook {Workbook.Count}";
            yield break;
        }

        for (var row = 0; row < Csv.Count; row++)
        {
            for (var column = 0; column < Headings.Count; column++)
            {
                if (Fault(Headings[column], Csv[row][column], Workbook[row][column]) is { } fault)
                {
                    yield return $"row {row + 1}, {Headings[column]}: {fault}";
                }
            }
        }
    }

    private static string? Fault(string heading, string csv, object? cell) => cell switch
    {
        null or "" when csv.Length > 0 => $"“{csv}” in the CSV, nothing in the workbook",
        null or "" => null,
        double number when !PlainNumber().IsMatch(csv) => $"“{csv}” is no number with a point",
        double number when Math.Abs(decimal.Parse(csv, CultureInfo.InvariantCulture) - (decimal)number) > DoubleNoise * Math.Max(1m, Math.Abs((decimal)number)) => $"“{csv}” is not {number} of the workbook",
        double => null,
        DateTime date => csv == date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ? null : $"“{csv}” is not the day {date:o} of the workbook",
        _ when "=+-@\t\r\n\0".Contains(csv[0], StringComparison.Ordinal) => $"“{csv}” begins like a formula",
        string text when CsvCell.TextOf(csv) != text => $"“{csv}” in the CSV, “{text}” in the workbook",
        _ when Unit().IsMatch(heading) && !SeveralNumbers().IsMatch(csv) => $"“{csv}” is text under a heading with a unit",
        _ when LocalDay().IsMatch(csv) => $"“{csv}” is a day in somebody's own marks",
        _ when Moment().IsMatch(csv) && !IsoMoment().IsMatch(csv) => $"“{csv}” is a time without its distance from UTC",
        _ => null,
    };

    private static async Task<byte[]> GetAsync(HttpClient client, string address)
    {
        using var answer = await client.GetAsync(new Uri(address, UriKind.Relative));
        Assert.True(answer.IsSuccessStatusCode, $"{address} answers {answer.StatusCode}");
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition?.DispositionType);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    private static List<string[]> ReadCsv(byte[] bytes)
    {
        using var reader = CsvReader.Create(bytes, new CsvReaderOptions { HasHeader = false, MalformedData = CsvMalformedDataHandling.Throw });
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }

        Assert.All(rows, row => Assert.Equal(rows[0].Length, row.Length));
        return rows;
    }

    private static List<object?[]> ReadWorkbook(byte[] bytes, string[] headings)
    {
        using var reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(bytes));
        var rows = new List<object?[]>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, headings.Length).Select(i => i < reader.FieldCount ? reader.GetValue(i) : null)]);
        }

        Assert.Equal(headings, rows[0].Cast<string>());
        // An empty table has its headings and one row of nothing.
        return rows is [_, var only] && only.All(cell => cell is null or "") ? [] : rows[1..];
    }

    [GeneratedRegex(@"^-?\d+(\.\d+)?$")]
    private static partial Regex PlainNumber();

    /// <summary>A heading that ends in a unit or a currency stands over numbers.</summary>
    [GeneratedRegex(@"\((g|kg|mL|L|mm|°C|each|days|h|min|%[^)]*|[A-Z]{3}[^)]*|g or each|mg/m³|g/mL|bytes)\)$")]
    private static partial Regex Unit();

    /// <summary>One for each supplier of a material, say; a gap where one is not known.</summary>
    [GeneratedRegex(@"^(\d+(\.\d+)?)?( \| ?(\d+(\.\d+)?)?)*$")]
    private static partial Regex SeveralNumbers();

    [GeneratedRegex(@"^\d{1,2}[./]\d{1,2}[./]\d{2,4}")]
    private static partial Regex LocalDay();

    [GeneratedRegex(@"^\d{4}-\d\d-\d\d[T ]\d\d")]
    private static partial Regex Moment();

    [GeneratedRegex(@"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$")]
    private static partial Regex IsoMoment();
}
