namespace MakerStudio.Core.Exchange;

/// <summary>What stands in a column, so that a spreadsheet can reckon with it.</summary>
public enum CellKind
{
    Text,

    /// <summary>A decimal, unit in the heading.</summary>
    Number,
    Date,

    /// <summary>A date and time with its offset from UTC.</summary>
    Moment,
}

/// <param name="Heading">With its unit: "Density (g/mL)".</param>
public sealed record SheetColumn(string Heading, CellKind Kind);

/// <summary>A table ready to be written: string, decimal, DateOnly, DateTimeOffset or null in each cell, as its column says.</summary>
/// <param name="Rows">Read once, row by row.</param>
public sealed record Sheet(IReadOnlyList<SheetColumn> Columns, IAsyncEnumerable<IReadOnlyList<object?>> Rows)
{
    /// <summary>A cell as text that reads the same everywhere; not made safe for a spreadsheet.</summary>
    public static string Plain(object? cell) => cell switch
    {
        null => "",
        string text => text,
        decimal number => CsvCell.Number(number),
        DateOnly date => CsvCell.Date(date),
        DateTimeOffset moment => CsvCell.Moment(moment),
        _ => throw new ArgumentException($"No column holds a {cell.GetType().Name}.", nameof(cell)),
    };
}

/// <summary>Describes a table once, column by column; it is then written as CSV or XLSX.</summary>
public sealed class SheetOf<T>
{
    /// <summary>Decimals a number is written with at most: a thousand of them added up are still right to nine. Own choice.</summary>
    public const int MostDecimals = 12;

    private readonly List<(SheetColumn Column, Func<T, object?> Value)> _columns = [];

    public SheetOf<T> Text(string heading, Func<T, string?> value) => Add(heading, CellKind.Text, value);

    /// <param name="heading">Says the unit.</param>
    public SheetOf<T> Number(string heading, Func<T, decimal?> value) => Add(heading, CellKind.Number, row => value(row) is { } number ? Plain(number) : null);

    public SheetOf<T> Date(string heading, Func<T, DateOnly?> value) => Add(heading, CellKind.Date, row => value(row));

    public SheetOf<T> Moment(string heading, Func<T, DateTimeOffset?> value) => Add(heading, CellKind.Moment, row => value(row));

    /// <param name="zone">Moments are written in it, with their offset.</param>
    public Sheet Of(IAsyncEnumerable<T> rows, TimeZoneInfo zone) => new([.. _columns.Select(c => c.Column)], rows.Select(row => Cells(row, zone)));

    /// <inheritdoc cref="Of(IAsyncEnumerable{T}, TimeZoneInfo)"/>
    public Sheet Of(IEnumerable<T> rows, TimeZoneInfo zone) => Of(rows.ToAsyncEnumerable(), zone);

    private IReadOnlyList<object?> Cells(T row, TimeZoneInfo zone) =>
        [.. _columns.Select(c => c.Value(row) is DateTimeOffset moment ? TimeZoneInfo.ConvertTime(moment, zone) : c.Value(row))];

    /// <exception cref="ArgumentException">A heading stands twice: a program could not tell the columns apart.</exception>
    private SheetOf<T> Add(string heading, CellKind kind, Func<T, object?> value)
    {
        if (_columns.Exists(c => c.Column.Heading == heading))
        {
            throw new ArgumentException($"“{heading}” heads two columns.", nameof(heading));
        }

        _columns.Add((new SheetColumn(heading, kind), value));
        return this;
    }

    /// <summary>Without zeros at its end, since the database gives 0.980 back for 0.98, and without what no coin or scale will ever see of a quotient.</summary>
    private static decimal Plain(decimal number) => decimal.Round(number, MostDecimals) / 1.0000000000000000000000000000m;
}

/// <summary>Writes a table as CSV: UTF-8 with its mark, so that a spreadsheet reads accents; a point in numbers, ISO dates.</summary>
public static class CsvSheet
{
    /// <summary>UTF-8 with the byte order mark.</summary>
    private static readonly System.Text.UTF8Encoding Marked = new(encoderShouldEmitUTF8Identifier: true);

    /// <summary>Row by row; the stream stays open.</summary>
    public static async Task WriteAsync(Sheet sheet, Stream to, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var text = new StreamWriter(to, Marked, leaveOpen: true);
        await using (text.ConfigureAwait(false))
        {
            await text.WriteAsync(CsvCell.Row(sheet.Columns.Select(c => CsvCell.Text(c.Heading))).AsMemory(), cancel).ConfigureAwait(false);
            await foreach (var row in sheet.Rows.WithCancellation(cancel).ConfigureAwait(false))
            {
                await text.WriteAsync(CsvCell.Row(row.Select(Cell)).AsMemory(), cancel).ConfigureAwait(false);
            }
        }
    }

    private static string Cell(object? cell) => cell is string text ? CsvCell.Text(text) : Sheet.Plain(cell);
}
