using MakerStudio.Core.Costing;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>One row of a table of stock in whole coins; value = cost − written down, as printed.</summary>
public readonly record struct PrintedWorth(decimal Cost, decimal WrittenDown, decimal Value);

/// <param name="Opening">Null for what comes and goes.</param>
/// <param name="InTheYear">Above 0 adds to stock.</param>
public sealed record PrintedYearLine(string Name, decimal? Opening, decimal InTheYear, decimal? Closing, bool IsTotal = false);

/// <summary>
/// The books in whole coins, so that every printed table adds up to its printed total, and every total is the same
/// wherever it is printed. Rounded together from above: first both sides of what is conserved, then each table to its part.
/// </summary>
public static class BooksPrinted
{
    /// <summary>Rows of a table of stock that add up to a printed total.</summary>
    /// <param name="rows">Cost and what it is written down by, not rounded.</param>
    /// <param name="total">Of the values, in whole coins; a few coins from their sum at most.</param>
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
    /// <param name="total">In whole coins; a few coins from their sum at most.</param>
    public static IReadOnlyList<decimal> Amounts(IEnumerable<decimal> amounts, decimal total) => Apportionment.RoundTogether([.. amounts], sum: total);

    /// <summary>
    /// The table of the year, top to bottom: stock by kind with its sum, then what came and went, signed, with theirs. The
    /// two sums of "in the year" are one figure.
    /// </summary>
    public static IReadOnlyList<PrintedYearLine> Year(YearView year)
    {
        ArgumentNullException.ThrowIfNull(year);
        var (opening, closing, flow) = (Conservation.Check(year.Opening).Shown, year.Closing.Check.Shown, InTheYear(year));
        return
        [
            new("Materials", opening.Materials, flow.Materials, closing.Materials),
            new("In work", opening.WorkInProgress, flow.WorkInProgress, closing.WorkInProgress),
            new("Finished", opening.Finished, flow.Finished, closing.Finished),
            new("Stock", Stock(opening), Stock(flow), Stock(closing), IsTotal: true),
            new("Received", null, flow.Received, null),
            new("Labour and overhead", null, flow.Conversion, null),
            new("Cost of sales", null, -flow.CostOfSales, null),
            new("Expensed", null, -flow.Expensed, null),
            new("Came less went", null, flow.Received + flow.Conversion - flow.CostOfSales - flow.Expensed, null, IsTotal: true),
        ];
    }

    /// <summary>
    /// What came and went in the year, as printed: stock is closing less opening, and what came less what went is the
    /// change of the stock.
    /// </summary>
    public static ValueParts InTheYear(YearView year)
    {
        ArgumentNullException.ThrowIfNull(year);
        var (opening, closing) = (Conservation.Check(year.Opening).Shown, year.Closing.Check.Shown);
        var (from, to) = (year.Opening, year.Closing.Parts);
        var flows = Apportionment.RoundTogether(
            [to.Received - from.Received, to.Conversion - from.Conversion, from.CostOfSales - to.CostOfSales, from.Expensed - to.Expensed], sum: Stock(closing) - Stock(opening));
        return new(
            flows[0], flows[1], closing.Materials - opening.Materials, closing.WorkInProgress - opening.WorkInProgress, closing.Finished - opening.Finished, -flows[2], -flows[3]);
    }

    /// <summary>Materials, batches in work and finished units together.</summary>
    public static decimal Stock(ValueParts parts) => parts.Materials + parts.WorkInProgress + parts.Finished;
}
