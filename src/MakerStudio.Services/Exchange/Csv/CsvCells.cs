using System.Globalization;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange;

/// <summary>How the cells of a file are understood.</summary>
/// <param name="DecimalMark">'.' or ','; it decides 1,234. Null refuses such a number.</param>
internal sealed record CsvMarks(char? DecimalMark, DateOrder Dates)
{
    /// <summary>The studio's own marks.</summary>
    public static async Task<CsvMarks> OfStudioAsync(StudioDb db, CancellationToken cancel)
    {
        var culture = CultureInfo.GetCultureInfo(await db.Studio.Select(s => s.Culture).SingleOrDefaultAsync(cancel) ?? "");
        return new CsvMarks(QuantityFormat.DecimalMark(culture), DateText.OrderOf(culture));
    }
}

/// <summary>Reads the cells of one row by the names of their columns. What cannot be read is noted, and the rest is read on.</summary>
/// <param name="places">Where each column stands.</param>
internal sealed class CsvCells(CsvRecord row, IReadOnlyDictionary<string, int> places, CsvMarks marks)
{
    /// <summary>As many as a decimal holds.</summary>
    public const int AnyDecimals = 28;

    private readonly List<FieldProblem> _problems = [];

    public CsvRecord Row => row;

    public long Line => row.Line;

    /// <summary>By the name of the column.</summary>
    public IReadOnlyList<FieldProblem> Problems => _problems;

    public bool Has(string column) => places.ContainsKey(column);

    public void Refuse(string column, string why) => _problems.Add(new FieldProblem(column, why));

    /// <summary>Without an apostrophe that was set before a formula; null when the column is not there or the cell is empty.</summary>
    public string? Text(string column) =>
        places.TryGetValue(column, out var at) && at < row.Cells.Count && CsvCell.TextOf(row.Cells[at]) is { Length: > 0 } text ? text : null;

    /// <param name="decimals">More are refused, never rounded away.</param>
    public decimal? Number(string column, int decimals = AnyDecimals, bool mayBeBelowZero = false) => Number(column, Text(column), decimals, mayBeBelowZero);

    public decimal? Number(string column, string? text, int decimals = AnyDecimals, bool mayBeBelowZero = false) => Quantity(column, text, decimals, mayBeBelowZero) switch
    {
        null => null,
        { Unit: not null } => Refused(column, $"“{text}” has a unit; only the number is wanted here."),
        var read => read.Value,
    };

    /// <summary>A number that may name its unit; null when there is none or it cannot be read.</summary>
    public QuantityReading.Read? Quantity(string column, string? text, int decimals = AnyDecimals, bool mayBeBelowZero = false)
    {
        if (text is null)
        {
            return null;
        }

        switch (QuantityText.Parse(text, new QuantityTextOptions(marks.DecimalMark ?? '.', null, decimals, mayBeBelowZero)))
        {
            case QuantityReading.Read { Interpretation: not null } when marks.DecimalMark is null:
                Refuse(column, $"“{text}” could be read in two ways. Say which mark stands before decimals in this file.");
                return null;
            case QuantityReading.Read read:
                return read;
            case QuantityReading.Unreadable not:
                Refuse(column, $"“{Short(text)}” cannot be taken. {not.Why}");
                return null;
            case QuantityReading.Asks asks:
                Refuse(column, $"“{text}” is not clear. {asks.Question} Write one of: {string.Join(", ", asks.Choices)}.");
                return null;
            default:
                throw new InvalidOperationException("A quantity is read, asked about or unreadable.");
        }
    }

    /// <summary>ISO 8601, or the studio's own order where that is one day only.</summary>
    public DateOnly? Date(string column)
    {
        if (Text(column) is not { } text)
        {
            return null;
        }

        var (day, why) = DateText.Read(Short(text), marks.Dates);
        if (why is not null)
        {
            Refuse(column, why);
        }

        return day;
    }

    /// <summary>One of a list, in any capitals; null when the cell is empty.</summary>
    public T? OneOf<T>(string column, IReadOnlyList<(string Name, T Value)> choices)
        where T : struct => OneOf(column, Text(column), choices);

    public T? OneOf<T>(string column, string? text, IReadOnlyList<(string Name, T Value)> choices)
        where T : struct
    {
        if (text is null)
        {
            return null;
        }

        foreach (var (name, value) in choices)
        {
            if (string.Equals(name, text, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        Refuse(column, $"“{Short(text)}” is none of: {string.Join(", ", choices.Select(c => c.Name))}.");
        return null;
    }

    private decimal? Refused(string column, string why)
    {
        Refuse(column, why);
        return null;
    }

    /// <summary>As much of a text as a message can hold.</summary>
    private static string Short(string text) => text.Length <= 40 ? text : text[..39] + "…";
}
