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
        var year = YearBooks.Of(await BookRows.FactsAsync(db, cancel), await BookRows.ProductOfAsync(db, cancel), basis, basis.Years.Of(of ?? basis.Today), upTo);
        return year.View(await ViewAsync(db, basis, year.Closing, year.AsOf, cancel));
    }

    internal static async Task<BookBasis> BasisAsync(StudioDb db, TimeProvider clock, CancellationToken cancel)
    {
        var studio = await db.Studio.Select(s => new { s.Name, s.TimeZone, s.Currency }).SingleAsync(cancel);
        var rules = PriceBook.RowOf(await db.PriceRules.SingleOrDefaultAsync(cancel));
        var zone = TimeZoneInfo.FindSystemTimeZoneById(studio.TimeZone);
        var now = Command.ToMicroseconds(clock.GetUtcNow());
        var choices = await db.BookMethods.Select(m => new MethodFrom(m.First, m.Method)).ToListAsync(cancel);
        var starts = await db.BookYears.OrderBy(y => y.Id).Select(y => new { y.First, y.At }).ToListAsync(cancel);
        var changes = starts.Select(s => (s.First, StudioTime.Today(s.At, zone))).Aggregate<(DateOnly First, DateOnly Said), IReadOnlyList<DateOnly>>([], (all, next) => WithStart(all, next.First, next.Said));
        return new BookBasis(studio.Currency, now, StudioTime.Today(now, zone), rules.YearMonth, rules.YearDay, changes, zone, choices);
    }

    private static async Task<BooksView> ViewAsync(StudioDb db, BookBasis basis, BookValue value, DateTimeOffset asOf, CancellationToken cancel)
    {
        var materials = await db.Materials.Select(m => new { m.Id, m.Name, m.Kind, m.StockedIn }).ToDictionaryAsync(m => m.Id, cancel);
        var names = await BookRows.ProductsAsync(db, cancel);
        var codes = await BookRows.CodesAsync(db, cancel);
        var year = basis.Years.Of(asOf);
        return new BooksView(
            basis.Currency, asOf, StudioTime.Today(asOf, basis.Zone), basis.Today, value.Method, year.First, year.Last, basis.Choices.Any(c => c.First <= year.First),
            [.. value.Materials.Select(m => (Of: materials[m.Key], Is: m.Value)).OrderBy(m => m.Of.Name, StringComparer.CurrentCulture)
                .Select(m => new MaterialBookRow(m.Of.Id, m.Of.Name, m.Of.Kind, m.Of.StockedIn, (long)m.Is.Quantity, m.Is.Cost, m.Is.WrittenDown, LotsOf(m.Is, l => l)))],
            await InWorkAsync(db, value, asOf, cancel),
            [.. value.Products.Where(p => names.ContainsKey(p.Key)).Select(p => (Of: names[p.Key], p.Key, Is: p.Value))
                .OrderBy(p => p.Of.Scent, StringComparer.CurrentCulture).ThenBy(p => p.Of.SizeName, StringComparer.CurrentCulture)
                .Select(p => new ProductBookRow(p.Key, p.Of.FormulaId, p.Of.Scent, p.Of.SizeName, (int)p.Is.Quantity, p.Is.Cost, p.Is.WrittenDown, LotsOf(p.Is, l => codes.GetValueOrDefault(l, l))))],
            value.Parts, await BookRows.WriteDownsAsync(db, asOf, value.HeldByDown, cancel));
    }

    private static List<LotBookRow> LotsOf(BookItem item, Func<string, string> code) =>
        [.. item.Lots.Select(l => new LotBookRow(l.Lot, code(l.Lot), l.Quantity, l.Cost, l.WrittenDown)).OrderBy(l => l.Code, StringComparer.Ordinal)];

    /// <summary>Batches that are weighed and not filled, as they stood at that moment, by the last start of their clocks.</summary>
    private static async Task<List<BatchBookRow>> InWorkAsync(StudioDb db, BookValue value, DateTimeOffset asOf, CancellationToken cancel)
    {
        var ids = value.Books.WorkInProgress.Select(w => w.Id).ToArray();
        var batches = await db.Batches.Where(b => ids.Contains(b.Id)).Select(b => new { b.Id, b.Code, b.ScentName, b.ClockStartedAt, b.ReadyAt }).ToDictionaryAsync(b => b.Id, cancel);
        return
        [
            .. value.Books.WorkInProgress.Select(w => (Of: batches[w.Id], w.Value)).OrderBy(w => w.Of.Code, StringComparer.Ordinal).Select(w => new BatchBookRow(
                w.Of.Code, w.Of.ScentName, !(w.Of.ClockStartedAt <= asOf) ? BatchState.Weighing : w.Of.ReadyAt <= asOf ? BatchState.Ready : BatchState.Resting,
                w.Of.ClockStartedAt <= asOf ? w.Of.ClockStartedAt : null, w.Value)),
        ];
    }
}

