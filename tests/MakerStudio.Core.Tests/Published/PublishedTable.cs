using System.Globalization;
using System.Text;

namespace MakerStudio.Core.Tests.Published;

/// <summary>A table of Published/Data, whose sources and statuses are in Data/README.md.</summary>
internal static class PublishedTable
{
    public static IReadOnlyList<PublishedRow> Rows(string file, int expected)
    {
        string[][] lines = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Published", "Data", file)).Select(Cells)];
        PublishedRow[] rows = [.. lines.Skip(1).Select(line => new PublishedRow(
            lines[0].Zip(line).ToDictionary(pair => pair.First, pair => pair.Second)))];
        // A file that lost its rows would pass every check.
        Assert.Equal(expected, rows.Length);
        return rows;
    }

    private static string[] Cells(string line)
    {
        var cells = new List<StringBuilder> { new() };
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(new());
            }
            else
            {
                cells[^1].Append(c);
            }
        }

        return [.. cells.Select(cell => cell.ToString())];
    }
}

internal sealed record PublishedRow(Dictionary<string, string> Cells)
{
    public string this[string column] => Cells[column];

    public double Number(string column) => double.Parse(Cells[column], NumberStyles.Float, CultureInfo.InvariantCulture);

    public bool Has(string column) => Cells[column].Length > 0;

    public override string ToString() => string.Join(',', Cells.Values);
}

internal static class Near
{
    public static void Equal(double expected, double actual, double within) =>
        Assert.True(Math.Abs(expected - actual) <= within, FormattableString.Invariant($"expected {expected} ± {within}, was {actual}"));
}
