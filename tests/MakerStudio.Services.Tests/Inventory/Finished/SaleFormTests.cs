using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests.Inventory.Prices;

namespace MakerStudio.Services.Tests.Inventory.Finished;

/// <summary>What the form of a sale proposes; own examples.</summary>
public class SaleFormTests
{
    [Fact]
    public async Task Form_ProposesTheTagOfTheChannel_AndAShopsPartOfIt()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, stall) = await scene.ChannelsAsync();
        var shop = (await scene.Book.KeepChannelAsync(scene.Studio.Ana, PriceScene.Channel("Wholesale") with { OurSharePercent = 50 })).Expect().ChannelId;
        await scene.TagAsync(22.00m, web, shop);
        await scene.TagAsync(21.00m, stall);
        (await scene.Book.SetTagAsync(scene.Studio.Ana, new SetTag { SizeId = scene.Size, ChannelIds = [web], Amount = 25m, From = new DateOnly(2026, 11, 20) })).Expect();
        (await scene.Studio.Get<Sales>().RecordAsync(scene.Studio.Bo, SeedGoods.SaleOf(scene.Batch, 1, 19m))).Expect();

        var form = (await scene.Studio.Get<Sales>().FormAsync())!;

        var fig = form.Goods[0].Product;
        Assert.Equal(["Web shop", "Market stall", "Wholesale"], form.Channels.Select(c => c.Name));
        Assert.Equal([22.00m, 22.00m, 21.00m, 11.00m, 19.00m], new[] { "Web shop", "web SHOP ", "Market stall", "Wholesale", "Fair" }.Select(c => form.TagOf(fig, c)));
    }

    [Fact]
    public async Task Form_RetiredChannelAndTagTakenOut_ProposesWhatItLastCost()
    {
        await using var scene = await PriceScene.NewAsync();
        var (web, stall) = await scene.ChannelsAsync();
        await scene.TagAsync(22.00m, web, stall);
        (await scene.Book.RetireChannelAsync(scene.Studio.Ana, new RetireChannel { ChannelId = web })).Expect();
        (await scene.Book.SetTagAsync(scene.Studio.Ana, new SetTag { SizeId = scene.Size, ChannelIds = [stall], Amount = null })).Expect();

        var form = (await scene.Studio.Get<Sales>().FormAsync())!;

        Assert.Null(form.TagOf(form.Goods[0].Product, "Web shop"));
        Assert.Empty(form.Asked);
    }
}
