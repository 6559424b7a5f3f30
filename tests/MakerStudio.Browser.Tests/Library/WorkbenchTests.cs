using System.Diagnostics;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Browser.Tests.EveryPage;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Library;

/// <summary>The formula workbench on a desk and on a phone, on the sample studio's Fig v4.</summary>
public sealed class WorkbenchTests(SampleHost host) : IClassFixture<SampleHost>
{
    /// <summary>300 ms of rest after the last key, and what two busy cores may take to answer.</summary>
    private static readonly TimeSpan Prompt = TimeSpan.FromSeconds(3);

    public static TheoryData<int> Widths { get; } = [Device.Desk.Width, Device.Phone.Width];

    [Theory]
    [MemberData(nameof(Widths))]
    public Task Type_AnAmount_ChangesTheConsequencesAtOnceAndIsKept(int width) => Scene.PlayAsync(host, async scene =>
    {
        var ana = await OpenAsync(scene, width);
        var page = ana.Page;
        var limits = page.Locator("section").Filter(new() { Has = page.GetByRole(AriaRole.Heading, new() { Name = "Limits and label" }) });
        await Expect(limits.GetByText("Within. Up to")).ToBeVisibleAsync();
        var amount = page.GetByLabel("Fig fragrance oil, % by weight");
        var was = await amount.InputValueAsync();

        await amount.FillAsync("40");
        var clock = Stopwatch.StartNew();
        await Expect(limits.GetByText("Above the limit.")).ToBeVisibleAsync();
        Assert.True(clock.Elapsed < Prompt, $"It took {clock.Elapsed}.");
        await Expect(page.Locator(".facts .fx").Filter(new() { HasText = "Scent, w/w" })).ToContainTextAsync("40.00");
        await Expect(page.Locator(".kick [role=status]")).ToContainTextAsync("Kept");
        Assert.Empty(await page.SidewaysAsync());

        await amount.FillAsync(was);
        await Expect(limits.GetByText("Within. Up to")).ToBeVisibleAsync();
        await Expect(page.Locator(".kick [role=status]")).ToContainTextAsync("Kept");
    });

    [Fact]
    public Task Open_AFigureByKeyboard_ShowsItsWorkings() => Scene.PlayAsync(host, async scene =>
    {
        var page = (await OpenAsync(scene, Device.Desk.Width)).Page;
        var alcohol = page.Locator(".facts details.fx").Filter(new() { HasText = "Alcohol" }).First;
        await alcohol.Locator("summary").FocusAsync();

        await page.Keyboard.PressAsync("Enter");

        await Expect(alcohol.GetByText("OIML R 22").First).ToBeVisibleAsync();
        await Expect(alcohol.GetByText("read in the source").First).ToBeVisibleAsync();
    });

    [Fact]
    public Task WithoutFixative_IsShownUsedAndTakenBack() => Scene.PlayAsync(host, async scene =>
    {
        var page = (await OpenAsync(scene, Device.Phone.Width)).Page;
        await page.Button("Without fixative").ClickAsync();
        await Expect(page.Locator("table.diff").First).ToContainTextAsync("DPG");
        Assert.Empty(await page.SidewaysAsync());

        await page.Button("Use this").ClickAsync();
        await Expect(page.GetByLabel("DPG, % by weight")).ToBeHiddenAsync();

        await page.Button("Undo").ClickAsync();
        await Expect(page.GetByLabel("DPG, % by weight")).ToHaveValueAsync("5");
        await Expect(page.Locator(".kick [role=status]")).ToContainTextAsync("Kept");
    });

    private async Task<Visitor> OpenAsync(Scene scene, int width)
    {
        var ana = await scene.AnaAsync(width == Device.Phone.Width ? Device.Phone : Device.Desk);
        await ana.GoAsync($"/library/{await host.App.ValueAsync<Guid>("select formula_id from formula_versions where state = 'Draft' limit 1")}");
        return ana;
    }
}
