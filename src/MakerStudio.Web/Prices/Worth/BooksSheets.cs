using System.Globalization;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Prices.Worth;

/// <summary>The tables of the books and of a year end as files, with the figures as they are printed.</summary>
internal static class BooksSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        const string books = "/prices/books/", yearEnd = "/prices/year-end/";
        app.MapSheet(books + "year", "books year", asked => BooksAsync(asked, Year));
        app.MapSheet(books + "materials", "books materials", asked => BooksAsync(asked, (a, y) => Materials(a, y.Closing)));
        app.MapSheet(books + "in-work", "books in work", asked => BooksAsync(asked, (a, y) => InWork(a, y.Closing)));
        app.MapSheet(books + "finished", "books finished", asked => BooksAsync(asked, (a, y) => Finished(a, y.Closing)));
        app.MapSheet(books + "write-downs", "write-downs", asked => BooksAsync(asked, (a, y) => WriteDowns(a, y.Closing)));
        app.MapSheet(yearEnd + "year", "year end", asked => YearEndAsync(asked, (a, v) => Year(a, v.Year)));
        app.MapSheet(yearEnd + "materials", "year end materials", asked => YearEndAsync(asked, (a, v) => Materials(a, v.Year.Closing)));
        app.MapSheet(yearEnd + "in-work", "year end in work", asked => YearEndAsync(asked, (a, v) => InWork(a, v.Year.Closing)));
        app.MapSheet(yearEnd + "places", "year end finished", asked => YearEndAsync(asked, Places));
        app.MapSheet(yearEnd + "sold", "year end cost of sales", asked => YearEndAsync(asked, Sold));
        app.MapSheet(yearEnd + "expensed", "year end expensed", asked => YearEndAsync(asked, Expensed));
        app.MapSheet(yearEnd + "write-downs", "year end write-downs", asked => YearEndAsync(asked, (a, v) => WriteDowns(a, v.Year.Closing)));
    }

    private static async Task<Sheet?> BooksAsync(SheetAsked asked, Func<SheetAsked, YearView, Sheet> sheet) =>
        sheet(asked, await asked.Get<Books>().YearToAsync(asked.QueryDay("of"), asked.Cancel));

    private static async Task<Sheet?> YearEndAsync(SheetAsked asked, Func<SheetAsked, YearEndView, Sheet> sheet) =>
        sheet(asked, await asked.Get<Books>().YearEndAsync(asked.QueryDay("year"), asked.Cancel));

    private static Sheet Year(SheetAsked asked, YearView year) => new SheetOf<PrintedYearLine>()
        .Text("Line", l => l.Name).Number($"Opening {year.First:yyyy-MM-dd} ({asked.Currency})", l => l.Opening).Number($"In the year ({asked.Currency})", l => l.InTheYear)
        .Number($"{(year.IsRunning ? "Now" : "Closing")} {year.Closing.AsOfDay:yyyy-MM-dd} ({asked.Currency})", l => l.Closing).Of(BooksPrinted.Year(year).Where(l => !l.IsTotal), asked.Zone);

    private static Sheet Materials(SheetAsked asked, BooksView view) => new SheetOf<(MaterialBookRow Row, PrintedWorth Worth)>()
        .Text("Material", m => m.Row.Name).Number("Lots (each)", m => m.Row.Lots.Count).Number("Quantity", m => new StockAmount(m.Row.Quantity, m.Row.Unit).Display)
        .Text("Unit", m => Shell.Written.Unit(m.Row.Unit)).Worth(asked.Currency, m => m.Worth)
        .Of(view.Materials.Zip(BooksPrinted.Rows(view.Materials.Select(m => (m.Cost, m.WrittenDown)), view.Check.Shown.Materials)), asked.Zone);

    private static Sheet InWork(SheetAsked asked, BooksView view) => new SheetOf<(BatchBookRow Row, decimal Value)>()
        .Text("Batch", b => b.Row.Code).Text("Formula", b => b.Row.ScentName).Text("Stage", b => BatchStates.Name(b.Row.State)).Moment("In cure since", b => b.Row.Since)
        .Number($"Value ({asked.Currency})", b => b.Value).Of(view.InWork.Zip(BooksPrinted.Amounts(view.InWork.Select(b => b.Value), view.Check.Shown.WorkInProgress)), asked.Zone);

    private static Sheet Finished(SheetAsked asked, BooksView view) => new SheetOf<(ProductBookRow Row, PrintedWorth Worth)>()
        .Text("Formula", f => f.Row.Scent).Text("Size", f => f.Row.SizeName).Number("Batches (each)", f => f.Row.Lots.Count).Number("Units (each)", f => f.Row.Units).Worth(asked.Currency, f => f.Worth)
        .Of(view.Finished.Zip(BooksPrinted.Rows(view.Finished.Select(f => (f.Cost, f.WrittenDown)), view.Check.Shown.Finished)), asked.Zone);

    private static Sheet Places(SheetAsked asked, YearEndView view) => new SheetOf<(PlaceBookRow Row, PrintedWorth Worth)>()
        .Text("Place", p => p.Row.Place).Text("Formula", p => p.Row.Scent).Text("Size", p => p.Row.SizeName).Text("Batch", p => p.Row.Code).Number("Units (each)", p => p.Row.Units)
        .Worth(asked.Currency, p => p.Worth)
        .Of(view.Places.Zip(BooksPrinted.Rows(view.Places.Select(p => (p.Cost, p.WrittenDown)), view.Year.Closing.Check.Shown.Finished)), asked.Zone);

    private static Sheet Sold(SheetAsked asked, YearEndView view) => new SheetOf<(SoldBookRow Row, decimal Cost)>()
        .Text("Formula", s => s.Row.Scent).Text("Size", s => s.Row.SizeName).Number("Units (each)", s => s.Row.Units).Number($"Cost of sales ({asked.Currency})", s => s.Cost)
        .Of(view.Sold.Zip(BooksPrinted.Amounts(view.Sold.Select(s => s.Cost), BooksPrinted.InTheYear(view.Year).CostOfSales)), asked.Zone);

    private static Sheet Expensed(SheetAsked asked, YearEndView view) => new SheetOf<(ExpensedBookRow Row, decimal Amount)>()
        .Text("Of", e => e.Row.Of).Text("Why", e => e.Row.Why).Number($"Expensed ({asked.Currency})", e => e.Amount)
        .Of(view.Expensed.Zip(BooksPrinted.Amounts(view.Expensed.Select(e => e.Amount), BooksPrinted.InTheYear(view.Year).Expensed)), asked.Zone);

    private static Sheet WriteDowns(SheetAsked asked, BooksView view) => new SheetOf<WriteDownRow>()
        .Text("What", w => w.What).Text("Lot", w => w.Lot).Moment("When", w => w.At).Text("By", w => w.Initials)
        .Number("Quantity", w => new StockAmount((long)w.Quantity, w.Unit).Display).Text("Unit", w => Shell.Written.Unit(w.Unit))
        .Number($"Cost then ({asked.Currency})", w => w.Cost).Number($"Down by ({asked.Currency})", w => w.Amount).Number($"Still held ({asked.Currency})", w => w.Held)
        .Text("Why", w => w.Reason).Of(view.WriteDowns, asked.Zone);

    private static SheetOf<T> Worth<T>(this SheetOf<T> sheet, string currency, Func<T, PrintedWorth> worth) => sheet
        .Number($"Cost ({currency})", r => worth(r).Cost).Number($"Written down ({currency})", r => worth(r).WrittenDown).Number($"Value ({currency})", r => worth(r).Value);
}
