using MakerStudio.Core.Curing;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What the stock is worth in the books, at any moment: one file a use case in this folder.</summary>
public sealed partial class Books(StudioStore store)
{
    /// <summary>The value of everything at the end of a day, or now.</summary>
    /// <param name="day">In the studio's time zone; null is now.</param>
    public async Task<BooksView> ReadAsync(DateOnly? day = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        await using var still = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        var basis = await BasisAsync(db, store.Clock, cancel);
        var asOf = day is { } at && at < basis.Today ? basis.EndOf(at) : basis.Now;
        var facts = await BookRows.FactsAsync(db, cancel);
        var value = BookValue.Of(facts, await BookRows.ProductOfAsync(db, cancel), basis.MethodAt(asOf), asOf, basis.Years);
        return await ViewAsync(db, basis, value, asOf, cancel);
    }

    /// <summary>One financial year from its opening to its last day, or to now while it runs.</summary>
    /// <param name="first">Any day of the year.</param>
    public Task<YearView> YearAsync(DateOnly first, CancellationToken cancel = default) => YearAsync(first, null, cancel);

    /// <summary>The year that holds a day, from its opening to the end of that day.</summary>
    /// <param name="day">In the studio's time zone; null is now.</param>
    public Task<YearView> YearToAsync(DateOnly? day, CancellationToken cancel = default) => YearAsync(day, day, cancel);

    private async Task<YearView> YearAsync(DateOnly? of, DateOnly? upTo, CancellationToken cancel)
    {
        await using var db = await store.ReadAsync(cancel);
        await using var still = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        var basis = await BasisAsync(db, store.Clock, cancel);
        var year = basis.Years.Of(of ?? basis.Today);
        var facts = await BookRows.FactsAsync(db, cancel);
        var products = await BookRows.ProductOfAsync(db, cancel);
        var method = MethodOfYears.In(year, basis.Choices);
        var (opens, ends) = (basis.EndOf(year.First.AddDays(-1)), basis.EndOf(year.Last));
        var until = upTo is { } day ? basis.EndOf(day) : ends;
        var asOf = until < basis.Now ? until : basis.Now;
        var opening = BookValue.Of(facts, products, method, opens, basis.Years);
        var before = MethodOfYears.In(basis.Years.Of(year.First.AddDays(-1)), basis.Choices);
        var carriedOver = before == method ? opening : BookValue.Of(facts, products, before, opens, basis.Years);
        var closing = BookValue.Of(facts, products, method, asOf, basis.Years);
        return new YearView(
            year.First, year.Last, ends >= basis.Now, opening.Parts, Stock(opening) - Stock(carriedOver),
            await ViewAsync(db, basis, closing, asOf, cancel));
    }

    private static decimal Stock(BookValue value) => value.Parts.Materials + value.Parts.WorkInProgress + value.Parts.Finished;

    internal static async Task<BookBasis> BasisAsync(StudioDb db, TimeProvider clock, CancellationToken cancel)
    {
        var studio = await db.Studio.Select(s => new { s.Name, s.TimeZone, s.Currency }).SingleAsync(cancel);
        var rules = PriceBook.RowOf(await db.PriceRules.SingleOrDefaultAsync(cancel));
        var zone = TimeZoneInfo.FindSystemTimeZoneById(studio.TimeZone);
        var now = Command.ToMicroseconds(clock.GetUtcNow());
        var choices = await db.BookMethods.Select(m => new MethodFrom(m.First, m.Method)).ToListAsync(cancel);
        return new BookBasis(studio.Currency, now, StudioTime.Today(now, zone), new FinancialYears(rules.YearMonth, rules.YearDay, zone), choices);
    }

