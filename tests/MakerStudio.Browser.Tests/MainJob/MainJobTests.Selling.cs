using System.Globalization;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Services.Inventory;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.MainJob;

/// <summary>
/// From the cost of the bottle to its sale: examples W2 and W3 and scenario S12 of the trade notes. What is expected is
/// worked out here from what was put in, not read off the page.
/// </summary>
public sealed partial class MainJobTests
{
    private const decimal Saleable = 46m;

    /// <summary>Example W2, all of the batch: fragrance 300 g × 67.374 + 180 g × 71.90, alcohol, DPG, packaging, labour, overhead.</summary>
    private static readonly decimal[] BatchParts = [33.1542m, 28.69808m, 2.24m, 88.0704m, 39.00m, 16.20m];

    private static decimal UnitCost => BatchParts.Sum() / Saleable;

    /// <summary>Example W3: 22.00 with 20 % tax in it leaves 18.33 and a margin of 75.4 %.</summary>
    private async Task PriceAsync(Visitor ana)
    {
        var page = ana.Page;
        await ana.GoAsync("/prices/channels");
        await page.Button("Add a channel").ClickAsync();
        await Section(page, "Channels").EnterAsync("Channel", "Web shop");
        await Section(page, "Channels").EnterAsync("Tax", "20");
        await page.Button("Keep the channel").ClickAsync();
        await Expect(page.GetByRole(AriaRole.Cell, new() { Name = "Web shop" }).First).ToBeVisibleAsync();

        await ana.GoAsync($"/prices/{await host.App.ValueAsync<Guid>("select id from formula_sizes")}");
        await page.GetByRole(AriaRole.Radio, new() { Name = "RS-1, as filled" }).CheckAsync();
        await LookAtTheCostAsync(page);

        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Web shop" }).CheckAsync();
        await Section(page, "New price").EnterAsync("Tag", "22");
        await page.Button("Set the tag").ClickAsync();
        var row = Section(page, "Channels").Locator("tbody tr").First;
        foreach (var figure in new[] { "22.00", "18.33", "75.4 %" })
        {
            await Expect(row).ToContainTextAsync(figure);
        }
    }

    /// <summary>The drawing, its sentence and its table say the same, and what the batch was made of.</summary>
    private static async Task LookAtTheCostAsync(IPage page)
    {
        var cost = Section(page, "Cost");
        var table = cost.Locator("table").First;
        await Expect(table.Locator("tr.tot")).ToContainTextAsync(Shown(UnitCost));
        foreach (var part in BatchParts)
        {
            await Expect(table).ToContainTextAsync(Shown(part / Saleable));
        }

        await Expect(cost.GetByRole(AriaRole.Img).First).ToHaveAccessibleNameAsync(new System.Text.RegularExpressions.Regex($"^One costs {Shown(UnitCost)}: "));
        var lengths = await cost.Locator("figure svg.bar-row").First.Locator("rect").EvaluateAllAsync<double[]>("bars => bars.map(b => b.getBoundingClientRect().width)");
        Assert.Equal(BatchParts.Length, lengths.Length);
        foreach (var (drawn, part) in lengths.Order().Zip(BatchParts.Order()))
        {
            Assert.Equal((double)(part / BatchParts.Sum()), drawn / lengths.Sum(), 0.01);
        }
    }

    /// <summary>Scenario S12: twelve stand with a shop, none is sold before it reports 5 sold, 1 broken and 6 left.</summary>
    private async Task SellAsync(Visitor ana, Visitor bo)
    {
        var shop = ana.Page;
        await ana.GoAsync("/finished/places");
        await shop.EnterAsync("Name", "Harbour Shop");
        await shop.EnterAsync("Commission, of the net", "40");
        await shop.GetByRole(AriaRole.Radio, new() { Name = "the shop pays" }).CheckAsync();
        await shop.Button("Add the place").ClickAsync();
        await Expect(shop.Heading("Harbour Shop")).ToBeVisibleAsync();
        await shop.EnterAsync("How many", "12");
        await shop.EnterAsync("Net price of one, agreed", "18.33");
        await shop.Button("Bring 12 of RS-1 to Harbour Shop").ClickAsync();
        await Expect(shop.Locator("main")).ToContainTextAsync("12 of your units stand there");
        Assert.Equal(0, await host.App.ValueAsync<int>("select count(*) from sales"));

        await bo.GoAsync("/finished/sell");
        var sell = bo.Page;
        await Expect(sell.Locator("main")).ToContainTextAsync("34 here");
        await Expect(sell.GetByLabel("Tag of one")).ToHaveValueAsync("22");
        var more = sell.GetByRole(AriaRole.Button, new() { Name = "One more of" });
        await more.TapAsync();
        await more.TapAsync();
        await sell.Button("Record 2 sold for 44.00").TapAsync();
        await Expect(sell.Locator("main")).ToContainTextAsync("36.67 without tax");

        foreach (var (label, text) in new[] { ("Sold", "5"), ("Broken or missing", "1"), ("Left, as the shop counted", "6"), ("Paid for a broken one", "4.51") })
        {
            await shop.EnterAsync(label, text);
        }

        await shop.Button("Record the report: 59.50 owed").ClickAsync();
        await Expect(shop.Locator("main")).ToContainTextAsync("The shop owes 59.50: 54.99 for sold, 4.51 for broken ones.");
        await Expect(shop.Locator("main")).ToContainTextAsync("6 of your units stand there");
    }

    /// <summary>
    /// The books go first in, first out whatever lot was on the scale: all 480 g of fragrance at the 67.374 of the first
    /// delivery. 46 − 2 − 5 − 1 = 38 units are left, wherever they stand; the shop pays for the broken one, so eight count
    /// as sold. Every cent is found again.
    /// </summary>
    private async Task LookAtTheBooksAsync(Visitor ana)
    {
        await ana.GoAsync("/prices/books");
        var part = Section(ana.Page, "Nothing is lost");
        var inTheBooks = (BatchParts.Sum() - BatchParts[0] + 480 * 0.067374m) / Saleable;
        await Expect(part).ToContainTextAsync(Coins(38 * inTheBooks));
        await Expect(part).ToContainTextAsync(Coins(8 * inTheBooks));
        await Expect(ana.Page.Locator("main")).Not.ToContainTextAsync("is missing");
        // Received: the deliveries of the first day; conversion: labour and overhead of the batch.
        var wentIn = (await host.App.ValueAsync<decimal>("select sum(landed_total) from delivery_lines")) + 39.00m + 16.20m;
        await Expect(part).ToContainTextAsync(Coins(wentIn));
        var report = await host.App.Get<Verify>().RunAsync();
        Assert.True(report.Agrees, string.Join('\n', report.Differences));
    }

    private static ILocator Section(IPage page, string title) =>
        page.Locator("section.sec").Filter(new() { Has = page.GetByRole(AriaRole.Heading, new() { Level = 2, Name = title, Exact = true }) });

    private static string Shown(decimal amount) => amount.ToString("#,0.0000", CultureInfo.InvariantCulture);

    private static string Coins(decimal amount) => amount.ToString("#,0.00", CultureInfo.InvariantCulture);
}
