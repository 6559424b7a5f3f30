using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <summary>Out of the door: a shop on consignment with its first report, a Saturday at a stall, testers, a gift set.</summary>
internal sealed class SampleGoods(Story story)
{
    private const decimal DiffuserNet = 24.17m;
    private Guid _shop;
    private Guid _kit;
    private Guid? _customer;

    public IEnumerable<SampleAct> Acts() =>
    [
        new(story.Day(19, 10), ShopAsync),
        new(story.Day(19, 11), () => PlaceAsync("RD-1", 8)),
        new(story.Day(12, 17), () => SellAsync(story.Ana, "LN-1", 5, 16m, "Market stall")),
        new(story.Day(9, 10), () => AsideAsync("LN-1", UnitMoveKind.Tester, 1, "On the table at Harbour Hall")),
        new(story.Day(6, 16), () => ReportAsync("RD-1", sold: 3, broken: 1, left: 4)),
        new(story.Day(5, 11), KitAsync),
        new(story.Day(3, 15), () => SellKitAsync(1, 44m)),
        new(story.Day(2, 10, 50), CustomerAsync),
        new(story.Day(2, 11), () => SellAsync(story.Bo, "LN-1", 2, 18m, "Web shop", _customer)),
        new(story.Day(1, 15), () => WriteDownAsync("LN-1", 2.80m, "Labels scuffed in the damp cupboard; they go at the stall for what they bring")),
    ];

    private async Task ShopAsync() => _shop = (await story.Places.AddAsync(story.Ana, new AddPlace
    {
        Name = "Tollgate House", Kind = PlaceKind.Consignment, Contact = "Mr Farrow", Phone = "000 555 0177", CommissionPercent = 40m, PaysBroken = true,
    })).Expect().PlaceId;

    private async Task PlaceAsync(string code, int count) => (await story.Consignments.PlaceAsync(story.Ana, new PlaceUnits
    {
        PlaceId = _shop, Lines = [new UnitsToPlace { BatchId = story.BatchIds[code], Count = count, NetPrice = DiffuserNet }],
    })).Expect();

    private async Task ReportAsync(string code, int sold, int broken, int left) => (await story.Consignments.ReportAsync(story.Ana, new RecordShopReport
    {
        PlaceId = _shop,
        Lines = [new ShopReported { BatchId = story.BatchIds[code], Sold = sold, Broken = broken, Left = left, NetPrice = DiffuserNet, CommissionPercent = 40m, PaidPerBroken = 5m }],
    })).Expect();

    private async Task CustomerAsync() => _customer = (await story.Customers.AddAsync(story.Bo, new AddCustomer
    {
        Name = "Ida Marsh", Email = "ida.marsh@example.org", Phone = "000 555 0142", Address = "2 Weir Lane",
    })).Expect().CustomerId;

    private async Task SellAsync(Actor by, string code, int count, decimal tag, string channel, Guid? customer = null) => (await story.Sales.RecordAsync(by, new RecordSale
    {
        Channel = channel, CustomerId = customer, TaxPercent = 20m, Lines = [new SoldLine { BatchId = story.BatchIds[code], Quantity = count, Tag = tag }],
    })).Expect();

    /// <summary>A linen spray and a diffuser tied together: three made for the web shop.</summary>
    private async Task KitAsync()
    {
        var kit = (await story.Kits.DefineAsync(story.Ana, new DefineKit
        {
            Name = "Yard pair", Note = "Tied with cotton tape, no box",
            Items = [await ItemAsync("LN-1"), await ItemAsync("RD-1")],
        })).Expect();
        (await story.Kits.AssembleAsync(story.Bo, new AssembleKit { KitId = kit.KitId, Count = 3 })).Expect();
        _kit = (await story.Kits.ViewAsync()).Lots[0].Id;
    }

    private async Task<KitItemTyped> ItemAsync(string code)
    {
        var product = (await story.Goods.OfBatchAsync(code))[0].Product;
        return new KitItemTyped { FormulaId = product.FormulaId, SizeName = product.SizeName, Count = 1 };
    }

    private async Task SellKitAsync(int count, decimal tag) => (await story.Sales.RecordAsync(story.Bo, new RecordSale
    {
        Channel = "Web shop", TaxPercent = 20m, Lines = [new SoldLine { KitLotId = _kit, Quantity = count, Tag = tag }],
    })).Expect();

    private async Task WriteDownAsync(string code, decimal brings, string reason)
    {
        var (product, lot) = (await story.Books.ReadAsync()).Finished.SelectMany(f => f.Lots.Select(l => (f.Key, l))).Single(f => f.l.Code == code);
        (await story.Books.WriteDownAsync(story.Ana, new WriteDownStock { Product = product, Lot = lot.Lot, SellingPrice = brings, Reason = reason })).Expect();
    }

    private async Task AsideAsync(string code, UnitMoveKind kind, int count, string reason) => (await story.Goods.SetAsideAsync(story.Ana, new SetAside
    {
        BatchId = story.BatchIds[code], PlaceId = Places.StudioShelf, Kind = kind, Count = count, Reason = reason,
    })).Expect();
}
