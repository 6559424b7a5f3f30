using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>
/// Common practice, no source: order when what is there and on its way is down to daily use × lead days + safety stock.
/// </summary>
public class ToOrderTests
{
    [Fact]
    public async Task List_UseLeadTimeAndSafety_MakeThePointAndTheOrder()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await UsedAsync(studio, onHand: 6_000, used: 4_800, lead: 10, safety: 500, minimum: 1_000, pack: 1_000);

        var row = Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock;

        // 4,800 g in 60 days are 80 g a day: 10 days and 500 g safety make 1,300 g; 1,200 g are left, 15 days.
        Assert.Equal((oil, 80m, 15m), (row.MaterialId, row.UsePerDay, row.CoverDays));
        Assert.Equal(StockAmount.OfGrams(1_300), row.Advice!.Point);
        Assert.True(row.OrderNow);
        // Up to 1,300 g and 60 days more, 6,100 g: 4,900 g, in packs of 1 kg.
        Assert.Equal(StockAmount.OfGrams(5_000), row.Advice.Quantity);
        Assert.False(row.Advice.ArrivesTooLate);
    }

    [Fact]
    public async Task List_OrderOnItsWay_IsNotDueAgain()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await UsedAsync(studio, onHand: 6_000, used: 4_800, lead: 10, safety: 500);
        var supplier = Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock.From!.SupplierId;
        var draft = (await studio.Get<Purchasing>().DraftAsync(studio.Ana, new DraftOrder { SupplierId = supplier, MaterialIds = [oil] })).Expect();
        var typed = (await studio.Get<Purchasing>().ReadDraftAsync(draft.DraftId))!.Draft;
        Assert.Equal((oil, "4.9", "kg"), (typed.Lines.Single().MaterialId, typed.Lines.Single().Quantity, typed.Lines.Single().Unit));
        Assert.Equal(new DateOnly(2026, 11, 5), typed.ExpectedOn);
        typed.Lines.Single().UnitPrice = "70";
        Assert.True(Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock.OrderNow);

        (await studio.Get<Purchasing>().SendAsync(studio.Ana, ReadOrder.From(typed).Request with { DraftId = draft.DraftId })).Expect();

        var row = Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock;
        Assert.False(row.OrderNow);
        Assert.Equal((4_900_000L, new DateOnly(2026, 11, 5)), (row.OnItsWay!.Units, row.OnItsWay.ExpectedOn));
        // 6,100 g less 1,300 g at 80 g a day.
        Assert.Equal(60, row.Advice!.DaysLeft);
        Assert.Contains("is due any more", (await studio.Get<Purchasing>().DraftAsync(studio.Bo, new DraftOrder { SupplierId = supplier, MaterialIds = [oil] })).Refusal!.Happened);
    }

    [Fact]
    public async Task List_LastDelivery_GivesUnitAndPriceOfTheDraft()
    {
        await using var studio = await TestStudio.NewAsync();
        var yard = await PurchasingTests.YardAsync(studio);
        await TermsAsync(studio, yard.Ethanol, yard.Supplier, lead: 5, null, null);
        var lot = await studio.ReceiveAsync(yard.Supplier, yard.Ethanol, 25, AmountUnit.Litre, 105);
        await UseAsync(studio, lot.LotId, 20_000);
        var purchasing = studio.Get<Purchasing>();

        var row = Assert.Single(await purchasing.ToOrderAsync());
        Assert.Equal((AmountUnit.Litre, 4.20m), (row.LastBuy!.Unit, row.LastBuy.UnitPrice));
        var draft = (await purchasing.DraftAsync(studio.Ana, new DraftOrder { SupplierId = yard.Supplier, MaterialIds = [yard.Ethanol] })).Expect();

        // 333.33 g a day × 65 days are 21,666.667 g; 125 g are there; 21,541.667 g at 0.805 g/mL are 26.760 L, up to the millilitre.
        var line = (await purchasing.ReadDraftAsync(draft.DraftId))!.Draft.Lines.Single();
        Assert.Equal(("26.76", "L", "4.2"), (line.Quantity, line.Unit, line.UnitPrice));
    }

    [Fact]
    public async Task List_LeadTimeNotKnown_IsSaidAndNotGuessed()
    {
        await using var studio = await TestStudio.NewAsync();
        await UsedAsync(studio, onHand: 6_000, used: 5_900, lead: null, safety: 0);

        var row = Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock;

        Assert.Null(row.Advice);
        Assert.False(row.OrderNow);
    }

    [Fact]
    public async Task List_OwnPointAboveTheWorkedOne_Holds()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await UsedAsync(studio, onHand: 6_000, used: 600, lead: 10, safety: 0);
        Assert.False(Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock.OrderNow);
        await using (var db = studio.Db())
        {
            (await db.Materials.SingleAsync(m => m.Id == oil)).ReorderPoint = 6_000_000;
            await db.SaveChangesAsync();
        }

        var row = Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock;

        Assert.Equal((true, StockAmount.OfGrams(6_000)), (row.OrderNow, row.Advice!.Point));
    }

    [Fact]
    public async Task List_UnevenUse_SuggestsSafetyForTheBusiestLeadTime()
    {
        await using var studio = await TestStudio.NewAsync();
        await UsedAsync(studio, onHand: 6_000, used: 2_400, lead: 10, safety: 0);

        var row = Assert.Single(await studio.Get<Purchasing>().ToOrderAsync());

        // All 2,400 g went within ten days; the average of 60 days would make 400 g of ten: 2,000 g more.
        Assert.Equal(2_000_000, row.SafetySuggestion);
    }

    [Fact]
    public async Task WorkOut_BelowTheLeastAndNoWholePacks_SaysBothAndHowLongItLasts()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await UsedAsync(studio, onHand: 6_000, used: 4_800, lead: 10, safety: 500, minimum: 1_000, pack: 500);
        var supplier = Assert.Single(await studio.Get<Purchasing>().ToOrderAsync()).Stock.From!.SupplierId;

        var sheet = await studio.Get<Purchasing>().WorkOutAsync(PurchasingTests.Order(supplier, PurchasingTests.Line(oil, 0.8m, AmountUnit.Kilogram, 70)));

        Assert.Equal(["They sell no less than 1,000.0 g.", "It comes in packs of 500.0 g: 2 of them are 1,000.0 g."], sheet.Lines.Single().Says);
        Assert.Equal((25m, 56.00m), (sheet.Lines.Single().CoverDays, sheet.Totals!.Total));
    }

    private static async Task<Guid> UsedAsync(TestStudio studio, decimal onHand, decimal used, int? lead, decimal safety, decimal? minimum = null, decimal? pack = null)
    {
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var lot = await studio.LotAsync(oil, "P-1", onHand, 0.07m);
        await TermsAsync(studio, oil, await studio.SupplierAsync(), lead, minimum, pack);
        await using (var db = studio.Db())
        {
            (await db.Materials.SingleAsync(m => m.Id == oil)).SafetyStock = safety == 0 ? null : StockAmount.OfGrams(safety).Units;
            await db.SaveChangesAsync();
        }

        await UseAsync(studio, lot, used);
        return oil;
    }

    private static async Task TermsAsync(TestStudio studio, Guid material, Guid supplier, int? lead, decimal? minimum, decimal? pack)
    {
        await using var db = studio.Db();
        db.MaterialSuppliers.Add(new MaterialSupplier
        {
            MaterialId = material, SupplierId = supplier, LeadTimeDays = lead,
            Minimum = minimum is { } least ? StockAmount.OfGrams(least).Units : null, Pack = pack is { } whole ? StockAmount.OfGrams(whole).Units : null,
        });
        await db.SaveChangesAsync();
    }

    /// <summary>A use as the bench writes it, half now and half nine days before.</summary>
    private static async Task UseAsync(TestStudio studio, Guid lotId, decimal grams)
    {
        await using var db = studio.Db();
        var lot = await db.Lots.Include(l => l.Balance).SingleAsync(l => l.Id == lotId);
        foreach (var ago in new[] { 9, 0 })
        {
            var units = StockAmount.OfGrams(grams / 2).Units;
            lot.Balance!.OnHand -= units;
            db.Movements.Add(new Movement
            {
                LotId = lotId, Kind = MovementKind.Use, Change = -units, OnHandAfter = lot.Balance.OnHand, UnitCost = lot.UnitCost,
                PersonId = studio.Ana.PersonId, At = studio.Clock.GetUtcNow().AddDays(-ago), RequestId = Guid.CreateVersion7(),
            });
        }

        await db.SaveChangesAsync();
    }
}