    private static async Task<BooksView> ViewAsync(StudioDb db, BookBasis basis, BookValue value, DateTimeOffset asOf, CancellationToken cancel)
    {
        var materials = await db.Materials.Select(m => new { m.Id, m.Name, m.Kind, m.StockedIn }).ToDictionaryAsync(m => m.Id, cancel);
        var names = await BookRows.ProductsAsync(db, cancel);
        var inWork = value.Books.WorkInProgress.Select(w => w.Id).ToArray();
        var batches = await db.Batches.Where(b => inWork.Contains(b.Id)).Select(b => new { b.Id, b.Code, b.ScentName, b.State }).ToDictionaryAsync(b => b.Id, cancel);
        var year = basis.Years.Of(asOf);
        var downs = await BookRows.WriteDownsAsync(db, asOf, cancel);
        return new BooksView(
            basis.Currency, asOf, basis.Today, value.Method, year.First, year.Last, basis.Choices.Any(c => c.First <= year.First),
            [.. value.Materials.Select(m => (Of: materials[m.Key], Is: m.Value)).OrderBy(m => m.Of.Name, StringComparer.CurrentCulture)
                .Select(m => new MaterialBookRow(m.Of.Id, m.Of.Name, m.Of.Kind, m.Of.StockedIn, (long)m.Is.Quantity, m.Is.Cost, m.Is.WrittenDown))],
            [.. value.Books.WorkInProgress.Select(b => new BatchBookRow(batches[b.Id].Code, batches[b.Id].ScentName, batches[b.Id].State, b.Value)).OrderBy(b => b.Code, StringComparer.Ordinal)],
            [.. value.Products.Where(p => names.ContainsKey(p.Key)).Select(p => (Of: names[p.Key], p.Key, Is: p.Value))
                .OrderBy(p => p.Of.Scent, StringComparer.CurrentCulture).ThenBy(p => p.Of.SizeName, StringComparer.CurrentCulture)
                .Select(p => new ProductBookRow(p.Key, p.Of.FormulaId, p.Of.Scent, p.Of.SizeName, (int)p.Is.Quantity, p.Is.Cost, p.Is.WrittenDown))],
            value.Parts, downs);
    }
}

/// <summary>What values are worked out by.</summary>
internal sealed record BookBasis(string Currency, DateTimeOffset Now, DateOnly Today, FinancialYears Years, IReadOnlyList<MethodFrom> Choices)
{
    public DateTimeOffset EndOf(DateOnly day) => Command.ToMicroseconds(Years.EndOf(day));

    public ValuationMethod MethodAt(DateTimeOffset moment) => MethodOfYears.In(Years.Of(moment), Choices);
}

/// <param name="MethodIsChosen">By somebody for this year or one before; else it is the usual one.</param>
/// <param name="Parts">Not rounded.</param>
public sealed record BooksView(
    string Currency, DateTimeOffset AsOf, DateOnly Today, ValuationMethod Method, DateOnly YearFirst, DateOnly YearLast, bool MethodIsChosen,
    IReadOnlyList<MaterialBookRow> Materials, IReadOnlyList<BatchBookRow> InWork, IReadOnlyList<ProductBookRow> Finished, ValueParts Parts,
    IReadOnlyList<WriteDownRow> WriteDowns)
{
    public ConservationCheck Check => Conservation.Check(Parts);
}

/// <param name="Opening">Parts at the end of the day before, under this year's method.</param>
/// <param name="Revalued">What a change of method did to the opening stock; 0 when there was none.</param>
/// <param name="Closing">At its last day, or now while it runs.</param>
public sealed record YearView(DateOnly First, DateOnly Last, bool IsRunning, ValueParts Opening, decimal Revalued, BooksView Closing);

/// <param name="Quantity">Milligrams or pieces.</param>
public sealed record MaterialBookRow(Guid MaterialId, string Name, Core.Materials.MaterialKind Kind, StockUnit Unit, long Quantity, decimal Cost, decimal WrittenDown)
{
    public decimal Value => Cost - WrittenDown;
}

/// <param name="State">As it is now.</param>
public sealed record BatchBookRow(string Code, string ScentName, BatchState State, decimal Value);

/// <param name="FormulaId">Null for a kit.</param>
public sealed record ProductBookRow(string Key, Guid? FormulaId, string Scent, string SizeName, int Units, decimal Cost, decimal WrittenDown)
{
    public string Name => $"{Scent}, {SizeName}";
    public decimal Value => Cost - WrittenDown;
}

/// <param name="Amount">What it is written down by in all, of the quantity there was.</param>
public sealed record WriteDownRow(string What, decimal Quantity, StockUnit Unit, decimal Cost, decimal Amount, string Reason, string Initials, DateTimeOffset At);
