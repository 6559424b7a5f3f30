using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Prices;

/// <summary>Margins over time of the worked batch: 207.36268 over 46 bottles; own examples.</summary>
public class MarginHistoryTests
{
    [Fact]
    public async Task Margins_ChannelChangedLater_KeepTheTermsOfTheirTime()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, _) = await scene.ChannelsAsync();
        await scene.TagAsync(22.00m, web);
        scene.Studio.Clock.Advance(TimeSpan.FromDays(10));
        var opened = (await scene.Book.ReadAsync()).Channels.Single(c => c.Id == web);
        (await scene.Book.KeepChannelAsync(scene.Studio.Ana, PriceScene.Channel("Web shop") with { ChannelId = web, Version = opened.Version, TaxPercent = 10, Fees = [new() { Name = "Card", Percent = 3 }] })).Expect();

        var stood = (await scene.Book.MarginsAsync(scene.Size))!.Stood;

        // 22.00 ÷ 1.2 and 22.00 ÷ 1.1 over 207.36268 ÷ 46.
        Assert.Equal([0.7541m, 0.7746m], stood.Select(m => Math.Round(m.Margin!.Value, 4)));
        Assert.All(stood, m => Assert.Equal((22.00m, "RS-1", 207.36268m / 46), (m.Tag, m.Batch, m.UnitCost)));
        // Before: fees 2.9 % + 0.30, 6.5 %, mailer 0.55 as in W4. After: 3 % of the tag and no mailer.
        Assert.Equal(Math.Round((22m / 1.2m) - (0.094m * 22m) - 0.85m - (207.36268m / 46), 4), Math.Round(stood[0].Contribution, 4));
        Assert.Equal(Math.Round((22m / 1.1m) - (0.03m * 22m) - (207.36268m / 46), 4), Math.Round(stood[1].Contribution, 4));
    }

    [Fact]
    public async Task Margins_OfSales_AsTheyHappened_LeaveOutWhatWasTakenBack()
    {
        await using var scene = await PriceScene.NewAsync();
        var sales = scene.Studio.Get<Sales>();
        (await sales.RecordAsync(scene.Studio.Bo, SeedGoods.SaleOf(scene.Batch, 3, 22m))).Expect();
        (await sales.RecordAsync(scene.Studio.Bo, SeedGoods.SaleOf(scene.Batch, 1, 18m))).Expect();
        var wrong = (await sales.RecordAsync(scene.Studio.Bo, SeedGoods.SaleOf(scene.Batch, 5, 1m))).Expect();
        (await scene.Studio.Get<FinishedGoods>().TakeBackAsync(scene.Studio.Bo, new TakeBackEntry { EntryId = wrong.SaleId, Reason = "Wrong tag" })).Expect();

        var sold = Assert.Single((await scene.Book.MarginsAsync(scene.Size))!.Sold);

        Assert.Equal(("Stall", 4, 70.00m), (sold.Channel, sold.Units, Math.Round(sold.Revenue, 2)));
        Assert.Equal(Math.Round((70m - (4 * 207.36268m / 46)) / 70m, 6), Math.Round(sold.Margin!.Value, 6));
    }

    /// <summary>S12: five of 18.33 net at 40 % commission are 54.99 of ours; nothing counts before the report.</summary>
    [Fact]
    public async Task Margins_OfAShop_CountItsReportAtOurPart()
    {
        await using var scene = await PriceScene.NewAsync();
        var shop = await scene.Studio.ShopAsync();
        var consignments = scene.Studio.Get<Consignments>();
        (await consignments.PlaceAsync(scene.Studio.Ana, new PlaceUnits { PlaceId = shop, Lines = [new() { BatchId = scene.Batch, Count = 12, NetPrice = 18.33m }] })).Expect();
        Assert.Empty((await scene.Book.MarginsAsync(scene.Size))!.Sold);

        (await consignments.ReportAsync(scene.Studio.Ana, new RecordShopReport
        {
            PlaceId = shop, Lines = [new() { BatchId = scene.Batch, Sold = 5, Broken = 1, Left = 6, NetPrice = 18.33m, CommissionPercent = 40m, PaidPerBroken = 4.51m }],
        })).Expect();

        var sold = Assert.Single((await scene.Book.MarginsAsync(scene.Size))!.Sold);
        Assert.Equal((5, 54.99m), (sold.Units, sold.Revenue));
    }

    [Fact]
    public async Task Terms_InTheDatabase_AreHistory()
    {
        await using var scene = await PriceScene.NewAsync();
        await scene.ChannelsAsync();
        await using var owner = new StudioDb(StudioDbOptions.For(scene.Studio.OwnerConnectionString));

        await Assert.ThrowsAnyAsync<Exception>(() => owner.Database.ExecuteSqlAsync($"update channel_terms set tax_rate = 0"));
        await Assert.ThrowsAnyAsync<Exception>(() => owner.Database.ExecuteSqlAsync($"delete from channel_terms"));
        Assert.Equal(2, await owner.ChannelTerms.CountAsync());
    }
}
