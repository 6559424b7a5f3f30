using Bunit;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Finished.Shops;

namespace MakerStudio.Web.Tests.Finished;

/// <summary>Trade scenario S12 as it is typed.</summary>
public sealed class PlacePageTests : StudioContext
{
    protected override void Use()
    {
        Use<Consignments>();
        Use<FinishedGoods>();
        Use<Places>();
    }

    [Fact]
    public async Task Report_FiveSoldOneBroken_ShowsWhatIsOwedBeforeItIsRecorded()
    {
        var batch = await Studio.FilledBatchAsync();
        var shop = await Studio.ShopAsync();
        (await Studio.Get<Consignments>().PlaceAsync(
            Studio.Ana, new PlaceUnits { PlaceId = shop, Lines = [new UnitsToPlace { BatchId = batch, Count = 12, NetPrice = 18.33m }] })).Expect();
        var page = Render<PlacePage>(p => p.Add(x => x.Id, shop));
        page.WaitForAssertion(() => Assert.Contains("12 there by the books", page.Markup, StringComparison.Ordinal));

        await TypeAsync(page, "Sold", "5");
        await TypeAsync(page, "Broken or missing", "1");
        await TypeAsync(page, "Left, as the shop counted", "5");
        Assert.Contains("The counts do not make up the 12", page.Markup, StringComparison.Ordinal);
        await TypeAsync(page, "Left, as the shop counted", "6");
        Assert.Contains("Record the report: 59.50 owed", page.Markup, StringComparison.Ordinal);
        await page.FindAll("form")[0].SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("The shop owes 59.50: 54.99 for sold, 4.51 for broken ones.", page.Markup, StringComparison.Ordinal));
        Assert.Equal(6, await Studio.UnitsAsync(batch, shop));
    }

    [Fact]
    public async Task Report_PageReadAnewWhileItIsTyped_KeepsItsFields()
    {
        var batch = await Studio.FilledBatchAsync();
        var shop = await Studio.ShopAsync();
        await BringAsync(11);
        var page = Render<PlacePage>(p => p.Add(x => x.Id, shop));
        page.WaitForAssertion(() => Assert.Contains("11 there by the books", page.Markup, StringComparison.Ordinal));
        await TypeAsync(page, "Broken or missing", "1");
        var before = Field(page, "Sold");

        await BringAsync(1);
        page.Render(p => p.Add(x => x.Id, shop));

        page.WaitForAssertion(() => Assert.Contains("12 there by the books", page.Markup, StringComparison.Ordinal));
        // The very same field: what stands in it in the browser and was not left yet would be lost with another.
        Assert.Equal(before, Field(page, "Sold"));
        Assert.Equal("1", page.Find($"#{Field(page, "Broken or missing")}").GetAttribute("value"));

        async Task BringAsync(int count) => (await Studio.Get<Consignments>().PlaceAsync(
            Studio.Bo, new PlaceUnits { PlaceId = shop, Lines = [new UnitsToPlace { BatchId = batch, Count = count, NetPrice = 18.33m }] })).Expect();
    }

    private static async Task TypeAsync(IRenderedComponent<PlacePage> page, string label, string value)
    {
        await page.Find($"#{Field(page, label)}").ChangeAsync(new() { Value = value });
    }

    private static string Field(IRenderedComponent<PlacePage> page, string label) =>
        page.FindAll("label").First(l => l.TextContent.Trim() == label).GetAttribute("for")!;
}
