using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Core.Quantities;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.Bench;

/// <summary>The weigh sheet on a phone, one hand, and all that goes wrong at a bench. Lines of 1,000 g: 120.0, 50.0, 830.0.</summary>
public sealed class WeighSheetTests(BenchHost host) : IClassFixture<BenchHost>
{
    private const string LineIsDown = "net::ERR_|Failed to load resource|Failed to fetch";
    private const string Unreachable = "The studio machine cannot be reached.";

    [Fact]
    public Task Record_ByThumb_UsesUpTheLotAtOnceAndGoesToTheNextLine() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var before = await host.OnHandAsync("Fig fragrance oil");
        var bo = await scene.BoAsync();
        var sheet = await Sheet.OpenAsync(bo, code);
        await sheet.IsAtAsync("Fig fragrance oil");
        await sheet.PressAsync("119.9");
        await Expect(bo.Page.Locator("#verdict")).ToContainTextAsync("0.1 g under");
        await sheet.RecordAsync("119.9");
        await sheet.IsAtAsync("DPG");
        Assert.Equal(before - 119_900, await host.OnHandAsync("Fig fragrance oil"));
        Assert.Equal(1, await host.WeighingsAsync(batch));
        Assert.Empty(await bo.Page.SidewaysAsync());
    });

    [Fact]
    public Task Record_ByKeyboardAtTheDesk_WorksWithoutTheKeys() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Ana, 1_000m);
        var ana = await scene.AnaAsync();
        var sheet = await Sheet.OpenAsync(ana, code);
        await Expect(sheet.Reading).ToBeFocusedAsync();
        await ana.Page.Keyboard.TypeAsync("120");
        await ana.Page.Keyboard.PressAsync("Enter");
        await sheet.IsAtAsync("DPG");
        await ana.Page.Keyboard.PressAsync("Alt+ArrowDown");
        await sheet.IsAtAsync("Alcohol 99.5 % vol");

        // What happens elsewhere in the studio does not turn the page for her.
        await ana.Page.RunAndWaitForResponseAsync(() => host.Yard.ReceiveAsync("DPG", 1m, AmountUnit.Kilogram, 11.20m), $"**/bench/{code}/weigh");
        await sheet.IsAtAsync("Alcohol 99.5 % vol");
        await ana.Page.Keyboard.PressAsync("Alt+ArrowUp");
        await sheet.IsAtAsync("DPG");
        Assert.Equal(1, await host.WeighingsAsync(batch));
    });

    [Fact]
    public Task SayTargets_SwitchedOn_SaysEachLineOnceAndIsRememberedHere() => Scene.PlayAsync(host, async scene =>
    {
        var (_, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var bo = await scene.BoAsync();
        await bo.Context.AddInitScriptAsync("window.spoken = []; speechSynthesis.speak = said => window.spoken.push(said.text)");
        var sheet = await Sheet.OpenAsync(bo, code);
        var aloud = bo.Page.GetByLabel("Say each target aloud");
        await Expect(aloud).Not.ToBeCheckedAsync();
        await sheet.WeighAsync("60", "60.0");
        await Expect(bo.Page.Locator(".wline:visible")).ToContainTextAsync("to reach 120.0");
        Assert.Empty(await SpokenAsync());

        await aloud.TapAsync();
        await host.Yard.ReceiveAsync("DPG", 1m, AmountUnit.Kilogram, 11.20m); // The sheet is fetched anew and says nothing again.
        await sheet.WeighAsync("60", "60.0");
        await sheet.IsAtAsync("DPG");
        Assert.Collection(
            await SpokenAsync(),
            first => Assert.Matches(@"^Fig fragrance oil\. Add 60\.0 grams, within 0\.6\. Lot P \d+\.$", first),
            then => Assert.Matches(@"^DPG\. Target 50\.0 grams, within 0\.2\. Lot D \d+\.$", then));

        await bo.Page.ReloadAsync();
        await Expect(aloud).ToBeCheckedAsync();
        Task<string[]> SpokenAsync() => bo.Page.EvaluateAsync<string[]>("window.spoken");
    });

    [Fact]
    public Task Print_HalfWeighed_HasWhatIsInAndBoxesForTheRest() => Scene.PlayAsync(host, async scene =>
    {
        var (_, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var bo = await scene.BoAsync();
        var sheet = await Sheet.OpenAsync(bo, code);
        await sheet.WeighAsync("120", "120.0");
        await sheet.IsAtAsync("DPG");
        await bo.Page.EmulateMediaAsync(new() { Media = Media.Print });
        var paper = bo.Page.Locator(".wpaper");
        await Expect(paper).ToBeVisibleAsync();
        await Expect(paper.Locator("tbody tr").First).ToContainTextAsync("120.0");
        await Expect(paper.Locator(".wbox:visible")).ToHaveCountAsync(6);
        await Expect(bo.Page.Locator(".pad")).ToBeHiddenAsync();
        await Expect(bo.Page.Locator("[data-record]")).ToBeHiddenAsync();
    });

    [Fact]
    public Task LineDown_ReadingPressed_IsKeptThenSentOnce() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var bo = await scene.BoAsync();
        bo.Expect(LineIsDown);
        var sheet = await Sheet.OpenAsync(bo, code);
        await bo.Context.SetOfflineAsync(true);
        await Expect(sheet.Banner).ToContainTextAsync(Unreachable);
        await sheet.WeighAsync("120", "120.0");
        await Expect(sheet.Banner).ToContainTextAsync("Readings are still kept on this phone: 1");
        await sheet.IsAtAsync("DPG");
        Assert.Equal(0, await host.WeighingsAsync(batch));

        await bo.Context.SetOfflineAsync(false);
        await Expect(sheet.Banner).ToBeHiddenAsync();
        await Expect(bo.Page.Locator("[data-total-shown]")).ToHaveTextAsync("120.0");
        Assert.Equal(1, await host.WeighingsAsync(batch));
    });

    [Fact]
    public Task AnswerLost_ReadingSentAgain_HasOneEffect() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var before = await host.OnHandAsync("Fig fragrance oil");
        var bo = await scene.BoAsync();
        bo.Expect(LineIsDown);
        var sheet = await Sheet.OpenAsync(bo, code);
        var reached = 0;
        await bo.Page.RouteAsync("**/bench/readings", async route =>
        {
            // The studio takes the reading; the way back breaks off, twice.
            if (Interlocked.Increment(ref reached) <= 2)
            {
                await route.FetchAsync();
                await route.AbortAsync();
            }
            else
            {
                await route.ContinueAsync();
            }
        });
        await sheet.WeighAsync("120", "120.0");
        await sheet.IsAtAsync("DPG");
        await Expect(sheet.Banner).ToBeHiddenAsync();
        await Expect(bo.Page.Locator("[data-total-shown]")).ToHaveTextAsync("120.0");
        Assert.True(reached >= 3);
        Assert.Equal(1, await host.WeighingsAsync(batch));
        Assert.Equal(before - 120_000, await host.OnHandAsync("Fig fragrance oil"));
    });

    [Fact]
    public Task Reload_MidLine_TypedDigitsStand() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var bo = await scene.BoAsync();
        var sheet = await Sheet.OpenAsync(bo, code);
        await sheet.PressAsync("118.7");
        await bo.Page.ReloadAsync();
        await Expect(sheet.Reading).ToHaveValueAsync("118.7");
        await Expect(bo.Page.Locator("#verdict")).ToContainTextAsync("1.3 g to go");
        Assert.Equal(0, await host.WeighingsAsync(batch));
    });

    /// <summary>The phone locks and the browser throws the page away; a reading waits in it, another is half typed.</summary>
    [Fact]
    public Task LockedPhone_PageThrownAway_NothingIsLost() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var bo = await scene.BoAsync();
        bo.Expect(LineIsDown);
        var sheet = await Sheet.OpenAsync(bo, code);
        await bo.Context.SetOfflineAsync(true);
        await Expect(sheet.Banner).ToContainTextAsync(Unreachable);
        await sheet.WeighAsync("120", "120.0");
        await sheet.IsAtAsync("DPG");
        await sheet.PressAsync("49.9");
        await bo.Page.CloseAsync();
        await bo.Context.SetOfflineAsync(false);
        await bo.NewTabAsync();
        await bo.GoAsync($"/bench/{code}/weigh");
        await sheet.IsAtAsync("DPG");
        await Expect(sheet.Reading).ToHaveValueAsync("49.9");
        await Expect(sheet.Banner).ToBeHiddenAsync();
        await sheet.RecordAsync("49.9");
        await sheet.IsAtAsync("Alcohol 99.5 % vol");
        Assert.Equal(2, await host.WeighingsAsync(batch));
    });

    /// <summary>Scenario S6: 3.32 typed where 3,320 g is the target; here 0.83 for 830 g.</summary>
    [Fact]
    public Task WrongMagnitude_Asked_NothingSavedUntilAnswered() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var bo = await scene.BoAsync();
        var sheet = await Sheet.OpenAsync(bo, code);
        await sheet.WeighAsync("0.12", "0.12");
        var ask = bo.Page.Locator("[data-ask]");
        await Expect(ask).ToContainTextAsync("1,000 times below the target; did you mean 0.12 kg?");
        Assert.Equal(0, await host.WeighingsAsync(batch));
        await bo.Page.Button("Read the scale again").TapAsync();
        await Expect(sheet.Reading).ToHaveValueAsync("0.12");
        Assert.Equal(0, await host.WeighingsAsync(batch));
        await sheet.RecordAsync("0.12");
        await sheet.AnswerAsync("Record 120.0 g");
        await sheet.IsAtAsync("DPG");
        Assert.Equal(120_000, await host.App.ValueAsync<long>("select net_milligrams from weighings where batch_id = $1", batch));
    });

    /// <summary>Scenario S3: 206.0 on 200.0; correcting by × 1.03 adds 14.4 g fragrance, alcohol 3,419.6, total 4,120.0 g.</summary>
    [Fact]
    public Task OverTolerance_Corrected_ScalesTheRest() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 4_000m);
        var bo = await scene.BoAsync();
        var sheet = await Sheet.OpenAsync(bo, code);
        await sheet.WeighAsync("480", "480.0");
        await sheet.IsAtAsync("DPG");
        await sheet.PressAsync("206");
        await Expect(bo.Page.Locator("#verdict")).ToContainTextAsync("6.0 g over, +3.0 %");
        await sheet.RecordAsync("206.0");
        var ask = bo.Page.Locator("[data-ask]");
        await Expect(ask).ToContainTextAsync("14.4");
        await Expect(ask).ToContainTextAsync("3,419.6");
        await Expect(ask).ToContainTextAsync("4,120.0");
        await Expect(ask).ToContainTextAsync("5.14");
        Assert.Equal(1, await host.WeighingsAsync(batch));
        await sheet.AnswerAsync("Correct");
        await sheet.IsAtAsync("Fig fragrance oil");
        await sheet.WeighAsync("14.4");
        await sheet.IsAtAsync("Alcohol 99.5 % vol");
        await sheet.WeighAsync("3419.6", "3,419.6");
        await Expect(bo.Page.Heading("All 3 lines are in")).ToBeVisibleAsync();
        await Expect(bo.Page.Locator("main")).ToContainTextAsync("4,120.0");
    });

    [Fact]
    public Task Sheet_OfThePartner_SaysWhoWeighsAndIsTakenOverOnPurpose() => Scene.PlayAsync(host, async scene =>
    {
        var (batch, code) = await host.Yard.StartBatchAsync(host.Bo, 1_000m);
        var bo = await scene.BoAsync();
        var ana = await scene.AnaAsync();
        var his = await Sheet.OpenAsync(bo, code);
        await Sheet.OpenAsync(ana, code);
        await Expect(ana.Page.Heading($"Bo is weighing {code}")).ToBeVisibleAsync();
        await his.WeighAsync("120", "120.0");
        await Expect(ana.Page.Locator("main")).ToContainTextAsync("1 of 3 lines are done");

        await ana.Page.Button("Take over from Bo").ClickAsync();
        await Expect(ana.Page.Heading("DPG")).ToBeVisibleAsync();
        await Expect(bo.Page.Heading($"Ana is weighing {code}")).ToBeVisibleAsync();
        Assert.Equal(1, await host.WeighingsAsync(batch));
    });
}
