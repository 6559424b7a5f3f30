using System.Globalization;
using System.Reflection;
using System.Text;

namespace MakerStudio.Core.Workings;

/// <summary>A table of reference data kept inside the program: comma-separated, the first line names the columns.</summary>
internal static class DataTable
{
    internal static IReadOnlyList<DataRow> Read(string file)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(file)
            ?? throw new InvalidOperationException($"The table {file} is not in the program.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        string[] columns = Cells(reader.ReadLine()!);
        var rows = new List<DataRow>();
        while (reader.ReadLine() is { } line)
        {
            string[] cells = Cells(line);
            if (cells.Length != columns.Length)
            {
                throw new FormatException($"{file}: {cells.Length} cells for {columns.Length} columns in \"{line}\".");
            }

            rows.Add(new DataRow(columns.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second)));
        }

        return rows;
    }

    /// <summary>Cells of a line; quotes keep a comma in, two quotes are one.</summary>
    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            bool isPair = quoted && c == '"' && i + 1 < line.Length && line[i + 1] == '"';
            if (isPair)
            {
                cell.Append('"');
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return [.. cells];
    }
}

internal sealed record DataRow(IReadOnlyDictionary<string, string> Cells)
{
    internal string Text(string column) => Cells[column];

    /// <summary>Several in one cell, apart by semicolons; empty where the cell is.</summary>
    internal string[] Texts(string column) => Cells[column].Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    internal bool Has(string column) => Cells[column].Length > 0;

    internal bool Yes(string column) => Cells[column] == "yes";

    internal double Number(string column) => double.Parse(Cells[column], NumberStyles.Float, CultureInfo.InvariantCulture);

    internal double? NumberOrNull(string column) => Has(column) ? Number(column) : null;

    internal decimal Decimal(string column) => decimal.Parse(Cells[column], NumberStyles.Float, CultureInfo.InvariantCulture);

    internal decimal? DecimalOrNull(string column) => Has(column) ? Decimal(column) : null;

    internal DateOnly? DateOrNull(string column) =>
        Has(column) ? DateOnly.ParseExact(Cells[column], "yyyy-MM-dd", CultureInfo.InvariantCulture) : null;

    internal Source Source(string citation = "source", string status = "status") =>
        new(Cells[citation], DataStatuses.Of(Cells[status]));
}
