using MakerStudio.Core.Costing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

public class PurchasingTests
{
    [Fact]
    public async Task Send_TwoLines_IsNumberedFrozenAndOnItsWay()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);

        var sent = await SendAsync(studio, yard);

        Assert.Equal("O-1", sent.Code);
        // 2 kg × 70 less 5 % = 133.00; 25 L × 4.20 = 105.00; freight 12; tax 20 % of 250.00 = 50.00.
        Assert.Equal(300.00m, sent.Total);
        var page = (await studio.Get<Purchasing>().FindAsync("o-1"))!;
        Assert.Equal((OrderState.Sent, 2), (page.Order.State, page.Order.LinesOpen));
        Assert.Equal([133.00m, 105.00m], page.Lines.Select(l => l.Total));
        Assert.Equal((238.00m, 12m, 50.00m), (page.Totals.Goods, page.Totals.Freight, page.Totals.Tax));
        // 25 L at 0.805 g/mL are 20,125 g.
        Assert.Equal(20_125_000, (await StockAsync(studio, yard.Ethanol)).OnItsWay!.Units);
        Assert.Equal(["O-1"], (await StockAsync(studio, yard.Oil)).OnItsWay!.Orders);
        await using var db = studio.Db();
        await Assert.ThrowsAnyAsync<Exception>(() => db.Database.ExecuteSqlAsync($"update purchase_order_lines set quantity = 1"));
    }

    [Fact]
    public async Task Receive_InTwoParts_LeavesWhatIsStillToCome()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);
        var order = await SendAsync(studio, yard);
        var purchasing = studio.Get<Purchasing>();

        var first = await DraftAsync(studio, order.Id);
        Assert.Equal((yard.Supplier, "12"), (first.Draft.SupplierId, first.Draft.Freight));
        Assert.Equal([("2", "kg", "140", "7"), ("25", "L", "105", null)], first.Draft.Lines.Select(l => (l.Quantity!, l.Unit!, l.Price!, l.Discount)));
        first.Draft.Lines[0].Quantity = "0.75";
        first.Draft.Lines[0].Price = "52.50";
        first.Draft.Lines[0].Discount = null;
        first.Draft.Lines.RemoveAt(1);
        first.Draft.Freight = null;
        await PostAsync(studio, first);

        var page = (await purchasing.FindAsync(order.Code))!;
        Assert.Equal((OrderState.PartReceived, 2), (page.Order.State, page.Order.LinesOpen));
        Assert.Equal((750_000L, 1_250_000L, 1.25m), (page.Lines[0].Received, page.Lines[0].Outstanding, page.Lines[0].StillToCome));
        Assert.Equal("D-1", Assert.Single(page.Deliveries).Code);

        var rest = await DraftAsync(studio, order.Id);
        Assert.Null(rest.Draft.Freight);
        Assert.Equal([("1.25", "kg"), ("25", "L")], rest.Draft.Lines.Select(l => (l.Quantity!, l.Unit!)));
        await PostAsync(studio, rest);

        Assert.Equal(OrderState.Received, (await purchasing.FindAsync(order.Code))!.Order.State);
        Assert.Null((await StockAsync(studio, yard.Oil)).OnItsWay);
        Assert.Contains("nothing still to come", (await purchasing.ReceiveAsync(studio.Bo, new ReceiveOrder { OrderId = order.Id })).Refusal!.Happened);
    }

    [Fact]
    public async Task Receive_MoreThanOrdered_IsTakenAndSaid()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);
        var order = await SendAsync(studio, yard);
        var draft = await DraftAsync(studio, order.Id);
        draft.Draft.Lines[0].Quantity = "2.2";

        await PostAsync(studio, draft);

        var page = (await studio.Get<Purchasing>().FindAsync(order.Code))!;
        Assert.Equal((OrderState.Received, 200_000L, 0L), (page.Order.State, page.Lines[0].Over, page.Lines[0].Outstanding));
    }

    [Fact]
    public async Task Receive_ByTwoAtOnce_GoesOnWithOneDelivery()
    {
        await using var studio = await TestStudio.NewAsync();
        var order = await SendAsync(studio, await YardAsync(studio));
        var purchasing = studio.Get<Purchasing>();

        var begun = await Task.WhenAll(
            purchasing.ReceiveAsync(studio.Ana, new ReceiveOrder { OrderId = order.Id }), purchasing.ReceiveAsync(studio.Bo, new ReceiveOrder { OrderId = order.Id }));

        Assert.Single(begun.Select(b => b.Expect().DraftId).Distinct());
        Assert.Single(await studio.Get<Deliveries>().DraftsAsync());
    }

    [Fact]
    public async Task TakeBack_ReceivedDelivery_PutsItOnItsWayAgain()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);
        var order = await SendAsync(studio, yard);
        var posted = await PostAsync(studio, await DraftAsync(studio, order.Id));

        var back = (await studio.Get<Deliveries>().TakeBackAsync(studio.Ana, new TakeBackDelivery { DeliveryId = posted.Id, Reason = "wrong drum" })).Expect();

        Assert.Equal(OrderState.Sent, (await studio.Get<Purchasing>().FindAsync(order.Code))!.Order.State);
        Assert.Equal(2_000_000, (await StockAsync(studio, yard.Oil)).OnItsWay!.Units);
        Assert.All((await studio.Get<Deliveries>().ReadDraftAsync(back.DraftId))!.Draft.Lines, l => Assert.NotNull(l.OrderLineId));
    }

    [Fact]
    public async Task Post_LineOfAnotherMaterial_IsRefusedAndKept()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);
        var draft = await DraftAsync(studio, (await SendAsync(studio, yard)).Id);
        draft.Draft.Lines[0].MaterialId = yard.Ethanol;
        var before = await studio.FootprintAsync();

        var refused = (await studio.Get<Deliveries>().PostAsync(studio.Ana, ReadDelivery.From(draft.Draft).Request with { DraftId = draft.Id })).Refusal;

        Assert.Equal("Lines[0].MaterialId", Assert.Single(Assert.IsType<NotAcceptable>(refused).Problems).Field);
        Assert.Contains("Order O-1", refused!.Happened);
        Assert.Equal(before, await studio.FootprintAsync());
    }

    [Fact]
    public async Task Close_RestOfAnOrder_IsWaitedForNoLonger_Once()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);
        var order = await SendAsync(studio, yard);
        var purchasing = studio.Get<Purchasing>();
        Assert.IsType<NotAcceptable>((await purchasing.CloseAsync(studio.Ana, new CloseOrder { OrderId = order.Id })).Refusal);

        var both = await Task.WhenAll(
            purchasing.CloseAsync(studio.Ana, new CloseOrder { OrderId = order.Id, Reason = "discontinued" }),
            purchasing.CloseAsync(studio.Bo, new CloseOrder { OrderId = order.Id, Reason = "too dear" }));

        Assert.Single(both, b => b.Refusal is null);
        var page = (await purchasing.FindAsync(order.Code))!;
        Assert.Equal(OrderState.Closed, page.Order.State);
        Assert.Null((await StockAsync(studio, yard.Oil)).OnItsWay);
    }

    [Fact]
    public async Task Send_WithoutDensityPriceOrLines_SaysWhichLine()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);
        var purchasing = studio.Get<Purchasing>();
        var before = await studio.FootprintAsync();

        var noDensity = (await purchasing.SendAsync(studio.Ana, Order(yard.Supplier, Line(yard.Oil, 2, AmountUnit.Litre, 70)))).Refusal;
        var noPrice = (await purchasing.SendAsync(studio.Ana, Order(yard.Supplier, Line(yard.Oil, 2, AmountUnit.Kilogram, null)))).Refusal;

        Assert.Equal("Lines[0].Quantity", Assert.Single(Assert.IsType<NotAcceptable>(noDensity).Problems).Field);
        Assert.Contains("density", noDensity!.Happened);
        Assert.Equal("Lines[0].UnitPrice", Assert.Single(Assert.IsType<NotAcceptable>(noPrice).Problems).Field);
        Assert.IsType<NotAcceptable>((await purchasing.SendAsync(studio.Ana, Order(yard.Supplier))).Refusal);
        Assert.Equal(before, await studio.FootprintAsync());
    }

    [Fact]
    public async Task Keep_ByTwo_TheSecondIsAsked_AndASentDraftIsGone()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await YardAsync(studio);
        var purchasing = studio.Get<Purchasing>();
        var id = Guid.CreateVersion7();
        var first = (await purchasing.KeepAsync(studio.Ana, new KeepOrder { DraftId = id, Draft = new OrderDraft { Note = "two drums" } })).Expect();
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        (await purchasing.KeepAsync(studio.Bo, new KeepOrder { DraftId = id, Seen = first.KeptAt, Draft = new OrderDraft { Note = "three" } })).Expect();

        var stale = Assert.IsType<Stale>((await purchasing.KeepAsync(studio.Ana, new KeepOrder { DraftId = id, Seen = first.KeptAt, Draft = new OrderDraft { Note = "four" } })).Refusal);

        Assert.Equal(("Bo", "three"), (stale.ChangedBy, (await purchasing.ReadDraftAsync(id))!.Draft.Note));
        (await purchasing.SendAsync(studio.Bo, Order(yard.Supplier, Line(yard.Oil, 1, AmountUnit.Kilogram, 70)) with { DraftId = id })).Expect();
        var again = (await purchasing.SendAsync(studio.Ana, Order(yard.Supplier, Line(yard.Oil, 1, AmountUnit.Kilogram, 70)) with { DraftId = id })).Refusal;
        Assert.Contains("sent or put away", Assert.IsType<DraftGone>(again).Happened);
        Assert.Empty(await purchasing.DraftsAsync());
    }

    internal static SendOrder Order(Guid supplier, params OrderLineTyped[] lines) => new() { SupplierId = supplier, Lines = [.. lines] };

    internal static OrderLineTyped Line(Guid material, decimal quantity, AmountUnit unit, decimal? price, decimal discount = 0) =>
        new() { MaterialId = material, Quantity = quantity, Unit = unit, UnitPrice = price, Discount = discount };

    internal sealed record Yard(Guid Supplier, Guid Oil, Guid Ethanol);

    internal static async Task<Yard> YardAsync(TestStudio studio) => new(
        await studio.SupplierAsync(), await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil),
        await studio.MaterialAsync("Ethanol 96 % vol", MaterialKind.Solvent, density: 0.805m));

    private static async Task<OrderSent> SendAsync(TestStudio studio, Yard yard) =>
        (await studio.Get<Purchasing>().SendAsync(studio.Ana, Order(
            yard.Supplier, Line(yard.Oil, 2, AmountUnit.Kilogram, 70, 0.05m), Line(yard.Ethanol, 25, AmountUnit.Litre, 4.20m)) with { Freight = 12, TaxRate = 0.2m })).Expect();

    /// <summary>The delivery of an order, with the freight shared by value: nothing was put on a scale.</summary>
    private static async Task<OpenDraft<DeliveryDraft>> DraftAsync(TestStudio studio, Guid order)
    {
        var begun = (await studio.Get<Purchasing>().ReceiveAsync(studio.Ana, new ReceiveOrder { OrderId = order })).Expect();
        var open = (await studio.Get<Deliveries>().ReadDraftAsync(begun.DraftId))!;
        open.Draft.FreightBasis = FreightBasis.Value;
        return open;
    }

    private static async Task<DeliveryPosted> PostAsync(TestStudio studio, OpenDraft<DeliveryDraft> draft)
    {
        var reading = ReadDelivery.From(draft.Draft);
        Assert.Empty(reading.Problems);
        return (await studio.Get<Deliveries>().PostAsync(studio.Ana, reading.Request with { DraftId = draft.Id })).Expect();
    }

    private static async Task<StockRow> StockAsync(TestStudio studio, Guid material) => (await studio.Get<Stock>().FindAsync(material))!;
}
