using MakerStudio.Core.Costing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Inventory.ReceivingSeed;

namespace MakerStudio.Services.Tests.Inventory;

public class DeliveriesTests
{
    // The worked landed-cost example of the house: own numbers, computed by script, no outside source.
    [Theory]
    [InlineData(FreightBasis.Weight, "6.72", "67.374", "26.88", "8.644", "62.40", "0.8648")]
    [InlineData(FreightBasis.Value, "36.83", "73.396", "15.21", "8.0605", "43.96", "0.82792")]
    public async Task Post_InvoiceOfThreeLines_LandsToTheLastDigitInTheDatabase(
        FreightBasis basis, string fragranceShare, string fragrancePerKg, string alcoholShare, string alcoholPerKg, string bottleShare, string perBottle)
    {
        await using var studio = await TestStudio.NewAsync();
        var invoice = await WorkedExampleAsync(studio);
        invoice.FreightBasis = basis;
        invoice.InvoiceTotal = 942.15m;

        var posted = (await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Expect();

        Assert.Equal("D-1", posted.Code);
        Assert.Equal(942.15m, posted.Total);
        Assert.Equal(["P-1", "E-1", "B-1"], posted.Lots.Select(l => l.Code));
        await using var db = studio.Db();
        var lines = await db.DeliveryLines.OrderBy(l => l.Position).ToListAsync();
        Assert.Equal([Number(fragranceShare), Number(alcoholShare), Number(bottleShare)], lines.Select(l => l.FreightShare));
        Assert.Equal([Number(fragrancePerKg) / 1000, Number(alcoholPerKg) / 1000, Number(perBottle)], lines.Select(l => l.UnitCost));
        Assert.Equal(942.15m, lines.Sum(l => l.LandedTotal));
        var lots = await db.Lots.Include(l => l.Balance).OrderBy(l => db.DeliveryLines.Where(d => d.Id == l.DeliveryLineId).Select(d => d.Position).First()).ToListAsync();
        Assert.Equal(lines.Select(l => l.UnitCost), lots.Select(l => l.UnitCost));
        Assert.Equal([5_000_000, 20_000_000, 500], lots.Select(l => l.Balance!.OnHand));
        Assert.Equal([500, 5_000_000, 20_000_000], await db.Movements.Select(m => m.Change).Order().ToListAsync());
        Assert.Empty(await studio.DifferencesAsync());
    }

    [Fact]
    public async Task Post_TotalDiffersFromTheInvoice_IsRefusedSayingByHowMuch()
    {
        await using var studio = await TestStudio.NewAsync();
        var invoice = await WorkedExampleAsync(studio);
        invoice.InvoiceTotal = 940.15m;
        var before = await studio.FootprintAsync();

        var refusal = Assert.IsType<TotalDiffers>((await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Refusal);

        Assert.Equal(2.00m, refusal.Difference);
        Assert.Contains("942.15", refusal.Happened);
        Assert.Contains("2.00 less", refusal.Happened);
        Assert.Equal(before, await studio.FootprintAsync());
    }

    [Fact]
    public async Task Post_OneLineCannotBeReadAsMass_PostsNothingAtAll()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var before = await studio.FootprintAsync();

        var outcome = await studio.Get<Deliveries>().PostAsync(studio.Ana, Invoice(
            supplier, Line(wax, 10, AmountUnit.Kilogram, 60), Line(oil, 500, AmountUnit.Millilitre, 40)));

        var problem = Assert.Single(Assert.IsType<NotAcceptable>(outcome.Refusal).Problems);
        Assert.Equal("Lines[1].Quantity", problem.Field);
        Assert.Contains("needs its density", problem.Problem);
        Assert.Equal(before, await studio.FootprintAsync());
    }

    [Fact]
    public async Task Post_VolumeWithTheLotsOwnDensity_TakesThatAndKeepsItWithTheLot()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var line = Line(oil, 500, AmountUnit.Millilitre, 40);
        line.Density = 0.96m;

        var lot = (await studio.Get<Deliveries>().PostAsync(studio.Ana, Invoice(supplier, line))).Expect().Lots.Single();

        var row = await studio.LotRowAsync(lot.Code);
        Assert.Equal(480_000, row.OnHand);
        Assert.Equal(0.96m, row.Density);
    }

    [Fact]
    public async Task Post_PriceFarBelowTheLast_AsksNamingBothReadings_AndAsLitresIsSilent()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var alcohol = await studio.MaterialAsync("Ethanol 99.5 % vol", MaterialKind.Solvent, density: 0.79m);
        await studio.ReceiveAsync(supplier, alcohol, 20, AmountUnit.Kilogram, 162);
        var before = await studio.FootprintAsync();
        var invoice = Invoice(supplier, Line(alcohol, 25, AmountUnit.Kilogram, 160));

