using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Exchange;

/// <summary>A file as it was typed: which column stands where, and its rows.</summary>
/// <param name="LeftAside">Headings that are not known here.</param>
/// <param name="Problems">Why nothing of it can be read.</param>
/// <param name="Asks">A number that could be read in two ways, as long as nothing says which.</param>
internal sealed record TypedFile(
    IReadOnlyList<string> Headings, IReadOnlyDictionary<string, int> Places, IReadOnlyList<CsvCells> Rows, IReadOnlyList<string> LeftAside,
    IReadOnlyList<string> Problems, MarkAsked? Asks)
{
    /// <summary>Rows of one file; own bound. A studio's whole storeroom has some hundreds.</summary>
    public const int MostRows = 5_000;

    /// <param name="answered">The decimal mark somebody said the file has; null when nobody was asked.</param>
    public static async Task<TypedFile> ReadAsync(Stream content, IReadOnlyList<FileColumn> columns, char? answered, DateOrder dates, CancellationToken cancel)
    {
        await using var source = await CsvSource.OpenAsync(content, cancel);
        var problems = new List<string>();
        var (places, aside) = Place(source.Headings, columns, problems);
        var rows = new List<CsvRecord>();
        await foreach (var row in source.RowsAsync(cancel))
        {
            if (row.Broken is { } broken)
            {
                problems.Add($"Line {row.Line}: {broken}");
            }
            else if (rows.Count == MostRows)
            {
                problems.Add(FormattableString.Invariant($"A file holds at most {MostRows:N0} rows. Part it in two."));
                break;
            }
            else
            {
                rows.Add(row);
            }
        }

        if (rows.Count == 0 && problems.Count == 0)
        {
            problems.Add("There are no rows under the headings.");
        }

        var numbers = columns.Where(c => c.HoldsNumbers && places.ContainsKey(c.Heading)).Select(c => (c.Heading, At: places[c.Heading])).ToList();
        var marks = new CsvMarks(ClearMark(rows, numbers) ?? answered, dates);
        return new TypedFile(
            source.Headings, places, rows.ConvertAll(r => new CsvCells(r, places, marks)), aside, problems, marks.DecimalMark is null ? Unclear(rows, numbers) : null);
    }

    private static (Dictionary<string, int> Places, List<string> Aside) Place(IReadOnlyList<string> headings, IReadOnlyList<FileColumn> columns, List<string> problems)
    {
        var places = new Dictionary<string, int>();
        var aside = new List<string>();
        foreach (var (typed, i) in headings.Select((h, i) => (CsvCell.TextOf(h.Trim()), i)).Where(h => h.Item1.Length > 0))
        {
            if (columns.FirstOrDefault(c => c.IsNamed(typed)) is { } column)
            {
                if (!places.TryAdd(column.Heading, i))
                {
                    problems.Add($"The column “{column.Heading}” stands there twice.");
                }
            }
            else if (columns.FirstOrDefault(c => c.IsNear(typed)) is { } near)
            {
                problems.Add($"The column “{typed}” is wanted as “{near.Heading}”: change its numbers to that, then the heading.");
            }
            else
            {
                aside.Add(typed);
            }
        }

        problems.AddRange(columns.Where(c => c.IsNeeded && !places.ContainsKey(c.Heading)).Select(c => $"The column “{c.Heading}” is not there."));
        return (places, aside);
    }

    /// <summary>The mark that all clear numbers of the file have; null when none is clear, or some have the other one.</summary>
    private static char? ClearMark(List<CsvRecord> rows, List<(string Heading, int At)> numbers)
    {
        var seen = Numbers(rows, numbers).Select(n => QuantityText.ClearMark(n.Typed)).OfType<char>().Distinct().Take(2).ToList();
        return seen is [var only] ? only : null;
    }

    private static MarkAsked? Unclear(List<CsvRecord> rows, List<(string Heading, int At)> numbers)
    {
        var either = new QuantityTextOptions(MaxDecimals: CsvCells.AnyDecimals, AllowNegative: true);
        return Numbers(rows, numbers).FirstOrDefault(n => QuantityText.Parse(n.Typed, either) is QuantityReading.Read { Interpretation: not null });
    }

    private static IEnumerable<MarkAsked> Numbers(List<CsvRecord> rows, List<(string Heading, int At)> numbers) =>
        from row in rows
        from number in numbers
        where number.At < row.Cells.Count
        from typed in row.Cells[number.At].Split(FileColumn.Between, StringSplitOptions.TrimEntries)
        select new MarkAsked(row.Line, number.Heading, typed);
}