/// <summary>What values are worked out by.</summary>
/// <param name="YearMonth">Years begin in it, until the first of the changes.</param>
/// <param name="YearChanges">First days of years that begin on another day than those before.</param>
internal sealed record BookBasis(
    string Currency, DateTimeOffset Now, DateOnly Today, int YearMonth, int YearDay, IReadOnlyList<DateOnly> YearChanges, TimeZoneInfo Zone, IReadOnlyList<MethodFrom> Choices)
{
    public FinancialYears Years { get; } = new(YearMonth, YearDay, Zone, YearChanges);

    public DateTimeOffset EndOf(DateOnly day) => Command.ToMicroseconds(Years.EndOf(day));

    public ValuationMethod MethodAt(DateTimeOffset moment) => MethodOfYears.In(Years.Of(moment), Choices);
}

/// <summary>A financial year under its method: what it opened with, and what it closed with or stands at.</summary>
/// <param name="CarriedOver">The opening under the method of the year before.</param>
internal sealed record YearBooks(FinancialYear Year, bool IsRunning, DateTimeOffset AsOf, BookValue Opening, BookValue CarriedOver, BookValue Closing)
{
    /// <param name="upTo">No later than the end of that day; null is the end of the year, or now.</param>
    public static YearBooks Of(BookFacts facts, IReadOnlyDictionary<Guid, string> products, BookBasis basis, FinancialYear year, DateOnly? upTo = null)
    {
        var method = MethodOfYears.In(year, basis.Choices);
        var (opens, ends) = (basis.EndOf(year.First.AddDays(-1)), basis.EndOf(year.Last));
        var until = upTo is { } day ? basis.EndOf(day) : ends;
        var asOf = until < basis.Now ? until : basis.Now;
        var opening = BookValue.Of(facts, products, method, opens, basis.Years);
        var before = MethodOfYears.In(basis.Years.Of(year.First.AddDays(-1)), basis.Choices);
        var carriedOver = before == method ? opening : BookValue.Of(facts, products, before, opens, basis.Years);
        return new YearBooks(year, ends >= basis.Now, asOf, opening, carriedOver, BookValue.Of(facts, products, method, asOf, basis.Years));
    }

    public YearView View(BooksView closing) => new(Year.First, Year.Last, IsRunning, Opening.Parts, Stock(Opening) - Stock(CarriedOver), closing);

    private static decimal Stock(BookValue value) => value.Parts.Materials + value.Parts.WorkInProgress + value.Parts.Finished;
}

/// <param name="MethodIsChosen">By somebody for this year or one before; else it is the usual one.</param>
/// <param name="AsOfDay">In the studio's time zone.</param>
/// <param name="Parts">Not rounded.</param>
public sealed record BooksView(
    string Currency, DateTimeOffset AsOf, DateOnly AsOfDay, DateOnly Today, ValuationMethod Method, DateOnly YearFirst, DateOnly YearLast, bool MethodIsChosen,
    IReadOnlyList<MaterialBookRow> Materials, IReadOnlyList<BatchBookRow> InWork, IReadOnlyList<ProductBookRow> Finished, ValueParts Parts,
    IReadOnlyList<WriteDownRow> WriteDowns)
{
    public ConservationCheck Check => Conservation.Check(Parts);
}

/// <param name="Opening">Parts at the end of the day before, under this year's method.</param>
/// <param name="Revalued">What a change of method did to the opening stock; 0 when there was none.</param>
/// <param name="Closing">At its last day, or now while it runs.</param>
public sealed record YearView(DateOnly First, DateOnly Last, bool IsRunning, ValueParts Opening, decimal Revalued, BooksView Closing);

/// <summary>One lot of a material, one batch of a product, one lot of kits.</summary>
/// <param name="Lot">What a request names it by.</param>
/// <param name="Quantity">Milligrams, pieces or units.</param>
/// <param name="Cost">Under a method that does not keep lots apart: its part by quantity.</param>
public sealed record LotBookRow(string Lot, string Code, decimal Quantity, decimal Cost, decimal WrittenDown);

/// <param name="Quantity">Milligrams or pieces.</param>
public sealed record MaterialBookRow(
    Guid MaterialId, string Name, Core.Materials.MaterialKind Kind, StockUnit Unit, long Quantity, decimal Cost, decimal WrittenDown, IReadOnlyList<LotBookRow> Lots)
{
    public decimal Value => Cost - WrittenDown;
}

/// <param name="State">As it was then: weighing, resting or ready.</param>
/// <param name="Since">Its cure began; null while it is weighed.</param>
public sealed record BatchBookRow(string Code, string ScentName, BatchState State, DateTimeOffset? Since, decimal Value);

/// <param name="FormulaId">Null for a kit.</param>
public sealed record ProductBookRow(
    string Key, Guid? FormulaId, string Scent, string SizeName, int Units, decimal Cost, decimal WrittenDown, IReadOnlyList<LotBookRow> Lots)
{
    public string Name => $"{Scent}, {SizeName}";
    public decimal Value => Cost - WrittenDown;
}

/// <param name="Lot">Code of the lot, batch or kits; null in old entries, which mean all there was.</param>
/// <param name="Amount">What it is written down by in all, of the quantity there was.</param>
/// <param name="Held">What of it still lies in the stock: the rest left with it, was taken back, or a later one took its place.</param>
public sealed record WriteDownRow(
    string What, string? Lot, decimal Quantity, StockUnit Unit, decimal Cost, decimal Amount, decimal Held, string Reason, string Initials, DateTimeOffset At);