        var far = Assert.IsType<PriceLooksFar>((await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Refusal);

        var asked = Assert.Single(far.Questions);
        Assert.Equal(6.40m, asked.UnitPrice);
        Assert.Equal(AmountUnit.Litre, asked.FitsAs);
        Assert.Equal("19.75 kg", asked.FitsWeight);
        Assert.Contains("6.40/kg before freight, 21 % below the last price, 8.10/kg", asked.Sentence);
        Assert.Contains("25 L, that is 19.75 kg at 0.79 g/mL and 8.10/kg", asked.Sentence);
        Assert.Equal(before, await studio.FootprintAsync());

        invoice.Lines[0].Unit = AmountUnit.Litre;
        var lot = (await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Expect().Lots.Single();
        Assert.Equal(19_750_000, (await studio.LotRowAsync(lot.Code)).OnHand);
    }

    [Fact]
    public async Task Post_FarPriceConfirmed_PostsAndKeepsTheAnswer_ButNotForAnotherPrice()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var alcohol = await studio.MaterialAsync("Ethanol 99.5 % vol", MaterialKind.Solvent, density: 0.79m);
        await studio.ReceiveAsync(supplier, alcohol, 20, AmountUnit.Kilogram, 162);
        var invoice = Invoice(supplier, Line(alcohol, 25, AmountUnit.Kilogram, 150));
        invoice.Lines[0].ConfirmedUnitPrice = 6.40m;

        Assert.IsType<PriceLooksFar>((await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Refusal);
        invoice.Lines[0].Price = 160;
        (await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Expect();

        await using var db = studio.Db();
        Assert.Equal("6.40/kg against 8.10/kg before: kept as typed", (await db.DeliveryLines.OrderBy(l => l.Id).LastAsync()).PriceAnswer);
    }

    [Fact]
    public async Task Post_ShelfLifeAndNoDatesTyped_SetsARetestNotAnExpiry()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var oil = await studio.MaterialAsync("Bergamot oil", MaterialKind.EssentialOil);
        await using (var db = studio.Db())
        {
            (await db.Materials.SingleAsync()).ShelfLifeDays = 365;
            await db.SaveChangesAsync();
        }

        var lot = await studio.ReceiveAsync(supplier, oil, 1, AmountUnit.Kilogram, 88.5m);

        var row = await studio.LotRowAsync(lot.Code);
        Assert.Null(row.ExpiresOn);
        Assert.Equal(new DateOnly(2027, 9, 24), row.RetestOn);
    }

    [Fact]
    public async Task Post_SameInvoiceTwice_IsRefusedNamingTheFirst()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var invoice = Invoice(supplier, Line(wax, 10, AmountUnit.Kilogram, 60)) with { InvoiceNumber = "AS-20931" };
        (await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Expect();

        var again = await studio.Get<Deliveries>().PostAsync(studio.Bo, invoice with { RequestId = Guid.CreateVersion7() });

        Assert.Contains("Delivery D-1", Assert.IsType<Because>(again.Refusal).Happened);
    }

    [Fact]
    public async Task Keep_PartnerKeptMeanwhile_IsStaleAndLosesNeither()
    {
        await using var studio = await TestStudio.NewAsync();
        var deliveries = studio.Get<Deliveries>();
        var id = Guid.CreateVersion7();
        var first = (await deliveries.KeepAsync(studio.Ana, new KeepDelivery { DraftId = id, Draft = new DeliveryDraft { InvoiceNumber = "AS-1" } })).Expect();
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        (await deliveries.KeepAsync(studio.Bo, new KeepDelivery { DraftId = id, Seen = first.KeptAt, Draft = new DeliveryDraft { InvoiceNumber = "AS-2", Freight = "96,00" } })).Expect();

        var stale = Assert.IsType<Stale>((await deliveries.KeepAsync(
            studio.Ana, new KeepDelivery { DraftId = id, Seen = first.KeptAt, Draft = new DeliveryDraft { InvoiceNumber = "AS-3" } })).Refusal);

        Assert.Equal("Bo", stale.ChangedBy);
        var kept = (await deliveries.ReadDraftAsync(id))!;
        Assert.Equal(("AS-2", "96,00", "Bo"), (kept.Draft.InvoiceNumber, kept.Draft.Freight, kept.KeptBy));
    }

    [Fact]
    public async Task Post_FromADraftOpenedByBoth_PostsOnce()
    {
        await using var studio = await TestStudio.NewAsync();
        var deliveries = studio.Get<Deliveries>();
        var supplier = await studio.SupplierAsync();
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var id = Guid.CreateVersion7();
        (await deliveries.KeepAsync(studio.Ana, new KeepDelivery { DraftId = id })).Expect();

        var outcomes = await Task.WhenAll(new[] { studio.Ana, studio.Bo }.Select(actor => Task.Run(() =>
            deliveries.PostAsync(actor, Invoice(supplier, Line(wax, 10, AmountUnit.Kilogram, 60)) with { DraftId = id }))));

        Assert.Single(outcomes, o => o is Done<DeliveryPosted>);
        Assert.Single(outcomes, o => o.Refusal is DraftGone);
        Assert.Null(await deliveries.ReadDraftAsync(id));
        Assert.Equal(60m, Assert.Single(await deliveries.ListAsync()).Total);
    }

    [Fact]
    public void Read_TypedText_TakesUnitsAndMarksAndNamesWhatItCannotRead()
    {
        var material = Guid.CreateVersion7();
        var reading = ReadDelivery.From(new DeliveryDraft
        {
            SupplierId = Guid.CreateVersion7(), ReceivedOn = new DateOnly(2026, 9, 24), Freight = "96,00",
            Lines =
            [
                new() { MaterialId = material, Quantity = "25 L", Unit = "kg", Price = "160.00", GrossKg = "5600 g", Tare = "912" },
                new() { MaterialId = material, Quantity = "2 oz", Price = "12" },
            ],
        });

        Assert.Equal(96.00m, reading.Request.Freight);
        var line = reading.Request.Lines[0];
        Assert.Equal((25m, AmountUnit.Litre, 160m, 5.6m, 912_000L), (line.Quantity, line.Unit, line.Price, line.GrossKg, line.TareMilligrams));
        var problem = Assert.Single(reading.Problems);
        Assert.Equal("Lines[1].Quantity", problem.Field);
        Assert.Contains("Which ounce?", problem.Problem);
    }

    [Fact]
    public async Task WorkOut_WhileTyped_ShowsBothWaysOfFreightAndTheQuestion()
    {
        await using var studio = await TestStudio.NewAsync();
        var invoice = await WorkedExampleAsync(studio);
        invoice.InvoiceTotal = 942.15m;

        var sheet = await studio.Get<Deliveries>().WorkOutAsync(invoice);

        Assert.Equal([6.72m, 26.88m, 62.40m], sheet.ByWeight!.Lines.Select(l => l.FreightShare));
        Assert.Equal([36.83m, 15.21m, 43.96m], sheet.ByValue!.Lines.Select(l => l.FreightShare));
        Assert.Equal(0m, sheet.Difference);
        Assert.Equal(0, sheet.OpenQuestions);
        invoice.Lines[0].Quantity = 0;
        Assert.Null((await studio.Get<Deliveries>().WorkOutAsync(invoice)).Chosen);
    }

    [Fact]
    public async Task TakeBack_Untouched_ReversesEveryReceiptAndGivesTheLinesBackAsADraft()
    {
        await using var studio = await TestStudio.NewAsync();
        var deliveries = studio.Get<Deliveries>();
        var posted = (await deliveries.PostAsync(studio.Ana, await WorkedExampleAsync(studio))).Expect();

        var back = (await deliveries.TakeBackAsync(studio.Bo, new TakeBackDelivery { DeliveryId = posted.Id, Reason = "typed from another invoice" })).Expect();

        var lot = await studio.LotRowAsync("P-1");
        Assert.Equal((0L, LotStatus.Rejected), (lot.OnHand, lot.Status));
        var draft = (await deliveries.ReadDraftAsync(back.DraftId))!.Draft;
        Assert.Equal(["5", "20", "500"], draft.Lines.Select(l => l.Quantity));
        Assert.Equal("typed from another invoice", Assert.Single(await deliveries.ListAsync()).TakenBack);
        Assert.Empty((await studio.Get<MaterialPrices>().ViewAsync(lot.MaterialId))!.Paid);
        Assert.IsType<Because>((await deliveries.TakeBackAsync(studio.Bo, new TakeBackDelivery { DeliveryId = posted.Id, Reason = "again" })).Refusal);
        Assert.Empty(await studio.DifferencesAsync());
    }

    [Fact]
    public async Task TakeBack_SomethingWasUsed_IsRefusedNamingTheLot()
    {
        await using var studio = await TestStudio.NewAsync();
        var deliveries = studio.Get<Deliveries>();
        var posted = (await deliveries.PostAsync(studio.Ana, await WorkedExampleAsync(studio))).Expect();
        (await studio.Get<Lots>().AdjustAsync(studio.Ana, new AdjustLot { LotId = posted.Lots[0].LotId, Change = -1000, Reason = AdjustmentReason.Spill })).Expect();

        var refusal = (await deliveries.TakeBackAsync(studio.Ana, new TakeBackDelivery { DeliveryId = posted.Id, Reason = "wrong" })).Refusal;

        Assert.Contains("P-1 holds 4,999.0 g", Assert.IsType<Because>(refusal).Happened);
    }

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static async Task<PostDelivery> WorkedExampleAsync(TestStudio studio)
    {
        var supplier = await studio.SupplierAsync();
        var fragrance = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var alcohol = await studio.MaterialAsync("Ethanol 99.5 % vol", MaterialKind.Solvent);
        var bottles = await studio.MaterialAsync("Bottle 100 mL, amber glass", MaterialKind.Bottle, StockUnit.Each);
        return Invoice(
            supplier,
            Line(fragrance, 5, AmountUnit.Kilogram, 310.00m) with { GrossKg = 5.6m, Duty = 20.15m },
            Line(alcohol, 20, AmountUnit.Kilogram, 128.00m) with { GrossKg = 22.4m, Surcharge = 18.00m },
            Line(bottles, 500, AmountUnit.Each, 370.00m) with { GrossKg = 52.0m }) with { Freight = 96.00m };
    }
}
