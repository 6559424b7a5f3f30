using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Finished;

/// <summary>Trade scenario S12: 12 placed at 40 %, net 18.33; 5 sold, 1 broken paid at cost, 6 left. Own example.</summary>
public class ConsignmentTests
{
    private static PlaceUnits Twelve(Guid batch, Guid shop) => new() { PlaceId = shop, Lines = [new UnitsToPlace { BatchId = batch, Count = 12, NetPrice = 18.33m }] };

    private static RecordShopReport Report(Guid batch, Guid shop, int sold = 5, int broken = 1, int back = 0, int? left = 6) => new()
    {
        PlaceId = shop,
        Lines = [new ShopReported { BatchId = batch, Sold = sold, Broken = broken, SentBack = back, Left = left, NetPrice = 18.33m, CommissionPercent = 40m, PaidPerBroken = 4.51m }],
    };

    [Fact]
    public async Task Report_FiveSoldOneBrokenSixLeft_Brings5499And451()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var shop = await studio.ShopAsync();
        var consignments = studio.Get<Consignments>();

        (await consignments.PlaceAsync(studio.Ana, Twelve(batch, shop))).Expect();
        Assert.Empty(await studio.Get<Sales>().ListAsync()); // nothing counts as sold before the report
        Assert.Equal((34, 12), (await studio.UnitsAsync(batch), await studio.UnitsAsync(batch, shop)));

        var reported = (await consignments.ReportAsync(studio.Ana, Report(batch, shop))).Expect();

        Assert.Equal((54.99m, 4.51m, 59.50m, 6), (reported.ForSold, reported.ForBroken, reported.Due, reported.Left));
        Assert.Equal((34, 6), (await studio.UnitsAsync(batch), await studio.UnitsAsync(batch, shop)));
        var sale = Assert.Single(await studio.Get<Sales>().ListAsync());
        Assert.Equal((5, 91.65m + 4.51m, 36.66m), (sale.Units, sale.Net, sale.Fees));
        var view = (await consignments.FindAsync(shop))!;
        var held = Assert.Single(view.Held);
        Assert.Equal((12, 5, 1, 0, 6), (held.Placed, held.Sold, held.Broken, held.SentBack, held.Goods.Count));
        Assert.Equal(5, Assert.Single(await studio.Get<FinishedGoods>().HoldersAsync("RS-1")).Units);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Theory]
    [InlineData(5, 1, 0, 5, 11)]
    [InlineData(5, 1, 1, 6, 13)]
    public async Task Report_CountsThatDoNotMeet_IsRefusedWithBothNumbers(int sold, int broken, int back, int left, int told)
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var shop = await studio.ShopAsync();
        (await studio.Get<Consignments>().PlaceAsync(studio.Ana, Twelve(batch, shop))).Expect();

        var refused = Assert.IsType<ShopCountsDiffer>((await studio.Get<Consignments>().ReportAsync(studio.Ana, Report(batch, shop, sold, broken, back, left))).Refusal);

        Assert.Equal((12, told), (refused.Held, refused.Told));
        Assert.Equal(12, await studio.UnitsAsync(batch, shop));
        Assert.Empty(await studio.Get<Sales>().ListAsync());
    }

    [Fact]
    public async Task TakeBack_OfAReport_PutsUnitsAndMoneyBackAndBothLinesStay()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var shop = await studio.ShopAsync();
        var (consignments, goods) = (studio.Get<Consignments>(), studio.Get<FinishedGoods>());
        (await consignments.PlaceAsync(studio.Ana, Twelve(batch, shop))).Expect();
        var report = (await consignments.ReportAsync(studio.Ana, Report(batch, shop, back: 2, left: 4))).Expect();

        (await goods.TakeBackAsync(studio.Bo, new TakeBackEntry { EntryId = report.EntryId, Reason = "Another shop's sheet" })).Expect();

        Assert.Equal((34, 12), (await studio.UnitsAsync(batch), await studio.UnitsAsync(batch, shop)));
        var sales = await studio.Get<Sales>().ListAsync();
        Assert.Equal((2, 0m, 0m), (sales.Count, sales.Sum(s => s.Net), sales.Sum(s => s.Fees)));
        Assert.IsType<Because>((await goods.TakeBackAsync(studio.Bo, new TakeBackEntry { EntryId = report.EntryId, Reason = "Again" })).Refusal);
        Assert.Empty(await goods.HoldersAsync("RS-1"));
        var held = Assert.Single((await consignments.FindAsync(shop))!.Held);
        Assert.Equal((12, 0, 0, 0, 12), (held.Placed, held.Sold, held.Broken, held.SentBack, held.Goods.Count));
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Place_HeldBatchOrTooMany_MovesNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var shop = await studio.ShopAsync();
        var fewer = Assert.IsType<UnitsShort>((await studio.Get<Consignments>().PlaceAsync(
            studio.Ana, new PlaceUnits { PlaceId = shop, Lines = [new UnitsToPlace { BatchId = batch, Count = 47, NetPrice = 18.33m }] })).Refusal);
        Assert.Equal((47, 46), (fewer.Wanted, fewer.There));
        await using (var db = studio.Db())
        {
            await db.Batches.Where(b => b.Id == batch).ExecuteUpdateAsync(s => s.SetProperty(b => b.HeldReason, "Haze"));
        }

        Assert.IsType<NotToBeSold>((await studio.Get<Consignments>().PlaceAsync(studio.Ana, Twelve(batch, shop))).Refusal);
        Assert.Equal(0, await studio.UnitsAsync(batch, shop));
    }

    [Fact]
    public async Task Close_WithUnitsThere_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var shop = await studio.ShopAsync();
        var consignments = studio.Get<Consignments>();
        (await consignments.PlaceAsync(studio.Ana, Twelve(batch, shop))).Expect();
        Assert.IsType<Because>((await studio.Get<Places>().CloseAsync(studio.Ana, new ClosePlace { PlaceId = shop })).Refusal);

        (await consignments.BringBackAsync(studio.Ana, new BringBackUnits { PlaceId = shop, BatchId = batch, Count = 12 })).Expect();
        (await studio.Get<Places>().CloseAsync(studio.Ana, new ClosePlace { PlaceId = shop })).Expect();

        Assert.IsType<NotFound>((await consignments.PlaceAsync(studio.Ana, Twelve(batch, shop))).Refusal);
        Assert.Equal(46, await studio.UnitsAsync(batch));
    }
}
