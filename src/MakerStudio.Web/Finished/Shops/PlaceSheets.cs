using MakerStudio.Core.Exchange;
using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Finished.Shops;

/// <summary>Places, what stands there, and what shops told, as files.</summary>
internal static class PlaceSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/finished/places", "places", async asked => Everywhere.Of(await asked.Get<Places>().ListAsync(asked.Cancel), asked.Zone));
        app.MapSheet("/finished/places/{id:guid}/held", "at a place", async asked =>
            await asked.Get<Consignments>().FindAsync(asked.Id("id"), asked.Cancel) is { } view ? Held(view.Place, asked.Currency).Of(view.Held, asked.Zone) : null);
        app.MapSheet("/finished/places/{id:guid}/reports", "reports of a shop", async asked =>
            await asked.Get<Consignments>().FindAsync(asked.Id("id"), asked.Cancel) is { } view ? Reports(view.Place, asked.Currency).Of(view.Reports, asked.Zone) : null);
        app.MapSheet("/finished/places/{id:guid}/entries", "entries", async asked =>
            await asked.Get<Places>().FindAsync(asked.Id("id"), asked.Cancel) is { } place
                ? BatchSheets.Entries.Of(await asked.Get<FinishedGoods>().EntriesAsync(placeId: place.Id, take: null, cancel: asked.Cancel), asked.Zone)
                : null);
    }

    private static readonly SheetOf<PlaceRow> Everywhere = new SheetOf<PlaceRow>()
        .Text("Place", r => r.Name).Text("Kind", r => PlaceWords.Kind(r.Kind)).Text("Closed", r => r.IsClosed ? "yes" : "no").Number("Available there (each)", r => r.Available)
        .Number("Commission (% of net)", r => r.CommissionPercent).Text("Pays for broken", r => r.Kind != PlaceKind.Consignment ? null : r.PaysBroken ? "yes" : "no")
        .Text("Contact", r => r.Contact).Text("Phone", r => r.Phone).Text("E-mail", r => r.Email).Text("Address", r => r.Address);

    private static SheetOf<HeldRow> Held(PlaceRow place, string currency) => new SheetOf<HeldRow>()
        .Text("Place", _ => place.Name).Text("Batch", r => r.Goods.Code).Text("Formula", r => r.Goods.Product.ScentName).Text("Size", r => r.Goods.Product.SizeName)
        .Number("Brought (each)", r => r.Placed).Number("Reported sold (each)", r => r.Sold).Number("Broken (each)", r => r.Broken).Number("Brought back (each)", r => r.SentBack)
        .Number("There now (each)", r => r.Goods.Count).Date("Best before", r => r.Goods.BestBefore)
        .Number($"Net of one ({currency})", r => r.NetPrice).Number("Commission (% of net)", r => place.Kind == PlaceKind.Consignment ? r.CommissionPercent : null);

    private static SheetOf<ShopReportRow> Reports(PlaceRow place, string currency) => new SheetOf<ShopReportRow>()
        .Text("Place", _ => place.Name).Date("On", r => r.ReportedOn).Number("Sold (each)", r => r.Sold).Number("Broken (each)", r => r.Broken)
        .Number("Sent back (each)", r => r.SentBack).Number("Left (each)", r => r.Left)
        .Number($"For sold ({currency})", r => r.ForSold).Number($"For broken ({currency})", r => r.ForBroken)
        .Text("Sale", r => r.SaleCode).Text("Taken back", r => r.IsTakenBack ? "yes" : "no").Text("Note", r => r.Note).Text("By", r => r.Initials);
}
