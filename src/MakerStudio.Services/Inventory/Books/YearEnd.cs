using MakerStudio.Core.Finished;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

public sealed partial class Books
{
    /// <summary>Everything about one financial year on one page: as of its last moment, or as it stands while it runs.</summary>
    /// <param name="of">Any day of the year, in the studio's time zone; null is the year that runs.</param>
    public async Task<YearEndView> YearEndAsync(DateOnly? of = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        await using var still = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        var basis = await BasisAsync(db, store.Clock, cancel);
        var facts = await BookRows.FactsAsync(db, cancel);
        var products = await BookRows.ProductOfAsync(db, cancel);
        var years = YearsOf(facts, basis);
        var asked = basis.Years.Of(of ?? basis.Today);
        var year = YearBooks.Of(facts, products, basis, years.Contains(asked) ? asked : years[0]);
        var chosen = await (
            from method in db.BookMethods
            join person in db.Users on method.PersonId equals person.Id
            where method.First <= year.Year.First
            orderby method.First descending
            select new MethodChosen(method.First, person.DisplayName, method.At)).FirstOrDefaultAsync(cancel);
        var open = facts.Batches.SelectMany(b => b.Estimates).Where(e => e.At <= year.AsOf && !(e.MatchedAt <= year.AsOf)).ToList();
        return new YearEndView(
            year.View(await ViewAsync(db, basis, year.Closing, year.AsOf, cancel)), years, chosen, open.Count, open.Sum(e => e.Amount),
            await YearEndRows.PlacesAsync(db, year.Closing, products, year.AsOf, cancel), await YearEndRows.SoldAsync(db, year, products, cancel), await YearEndRows.ExpensedAsync(db, year, cancel));
    }

    /// <summary>From the year of the first entry to the one that runs, newest first.</summary>
    private static List<FinancialYear> YearsOf(BookFacts facts, BookBasis basis)
    {
        var running = basis.Years.Of(basis.Today);
        var years = new List<FinancialYear> { running };
        var first = facts.Movements.Count == 0 ? running : basis.Years.Of(facts.Movements.Min(m => m.At));
        while (years[^1].First > first.First)
        {
            years.Add(basis.Years.Of(years[^1].First.AddDays(-1)));
        }

        return years;
    }
}

/// <param name="Years">That can be looked at, newest first.</param>
/// <param name="Chosen">Null while the usual method is used.</param>
/// <param name="OpenReceipts">Materials that were used and not received yet, at an estimate.</param>
public sealed record YearEndView(
    YearView Year, IReadOnlyList<FinancialYear> Years, MethodChosen? Chosen, int OpenReceipts, decimal OpenEstimate,
    IReadOnlyList<PlaceBookRow> Places, IReadOnlyList<SoldBookRow> Sold, IReadOnlyList<ExpensedBookRow> Expensed);

/// <param name="From">First day of the year from which on it holds.</param>
public sealed record MethodChosen(DateOnly From, string By, DateTimeOffset At);

/// <summary>Units of a batch, or kits, at a place: available or on hold.</summary>
/// <param name="Product">"Fig, 100 mL".</param>
public sealed record PlaceBookRow(string Place, string Scent, string SizeName, string Code, int Units, decimal Cost, decimal WrittenDown);

/// <summary>A product sold in the year, less what came back, at its cost.</summary>
public sealed record SoldBookRow(string Scent, string SizeName, int Units, decimal Cost);

/// <summary>Money expensed in the year for one reason; below 0 where more was taken back than expensed.</summary>
/// <param name="Of">Materials, batches, units, kits or write-downs.</param>
public sealed record ExpensedBookRow(string Of, string Why, decimal Amount);

