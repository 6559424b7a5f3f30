using System.Runtime.CompilerServices;
using MakerStudio.Services.Exchange;

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

/// <summary>Reads a sales file line by line. No more than one line is held.</summary>
internal static class SalesCsv
{
    public static readonly IReadOnlyList<string> Columns = ["date", "channel", "order", "customer", "product", "size", "batch", "quantity", "price", "tax", "fees"];
    public static readonly IReadOnlyList<string> Required = ["date", "quantity", "price"];

    private const int LongestText = 120;
    private const int MoneyDecimals = 4;
    private const int PercentDecimals = 2;

    /// <summary>Why the file cannot be read at all, or null.</summary>
    public static async Task<ColumnsMissing?> WhyNotAsync(Stream file, CancellationToken cancel)
    {
        await using var source = await CsvSource.OpenAsync(file, cancel);
        var places = Places(source.Headings);
        var missing = Required.Where(c => !places.ContainsKey(c)).ToList();
        if (!places.ContainsKey("product") && !places.ContainsKey("batch"))
        {
            missing.Add("product or batch");
        }

        return missing.Count == 0 ? null : new ColumnsMissing(missing);
    }

    /// <param name="marks">The studio's own mark decides where a number could be read either way.</param>
    public static async IAsyncEnumerable<CsvSale> ReadAsync(Stream file, CsvMarks marks, [EnumeratorCancellation] CancellationToken cancel)
    {
        await using var source = await CsvSource.OpenAsync(file, cancel);
        var places = Places(source.Headings);
        await foreach (var row in source.RowsAsync(cancel))
        {
            yield return row.Broken is { } broken ? Rejected(row.Line, broken) : Read(new CsvCells(row, places, marks));
        }
    }

    private static Dictionary<string, int> Places(IReadOnlyList<string> headings)
    {
        var places = new Dictionary<string, int>();
        foreach (var (heading, i) in headings.Select((h, i) => (h.Trim(), i)))
        {
            _ = Columns.FirstOrDefault(c => string.Equals(c, heading, StringComparison.OrdinalIgnoreCase)) is { } column && places.TryAdd(column, i);
        }

        return places;
    }

    private static CsvSale Read(CsvCells cells)
    {
        foreach (var column in Columns)
        {
            if (cells.Text(column) is { } text && (text.Length > LongestText || PlainText.WhyNot(text, severalLines: false) is not null))
            {
                return Rejected(cells.Line, $"The {column} has more than {LongestText} characters, or some that cannot be read.");
            }
        }

        if (Required.FirstOrDefault(c => cells.Text(c) is null) is { } missing)
        {
            return Rejected(cells.Line, $"The {missing} is missing.");
        }

        var day = cells.Date("date");
        var (quantity, price) = (cells.Number("quantity", 0), cells.Number("price", MoneyDecimals));
        var (tax, fees) = (cells.Number("tax", PercentDecimals) ?? 0, cells.Number("fees", MoneyDecimals) ?? 0);
        if (cells.Problems is [var problem, ..])
        {
            return Rejected(cells.Line, $"{problem.Field}: {problem.Problem}");
        }

        var product = cells.Text("product");
        var (channel, order) = (cells.Text("channel"), cells.Text("order"));
        return quantity is < 1 or > RecordFillValidator.MostUnits ? Rejected(cells.Line, "The quantity is between 1 and 100,000.")
            : price > RecordSaleValidator.LargestPrice || tax > 100 || fees > RecordSaleValidator.LargestPrice ? Rejected(cells.Line, "A price, a tax or a fee is larger than can be.")
            : product is null && cells.Text("batch") is null ? Rejected(cells.Line, "Neither product nor batch is named.")
            : channel is { Length: > 40 } || order is { Length: > 60 } ? Rejected(cells.Line, "The channel has at most 40 characters, the order at most 60.")
            : new CsvSale(
                cells.Line, day!.Value, channel ?? "File", order, cells.Text("customer"), product, cells.Text("size"), cells.Text("batch"), (int)quantity!.Value, price!.Value, tax, fees, null);
    }

    private static CsvSale Rejected(long line, string problem) => new(line, default, "", null, null, null, null, null, 0, 0, 0, 0, problem);
}
