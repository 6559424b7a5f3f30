using MakerStudio.Core.Costing;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>One row of a table of stock in whole coins; value = cost − written down, as printed.</summary>
public readonly record struct PrintedWorth(decimal Cost, decimal WrittenDown, decimal Value);

/// <summary>
/// The books in whole coins, so that every printed table adds up to its printed total, and every total is the same
/// wherever it is printed. Rounded together from above: first both sides of what is conserved, then each table to its part.
/// </summary>
public static class BooksPrinted
{
    /// <summary>Rows of a table of stock that add up to a printed total.</summary>
    /// <param name="rows">Cost and what it is written down by, not rounded.</param>
    /// <param name="total">Of the values, in whole coins; within a coin of their sum.</param>
    public static IReadOnlyList<PrintedWorth> Rows(IEnumerable<(decimal Cost, decimal WrittenDown)> rows, decimal total)
    {
        var all = rows.ToList();
        var values = Apportionment.RoundTogether([.. all.Select(r => r.Cost - r.WrittenDown)], sum: total);
        var downs = Apportionment.RoundTogether([.. all.Select(r => r.WrittenDown)]);
        return [.. values.Zip(downs, (value, down) => new PrintedWorth(value + down, down, value))];
    }

    public static PrintedWorth Sum(IEnumerable<PrintedWorth> rows) =>
        rows.Aggregate(default(PrintedWorth), (sum, r) => new(sum.Cost + r.Cost, sum.WrittenDown + r.WrittenDown, sum.Value + r.Value));

    /// <summary>Amounts that add up to a printed total.</summary>
    /// <param name="total">In whole coins; within a coin of their sum.</param>
    public static IReadOnlyList<decimal> Amounts(IEnumerable<decimal> amounts, decimal total) => Apportionment.RoundTogether([.. amounts], sum: total);

    /// <summary>What came and went in the year: closing less opening, both as printed, so that opening + in − out is the closing.</summary>
    public static ValueParts InTheYear(ValueParts opening, ValueParts closing) => new(
        closing.Received - opening.Received, closing.Conversion - opening.Conversion, closing.Materials - opening.Materials,
        closing.WorkInProgress - opening.WorkInProgress, closing.Finished - opening.Finished, closing.CostOfSales - opening.CostOfSales, closing.Expensed - opening.Expensed);

    /// <summary>Materials, batches in work and finished units together.</summary>
    public static decimal Stock(ValueParts parts) => parts.Materials + parts.WorkInProgress + parts.Finished;
}