/// <summary>The tables that only a year end has.</summary>
internal static class YearEndRows
{
    /// <summary>By place, product and batch; the money of a batch by the units of it at each place.</summary>
    public static async Task<IReadOnlyList<PlaceBookRow>> PlacesAsync(
        StudioDb db, BookValue value, IReadOnlyDictionary<Guid, string> productOf, DateTimeOffset asOf, CancellationToken cancel)
    {
        var there = (await db.UnitMovements.Where(m => m.At <= asOf && (m.Status == UnitStatus.Saleable || m.Status == UnitStatus.OnHold))
            .GroupBy(m => new { m.BatchId, m.PlaceId, m.Place!.Name }).Select(g => new { g.Key.BatchId, g.Key.PlaceId, g.Key.Name, Units = g.Sum(m => m.Change) })
            .Where(g => g.Units != 0).ToListAsync(cancel)).ToLookup(g => g.BatchId);
        var names = await BookRows.ProductsAsync(db, cancel);
        var codes = await BookRows.CodesAsync(db, cancel);
        var shelf = await db.Places.Where(p => p.Id == Place.StudioId).Select(p => p.Name).SingleAsync(cancel);
        var lots = value.Products.Values.SelectMany(p => p.Lots).ToDictionary(l => l.Lot);
        var rows = new List<(bool IsAway, PlaceBookRow Row)>();
        foreach (var batch in value.Books.Finished.Where(f => names.ContainsKey(productOf.GetValueOrDefault(f.Id, ""))))
        {
            var (name, lot) = (names[productOf[batch.Id]], BookValue.LotOf(batch.Id));
            var (cost, down) = (new ValuePool(batch.Quantity, batch.Value), new ValuePool(batch.Quantity, lots[lot].WrittenDown));
            // Kits stand on the studio's shelf; nothing moves them from there but their sale.
            var places = name.KitId is null ? there[batch.Id].Select(p => (Id: p.PlaceId, p.Name, p.Units)) : [(Place.StudioId, shelf, (int)batch.Quantity)];
            foreach (var place in places)
            {
                (var itsCost, cost) = cost.Take(Math.Min(place.Units, cost.Quantity));
                (var itsDown, down) = down.Take(Math.Min(place.Units, down.Quantity));
                rows.Add((place.Id != Place.StudioId, new PlaceBookRow(place.Name, name.Scent, name.SizeName, codes.GetValueOrDefault(lot, lot), place.Units, itsCost.Value, itsDown.Value)));
            }
        }

        return [.. rows.OrderBy(r => r.IsAway).ThenBy(r => r.Row.Place, StringComparer.CurrentCulture).ThenBy(r => r.Row.Scent, StringComparer.CurrentCulture)
            .ThenBy(r => r.Row.SizeName, StringComparer.CurrentCulture).ThenBy(r => r.Row.Code, StringComparer.Ordinal).Select(r => r.Row)];
    }

    public static async Task<IReadOnlyList<SoldBookRow>> SoldAsync(StudioDb db, YearBooks year, IReadOnlyDictionary<Guid, string> productOf, CancellationToken cancel)
    {
        var names = await BookRows.ProductsAsync(db, cancel);
        var before = year.Opening.Books.Sold.ToDictionary(s => s.Id);
        return
        [
            .. year.Closing.Books.Sold.GroupBy(s => productOf.GetValueOrDefault(s.Id, ""))
                .Select(g => (Name: names.GetValueOrDefault(g.Key) ?? new(null, "Other", ""),
                    Units: g.Sum(s => s.Quantity - (before.GetValueOrDefault(s.Id)?.Quantity ?? 0m)), Cost: g.Sum(s => s.Value - (before.GetValueOrDefault(s.Id)?.Value ?? 0m))))
                .Where(s => s.Units != 0 || s.Cost != 0)
                .OrderBy(s => s.Name.Scent, StringComparer.CurrentCulture).ThenBy(s => s.Name.SizeName, StringComparer.CurrentCulture)
                .Select(s => new SoldBookRow(s.Name.Scent, s.Name.SizeName, (int)s.Units, s.Cost)),
        ];
    }

    /// <summary>By why. A cost learned later changes what was expensed before the year, too; that is counted here.</summary>
    public static async Task<IReadOnlyList<ExpensedBookRow>> ExpensedAsync(StudioDb db, YearBooks year, CancellationToken cancel)
    {
        var (before, now) = (year.Opening.Books.Expenses, year.Closing.Books.Expenses);
        var ids = before.Movements.Keys.Union(now.Movements.Keys).ToArray();
        var why = await db.Movements.Where(m => ids.Contains(m.Id)).Select(m => new { m.Id, m.Kind, m.Reason }).ToListAsync(cancel);
        var materials = why.GroupBy(m => m.Reason is { } reason ? LotWords.Reason(reason) : LotWords.Kind(m.Kind))
            .Select(g => new ExpensedBookRow("Materials", g.Key, g.Sum(m => now.Movements.GetValueOrDefault(m.Id) - before.Movements.GetValueOrDefault(m.Id))));
        var units = before.Units.Keys.Union(now.Units.Keys)
            .Select(k => new ExpensedBookRow("Units", Sentence(GoodsWords.Kind(k)), now.Units.GetValueOrDefault(k) - before.Units.GetValueOrDefault(k)));
        ExpensedBookRow[] others =
        [
            new("Batches", "Lost from the vessel, or given up", now.Batches - before.Batches),
            new("Kits", "Boxes of kits taken apart", now.KitBoxes - before.KitBoxes),
            new("Written down", "To what it will bring, less what was taken back or left with the stock", year.Closing.WrittenDown - year.Opening.WrittenDown),
        ];
        return [.. materials.Concat(units).Concat(others).Where(e => e.Amount != 0).OrderBy(e => e.Of, StringComparer.Ordinal).ThenBy(e => e.Why, StringComparer.CurrentCulture)];
    }

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
