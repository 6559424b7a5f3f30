using System.Text;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Browser.Tests.EveryPage;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Files;

/// <summary>Files of rows as they are chosen in a browser: sent, looked through, opened again, taken.</summary>
public sealed class FileOfRowsTests(SampleHost host) : IClassFixture<SampleHost>
{
    [Fact]
    public Task Materials_ChosenOnAPhone_AreShownAgainAfterAReloadAndBroughtIn() => Scene.PlayAsync(host, async scene =>
    {
        var ana = await scene.AnaAsync(Device.Phone);
        var page = ana.Page;
        await ana.GoAsync("/storeroom");
        await page.GetByRole(AriaRole.Link, new() { Name = "Bring in from a file" }).ClickAsync();
        await ChooseAsync(page, "old list.csv", "Material;Kind;Density (g/mL)\nRosenöl;Essential oil;0,98\nDPG;Solvent;1,5\n");
        await Expect(page.GetByText("It is here already, with")).ToBeVisibleAsync();
        await Expect(page.Locator("button").Filter(new() { HasText = "1 row is refused" })).ToBeVisibleAsync();
        Assert.Empty(await page.SidewaysAsync());

        await ChooseAsync(page, "mended.csv", "Material;Kind;Density (g/mL)\nRosenöl;Essential oil;0,98\n");
        await Expect(page.GetByText("1 of 1 rows would be brought in: 1 material.")).ToBeVisibleAsync();
        await page.ReloadAsync();
        await Expect(page.GetByText("1 of 1 rows would be brought in: 1 material.")).ToBeVisibleAsync();
        await page.Button("Bring in 1 material").ClickAsync();

        await Expect(page.GetByText("1 material: brought in.")).ToBeVisibleAsync();
        Assert.Equal(0.98m, await host.App.ValueAsync<decimal>("select density from materials where name = 'Rosenöl'"));
    });

    [Fact]
    public Task Sales_ChosenOnADesk_AreShownLineByLineBeforeAnyIsRecorded() => Scene.PlayAsync(host, async scene =>
    {
        var ana = await scene.AnaAsync(Device.Desk);
        var page = ana.Page;
        var before = await host.App.ValueAsync<long>("select count(*) from sales");
        await ana.GoAsync("/finished/sales/import");
        await ChooseAsync(page, "web shop.csv", "date,order,product,quantity,price\n2026-11-20,1001,Fig,1,22.50\n2026-11-20,1002,Plum,1,22.50\n");

        await Expect(page.GetByText("1 row is rejected.")).ToBeVisibleAsync();
        await page.Button("Show rejected rows only").ClickAsync();
        await Expect(page.Locator("tbody tr")).ToHaveCountAsync(1);
        await Expect(page.Locator("tbody tr")).ToContainTextAsync("“Plum” is not on the studio's shelf.");
        await ChooseAsync(page, "no columns.csv", "when,what\n2026-11-20,Fig\n");

        await Expect(page.GetByText("The first line does not name date")).ToBeVisibleAsync();
        Assert.Equal(before, await host.App.ValueAsync<long>("select count(*) from sales"));
    });

    private static async Task ChooseAsync(IPage page, string name, string text)
    {
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(text) });
        await page.Button("Look at the file").ClickAsync();
    }
}
