using CsCheck;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory.Books;

/// <summary>Whatever the amounts, what is printed adds up to what is printed under it, on every table of the books.</summary>
public class BooksPrintedTests
{
    private static readonly Gen<decimal> Money = Gen.Long[0, 1_000_000_000].Select(n => n / 7_000_001m);
    private static readonly Gen<(decimal Cost, decimal Down)[]> Stock = Gen.Select(Money, Gen.Int[0, 3]).Select(m => (m.Item1, m.Item2 == 0 ? m.Item1 / 3m : 0m)).Array[0, 12];

    [Fact]
    public void Tables_OfAnyYear_AddUpAsPrinted() =>
        Gen.Select(Books(), Books(), Money.Array[0, 9]).Sample((before, now, sold) =>
        {
            // A year in which all of "before" is there at its opening, and later sums are no smaller.
            var closing = Grown(before.Parts, now.Parts);
            var year = new YearView(new(2026, 1, 1), new(2026, 12, 31), false, before.Parts, 0m, View(now, closing));
            var (lines, shown, flow) = (BooksPrinted.Year(year), year.Closing.Check.Shown, BooksPrinted.InTheYear(year));
            var materials = BooksPrinted.Rows(now.Materials, shown.Materials);
            var sales = BooksPrinted.Amounts(sold, flow.CostOfSales);
            return lines[3].Opening == lines.Take(3).Sum(l => l.Opening) && lines[3].Closing == lines.Take(3).Sum(l => l.Closing) && lines[3].InTheYear == lines.Take(3).Sum(l => l.InTheYear)
                && lines[8].InTheYear == lines.Skip(4).Take(4).Sum(l => l.InTheYear) && lines[8].InTheYear == lines[3].InTheYear
                && lines.Take(4).All(l => l.Opening + l.InTheYear == l.Closing)
                && lines[0].Closing == shown.Materials
                && shown.Received + shown.Conversion == BooksPrinted.Stock(shown) + shown.CostOfSales + shown.Expensed
                && (now.Materials.Length == 0 || BooksPrinted.Sum(materials).Value == shown.Materials)
                && materials.All(m => m.Cost - m.WrittenDown == m.Value && m.Value % 0.01m == 0)
                && materials.Zip(now.Materials).All(m => Math.Abs(m.First.Value - (m.Second.Cost - m.Second.Down)) < 0.02m)
                && (sold.Length == 0 || sales.Sum() == flow.CostOfSales)
                && Math.Abs(flow.Received - (closing.Received - before.Parts.Received)) < 0.02m;
        });

    /// <summary>Three items of a third of a cent: rounded apart they would print 0.00 each under a total of 0.01.</summary>
    [Fact]
    public void Rows_OfThirdsOfACoin_AddUp()
    {
        var rows = BooksPrinted.Rows([(0.01m / 3, 0m), (0.01m / 3, 0m), (0.01m / 3, 0m)], 0.01m);
        Assert.Equal([0.01m, 0m, 0m], rows.Select(r => r.Value));
    }

    private static Gen<((decimal Cost, decimal Down)[] Materials, ValueParts Parts)> Books() =>
        Gen.Select(Stock, Money, Money, Money, Money, Money).Select((materials, inWork, finished, sold, expensed, conversion) =>
        {
            var worth = materials.Sum(m => m.Cost - m.Down);
            return (materials, new ValueParts(worth + inWork + finished + sold + expensed, conversion, worth, inWork, finished, sold, expensed + conversion));
        });

    private static ValueParts Grown(ValueParts before, ValueParts now)
    {
        var (sold, expensed, conversion) = (before.CostOfSales + now.CostOfSales, before.Expensed + now.Expensed, before.Conversion + now.Conversion);
        return now with { CostOfSales = sold, Expensed = expensed, Conversion = conversion, Received = BooksPrinted.Stock(now) + sold + expensed - conversion };
    }

    private static BooksView View(((decimal Cost, decimal Down)[] Materials, ValueParts Parts) books, ValueParts parts) => new(
        "EUR", default, default, default, ValuationMethod.Fifo, default, default, false,
        [.. books.Materials.Select(m => new MaterialBookRow(Guid.Empty, "", default, default, 1, m.Cost, m.Down, []))], [], [], parts, []);
}
