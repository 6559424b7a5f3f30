using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Storeroom;

/// <summary>What materials cost, what is asked for them and how long they last, as files.</summary>
internal static class MaterialPriceSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/storeroom/materials/{id:guid}/prices", "prices", async asked => await ViewAsync(asked) is { } view
            ? Paid(asked.Currency, view.Material).Of(
                view.ToFollow.Select(e => new PriceLine(null, e)).Concat(view.Paid.Select(p => new PriceLine(p, null))), asked.Zone)
            : null);
        app.MapSheet("/storeroom/materials/{id:guid}/prices/asked", "price comparison", async asked => await ViewAsync(asked) is { } view
            ? Asked(asked.Currency, view.Material).Of(Rows(view, asked.QueryNumber("use"), asked.QueryNumber("life")), asked.Zone)
            : null);
        app.MapSheet("/storeroom/cover", "stock cover", async asked =>
            Cover().Of(StoreroomWords.ByCover(await asked.Get<Stock>().ListAsync(asked.Cancel)), asked.Zone));
    }

    private static SheetOf<StockRow> Cover() => new SheetOf<StockRow>()
        .Text("Material", r => r.Name).Text("Stocked in", r => Shell.Written.Unit(r.Unit))
        .Number("Available (g or each)", r => Shown(r.Available, r.Unit)).Number("On its way (g or each)", r => Shown(r.OnItsWay?.Units, r.Unit)).Number("Use a day (g or each)", r => r.UsePerDay)
        .Number("Cover (days)", r => r.CoverDays).Number("Cover (months)", r => r.CoverMonths).Number("Lead time (days)", r => r.LeadDays)
        .Date("Order by", r => r.OrderBy).Text("Order today", r => r.OrderNow ? "yes" : "no");

    private static Task<MaterialPricesView?> ViewAsync(SheetAsked asked) =>
        asked.Get<MaterialPrices>().ViewAsync(asked.Id("id"), asked.Cancel);

    /// <summary>Compared first, smallest first; then those that cannot be.</summary>
    private static IEnumerable<AskedLine> Rows(MaterialPricesView view, decimal? use, decimal? life)
    {
        var compared = view.Compare(Math.Max(0m, use ?? view.Material.UsePerDay), life is > 0 and < int.MaxValue ? (int)life : view.Material.LifeDays);
        return (compared?.Rows ?? []).Select(r => new AskedLine(r.Asked, r.Is, r == compared!.Cheapest))
            .Concat(view.Breaks.Where(b => b.WhyNot is not null).Select(b => new AskedLine(b, null, false)));
    }

    private static SheetOf<PriceLine> Paid(string currency, PricedMaterial material) => new SheetOf<PriceLine>()
        .Text("Material", _ => material.Name)
        .Date("Received", l => l.Paid?.ReceivedOn ?? l.Estimate?.On).Text("Supplier", l => l.Paid?.Supplier)
        .Text("Delivery", l => l.Paid?.DeliveryCode).Text("Lot", l => l.Paid?.LotCode).Text("Lot is", l => l.Paid is { IsRejected: true } ? "rejected" : null)
        .Number("As invoiced", l => l.Paid?.QuantityTyped).Text("Unit", l => l.Paid is { } paid ? AmountUnits.Symbol(paid.Unit) : null)
        .Number($"Into stock ({Shell.Written.Unit(material.Unit)})", l => Shown(l.Paid?.Quantity ?? l.Estimate!.Milligrams, material.Unit))
        .Number($"Price ({currency})", l => l.Paid?.Price).Number($"Discount ({currency})", l => l.Paid?.Discount)
        .Number($"Freight share ({currency})", l => l.Paid?.FreightShare).Number($"Duty and surcharge ({currency})", l => l.Paid?.Charges)
        .Number($"Landed ({currency})", l => l.Paid?.LandedTotal)
        .Number(PerUnit("Landed", currency, material.Unit), l => PerKilogramOrPiece(l.Paid?.UnitCost ?? l.Estimate!.UnitCost, material.Unit))
        .Text("Estimate", l => l.Estimate is { } estimate ? $"receipt to follow, used in {estimate.BatchCode}" : null);

    private static SheetOf<AskedLine> Asked(string currency, PricedMaterial material) => new SheetOf<AskedLine>()
        .Text("Material", _ => material.Name).Text("Supplier", l => l.Asked.Supplier)
        .Number("Quantity", l => l.Asked.Quantity).Text("Unit", l => AmountUnits.Symbol(l.Asked.Unit))
        .Number($"Quantity ({Shell.Written.Unit(material.Unit)})", l => l.Asked.InStock)
        .Number($"Price of all ({currency})", l => l.Asked.PriceOfAll).Number($"Freight ({currency})", l => l.Asked.Freight).Number($"Duty and surcharges ({currency})", l => l.Asked.Charges)
        .Number($"Landed ({currency})", l => l.Asked.Landed)
        .Number(PerUnit("Landed", currency, material.Unit), l => l.Is is { } compared ? PerKilogramOrPiece(compared.UnitCost, material.Unit) : null)
        .Number($"Saves ({currency})", l => l.Is?.Saves).Number($"Ties up ({currency})", l => l.Is?.TiedUp)
        .Number("Lasts (days)", l => l.Is?.CoverDays).Text("Verdict", l => l.IsCheapest ? "cheapest" : l.Is is { OutlastsLife: true } ? "outlasts its life" : l.Asked.WhyNot)
        .Date("Asked on", l => l.Asked.AskedOn).Text("Noted by", l => l.Asked.Who).Moment("Noted", l => l.Asked.At).Text("Note", l => l.Asked.Note);

    private static string PerUnit(string what, string currency, StockUnit unit) => $"{what} ({currency} per {(unit == StockUnit.Gram ? "kg" : "piece")})";

    private sealed record PriceLine(PaidRow? Paid, EstimateRow? Estimate);

    private sealed record AskedLine(PriceBreakRow Asked, Core.Buying.ComparedOffer? Is, bool IsCheapest);
}
