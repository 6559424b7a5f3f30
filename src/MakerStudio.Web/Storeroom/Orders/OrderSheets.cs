using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Storeroom;

/// <summary>Orders and what is to be ordered, as files.</summary>
internal static class OrderSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/storeroom/to-order", "what to order", async asked => ToOrder(asked.Currency).Of(await asked.Get<Purchasing>().ToOrderAsync(asked.Cancel), asked.Zone));
        app.MapSheet("/storeroom/orders", "orders", asked =>
            Task.FromResult<Sheet?>(Orders(asked.Currency).Of(asked.Get<Purchasing>().AllAsync(asked.Cancel), asked.Zone)));
        app.MapSheet("/storeroom/orders/{code}/lines", "order", async asked =>
            await asked.Get<Purchasing>().FindAsync(asked.Route("code"), asked.Cancel) is { } page ? Lines(asked.Currency).Of(page.Lines, asked.Zone) : null);
    }

    private static SheetOf<ToOrderRow> ToOrder(string currency) => new SheetOf<ToOrderRow>()
        .Text("Material", r => r.Stock.Name).Text("Stocked in", r => Written.Unit(r.Stock.Unit))
        .Text("Supplier", r => r.Stock.From?.Supplier).Text("Supplier code", r => r.Stock.From?.Code)
        .Number("Available (g or each)", r => Shown(r.Stock.Available, r.Stock.Unit))
        .Number("On its way (g or each)", r => Shown(r.Stock.OnItsWay?.Units, r.Stock.Unit)).Date("Expected", r => r.Stock.OnItsWay?.ExpectedOn)
        .Number("Use a day (g or each)", r => r.Stock.UsePerDay).Number("Lead time (days)", r => r.Stock.LeadDays)
        .Number("Cover (days)", r => r.Stock.CoverDays).Number("Cover (months)", r => r.Stock.CoverDays / Core.Stock.Reorder.DaysPerMonth)
        .Number("Order at (g or each)", r => Shown(r.Stock.Advice?.Point.Units, r.Stock.Unit))
        .Number("Safety stock (g or each)", r => Shown(r.Stock.SafetyStock, r.Stock.Unit))
        .Number("Safety stock suggested (g or each)", r => Shown(r.SafetySuggestion, r.Stock.Unit))
        .Text("Due", r => r.Stock.OrderNow ? "yes" : "no").Date("Order by", r => r.Stock.OrderBy)
        .Number("Order (g or each)", r => Shown(r.Stock.Advice?.Quantity.Units, r.Stock.Unit))
        .Number($"Last price ({currency} per unit)", r => r.LastBuy?.UnitPrice).Text("Unit", r => r.LastBuy is { } last ? AmountUnits.Symbol(last.Unit) : null);

    private static SheetOf<OrderRow> Orders(string currency) => new SheetOf<OrderRow>()
        .Text("Order", r => r.Code).Text("Supplier", r => r.Supplier).Text("State", r => StoreroomWords.State(r.State)).Date("Ordered", r => r.OrderedOn).Date("Expected", r => r.ExpectedOn)
        .Number("Lines", r => r.LineCount).Number("Lines open", r => r.State is OrderState.Closed ? 0 : r.LinesOpen).Number($"In all ({currency})", r => r.Total)
        .Text("Numbered by", r => r.SentBy).Moment("Numbered", r => r.SentAt).Text("Closed because", r => r.ClosedBecause);

    private static SheetOf<OrderLineRow> Lines(string currency) => new SheetOf<OrderLineRow>()
        .Text("Material", r => r.Material).Text("Supplier code", r => r.SupplierCode)
        .Number("Ordered", r => r.Quantity).Text("Unit", r => AmountUnits.Symbol(r.Unit)).Number($"Price ({currency} per unit)", r => r.UnitPrice)
        .Number("Discount (%)", r => r.Discount * 100m).Number($"Line ({currency})", r => r.Total)
        .Number("Ordered (g or each)", r => Shown(r.Units, r.StockedIn)).Number("Came (g or each)", r => Shown(r.Received, r.StockedIn))
        .Number("Still to come (g or each)", r => Shown(r.Outstanding, r.StockedIn));
}
