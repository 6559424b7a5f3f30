using MakerStudio.Core.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Finished.Selling;

/// <summary>Sales and their lines as files.</summary>
internal static class SaleSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/finished/sales", "sales", asked =>
            Task.FromResult<Sheet?>(Sold(asked.Currency).Of(asked.Get<Sales>().AllAsync(asked.Cancel), asked.Zone)));
        app.MapSheet("/finished/customers", "customers", asked =>
            Task.FromResult<Sheet?>(Known().Of(asked.Get<Customers>().AllAsync(asked.Cancel), asked.Zone)));
        app.MapSheet("/finished/sales/lines", "sale lines", asked =>
            Task.FromResult<Sheet?>(Lines(asked.Currency).Of(asked.Get<Sales>().LinesAsync(null, asked.Cancel), asked.Zone)));
        app.MapSheet("/finished/sales/{code}/lines", "sale", async asked =>
            await asked.Get<Sales>().FindAsync(asked.Route("code"), asked.Cancel) is { } view
                ? Lines(asked.Currency).Of(asked.Get<Sales>().LinesAsync(view.Sale.Code, asked.Cancel), asked.Zone)
                : null);
    }

    private static SheetOf<CustomerRow> Known() => new SheetOf<CustomerRow>()
        .Text("Name", r => r.Name).Text("E-mail", r => r.Email).Text("Phone", r => r.Phone).Text("Address", r => r.Address).Text("Note", r => r.Note).Date("Last sale", r => r.LastSale);

    private static string Kind(SaleKind kind) => kind switch { SaleKind.Sale => "sale", SaleKind.Return => "return", _ => "reversal" };

    private static SheetOf<SaleRow> Sold(string currency) => new SheetOf<SaleRow>()
        .Text("Sale", r => r.Code).Text("Kind", r => Kind(r.Kind)).Date("On", r => r.SoldOn).Text("Channel", r => r.Channel).Text("Order", r => r.Reference)
        .Text("Customer", r => r.Customer).Text("From", r => r.Place).Number("Units (each)", r => r.Units)
        .Number($"Net ({currency})", r => r.Net).Number($"Fees ({currency})", r => r.Fees)
        .Text("Taken back", r => r.IsTakenBack ? "yes" : "no").Text("Sent", r => r.IsSent ? "yes" : "no").Moment("Recorded", r => r.At);

    private static SheetOf<SoldLineRow> Lines(string currency) => new SheetOf<SoldLineRow>()
        .Text("Sale", r => r.Sale).Text("Kind", r => Kind(r.Kind)).Date("On", r => r.SoldOn).Text("Channel", r => r.Channel).Text("Order", r => r.Reference)
        .Text("Customer", r => r.Customer).Text("What", r => r.Line.Name).Text("Batch or kits", r => r.Line.Code).Number("Units (each)", r => r.Line.Quantity)
        .Number($"Tag ({currency})", r => r.Line.Tag).Number($"Net of one ({currency})", r => r.Line.NetPrice).Number($"Cost of one ({currency})", r => r.Line.UnitCost)
        .Text("Broken and paid for", r => r.Line.IsForBroken ? "yes" : "no").Number("Came back (each)", r => r.Line.Returned).Text("Why", r => r.Line.Reason);
}
