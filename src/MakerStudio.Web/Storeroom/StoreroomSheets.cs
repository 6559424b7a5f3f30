using MakerStudio.Core.Exchange;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Storeroom;

/// <summary>The storeroom's tables as files.</summary>
internal static class StoreroomSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/storeroom/materials", "materials", async asked =>
        {
            var stock = (await asked.Get<Stock>().ListAsync(asked.Cancel)).ToDictionary(r => r.MaterialId);
            var forms = await asked.Get<Materials>().FormsAsync(asked.Cancel);
            return Materials(asked.Currency).Of(forms.Select(f => new MaterialLine(f, stock.GetValueOrDefault(f.MaterialId))), asked.Zone);
        });
        app.MapSheet("/storeroom/lots", "lots", async asked =>
            Lots(asked.Currency).Of(await asked.Get<Lots>().AllAsync(asked.Cancel), asked.Zone));
        app.MapSheet("/storeroom/lots/{code}/movements", "movements", async asked =>
            await asked.Get<Lots>().FindAsync(asked.Route("code"), asked.Cancel) is { } lot
                ? Movements(lot).Of(await asked.Get<Lots>().HistoryAsync(lot.Id, asked.Cancel), asked.Zone)
                : null);
        app.MapSheet("/storeroom/suppliers", "suppliers", async asked => BoughtFrom.Of(await asked.Get<Suppliers>().ListAsync(asked.Cancel), asked.Zone));
        app.MapSheet("/storeroom/to-follow", "receipts to follow", async asked =>
            ToFollow(asked.Currency).Of(await asked.Get<Stock>().PendingAsync(asked.Cancel), asked.Zone));
        app.MapSheet("/storeroom/flammable", "flammable liquids", async asked => Flammable.Of((await asked.Get<Stock>().FlammableAsync(asked.Cancel)).Holdings, asked.Zone));
        app.MapSheet("/storeroom/flammable/classes", "flammable classes", async asked =>
            FlammableClasses.Of((await asked.Get<Stock>().FlammableAsync(asked.Cancel)).Totals, asked.Zone));
        app.MapSheet("/storeroom/deliveries", "deliveries", asked =>
            Task.FromResult<Sheet?>(Deliveries(asked.Currency).Of(asked.Get<Deliveries>().AllAsync(asked.Cancel), asked.Zone)));
        app.MapSheet("/storeroom/deliveries/{code}/lines", "delivery", async asked =>
            await asked.Get<Deliveries>().FindAsync(asked.Route("code"), asked.Cancel) is { } page ? Lines(asked.Currency).Of(page.Lines, asked.Zone) : null);
    }

    internal static SheetOf<MaterialLine> Materials(string currency) => new SheetOf<MaterialLine>()
        .OfMaterial(l => l.Form)
        .Number("On hand (g or each)", l => Shown(l.Stock?.OnHand, l.Form.StockedIn))
        .Number("Reserved (g or each)", l => Shown(l.Stock?.Reserved, l.Form.StockedIn))
        .Number("Not released (g or each)", l => Shown(l.Stock?.NotReleased, l.Form.StockedIn))
        .Number("Past use (g or each)", l => Shown(l.Stock?.PastUse, l.Form.StockedIn))
        .Number("Available (g or each)", l => Shown(l.Stock?.Available, l.Form.StockedIn))
        .Number("On its way (g or each)", l => Shown(l.Stock?.OnItsWay?.Units, l.Form.StockedIn))
        .Number("Use a day (g or each)", l => l.Stock?.UsePerDay)
        .Number("Cover (days)", l => l.Stock?.CoverDays)
        .Number($"Last landed ({currency} per kg or each)", l => l.Stock?.LastUnitCost is { } cost ? PerKilogramOrPiece(cost, l.Form.StockedIn) : null)
        .Text("Lots", l => l.Stock is { } stock ? string.Join(' ', stock.LotCodes) : null);

    internal static SheetOf<LotRow> Lots(string currency) => new SheetOf<LotRow>()
        .Text("Lot", r => r.Code).Text("Material", r => r.MaterialName).Text("Kind", r => MaterialKinds.Name(r.Kind))
        .Text("State", r => r.OnHand == 0 && r.Status != LotStatus.Rejected ? "Used up" : LotWords.Status(r.Status)).Text("Why", r => r.StatusReason)
        .Number("On hand (g or each)", r => Shown(r.OnHand, r.Unit)).Text("Stocked in", r => Written.Unit(r.Unit))
        .Number($"Landed ({currency} per kg or each)", r => PerKilogramOrPiece(r.UnitCost, r.Unit))
        .Date("Received", r => r.ReceivedOn).Date("Opened", r => r.OpenedOn).Date("Expires", r => r.ExpiresOn).Date("Retest", r => r.RetestOn)
        .Date("Good until", r => r.UseBy?.On)
        .Text("Supplier", r => r.Supplier).Text("Supplier lot", r => r.SupplierLot).Text("Delivery", r => r.DeliveryCode).Text("Made by batch", r => r.MadeByBatch)
        .Number("Density (g/mL)", r => r.Density).Number("Tare (g)", r => Shown(r.TareMilligrams, StockUnit.Gram)).Text("Shelf", r => r.Shelf)
        .Text("Missing papers", r => string.Join("; ", r.MissingPapers.Select(PaperKinds.Name)));

    private static SheetOf<LotHistoryRow> Movements(LotRow lot) => new SheetOf<LotHistoryRow>()
        .Text("Lot", _ => lot.Code).Text("Material", _ => lot.MaterialName)
        .Moment("When", r => r.At)
        .Text("What", r => r.IsReversal ? "Reversal" : r.What).Text("Why", r => r.Why).Text("Who", r => r.Who)
        .Text("Batch", r => r.BatchCode).Text("Delivery", r => r.DeliveryCode)
        .Number($"Change ({Written.Unit(lot.Unit)})", r => Shown(r.Change, lot.Unit))
        .Number($"On hand ({Written.Unit(lot.Unit)})", r => Shown(r.OnHand, lot.Unit))
        .Number("Entry", r => r.MovementId).Number("Takes back entry", r => r.ReversesId)
        .Date("Date before", r => r.OldDate).Date("Date after", r => r.NewDate);

    private static SheetOf<DeliveryRow> Deliveries(string currency) => new SheetOf<DeliveryRow>()
        .Text("Delivery", r => r.Code).Text("Supplier", r => r.Supplier).Text("Invoice", r => r.InvoiceNumber)
        .Date("Received", r => r.ReceivedOn).Number("Lines", r => r.LineCount).Number($"Landed ({currency})", r => r.Total)
        .Text("Posted by", r => r.PostedBy).Moment("Posted", r => r.PostedAt).Text("Taken back", r => r.TakenBack);

    private static SheetOf<DeliveryLineRow> Lines(string currency) => new SheetOf<DeliveryLineRow>()
        .Text("Material", r => r.Material).Text("Lot", r => r.Lot.Code).Text("Supplier lot", r => r.Lot.SupplierLot)
        .Number("As invoiced", r => r.QuantityTyped).Text("Unit", r => AmountUnits.Symbol(r.Unit))
        .Number("Into stock (g or each)", r => Shown(r.Quantity, r.StockedIn)).Number("Density used (g/mL)", r => r.DensityUsed)
        .Number($"Price ({currency})", r => r.Price).Number($"Discount ({currency})", r => r.Discount)
        .Number($"Duty ({currency})", r => r.Duty).Number($"Surcharge ({currency})", r => r.Surcharge)
        .Number("Gross (kg)", r => r.GrossKilograms).Number($"Freight share ({currency})", r => r.FreightShare)
        .Number($"Landed ({currency})", r => r.LandedTotal)
        .Number($"Landed ({currency} per kg or each)", r => PerKilogramOrPiece(r.UnitCost, r.StockedIn));

    private static readonly SheetOf<SupplierRow> BoughtFrom = new SheetOf<SupplierRow>()
        .Text("Supplier", r => r.Name).Text("Address", r => r.Address).Number("Materials", r => r.Materials);

    private static SheetOf<PendingReceiptRow> ToFollow(string currency) => new SheetOf<PendingReceiptRow>()
        .Text("Material", r => r.Material).Text("Used in batch", r => r.BatchCode).Number("Used (g)", r => Grams(r.Milligrams))
        .Number($"Estimate ({currency} per kg)", r => PerKilogramOrPiece(r.EstimatedUnitCost, StockUnit.Gram))
        .Number($"Estimate ({currency})", r => Grams(r.Milligrams) * r.EstimatedUnitCost)
        .Moment("Since", r => r.At).Text("Who", r => r.Who).Text("Why", r => r.Reason)
        .Text("Lots that hold so much", r => string.Join(' ', r.Lots.Select(l => l.Code)));

    private static readonly SheetOf<FlammableTotal> FlammableClasses = new SheetOf<FlammableTotal>()
        .Text("Class", r => FlammableWords.Category(r.Category)).Number("Mass (kg)", r => Grams(r.Milligrams) / 1000m)
        .Number("Volume (L)", r => r.Millilitres / 1000m).Text("Volume is without", r => string.Join("; ", r.WithoutDensity));

    private static readonly SheetOf<FlammableHolding> Flammable = new SheetOf<FlammableHolding>()
        .Text("Liquid", r => r.Name).Number("Mass (kg)", r => Grams(r.Milligrams) / 1000m).Number("Volume (L)", r => r.Millilitres / 1000m)
        .Text("Class", r => FlammableWords.Category(r.Category)).Text("Because", r => r.Why);

    internal sealed record MaterialLine(ChangeMaterial Form, StockRow? Stock);
}
