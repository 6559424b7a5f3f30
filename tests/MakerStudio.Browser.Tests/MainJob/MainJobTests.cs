using MakerStudio.Browser.Tests.Bench;
using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Browser.Tests.Host;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Accounts;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.MainJob;

/// <summary>
/// The main job from the first invoice to the sale, as two people in two browsers: Ana at the desk, Bo with a
/// phone. Numbers are the worked examples W1 and W2 and the scenario S8 of the trade notes, calculated by hand there.
/// </summary>
public sealed partial class MainJobTests(EmptyStudioHost host) : IClassFixture<EmptyStudioHost>
{
    private const string Fragrance = "Fig fragrance oil";
    private const string Alcohol = "Alcohol 99.5 % vol";
    private static readonly string[] Packaging = ["Bottle 100 mL", "Sprayer", "Label Fig", "Carton"];

    private readonly QuinceYard _yard = new(host);

    [Fact]
    public Task MainJob_FromReceiptToSale_CostsWhatItShouldAndLosesNoCent() => Scene.PlayAsync(host, async scene =>
    {
        var (ana, bo) = await ComeInAsync(scene);
        await FillTheStoreroomAsync(ana);
        await WriteTheFormulaAsync(ana);
        await PlanAsync(ana);
        await LookAtTheSheetTooSoonAsync(bo);
        await ReleaseTheLotsAsync(ana);
        await WeighTogetherAsync(ana, bo);
        await RestAsync(ana, bo);
        await FillAsync(ana);
        await PriceAsync(ana);
        await SellAsync(ana, bo);
        await LookAtTheBooksAsync(ana);
    });

    private async Task<(Visitor Ana, Visitor Bo)> ComeInAsync(Scene scene)
    {
        var ana = await scene.StrangerAsync(Device.Desk, "Ana");
        await ana.GoAsync($"/first-run?token={await host.App.Get<FirstRun>().IssueLinkAsync()}");
        await ana.Page.SetUpAsync("Quince Yard Studio", "Ana", "An", StudioHost.Passphrase);
        await ana.Page.Link("Go to Today").ClickAsync();
        var bo = await scene.StrangerAsync(Device.Phone, "Bo");
        await bo.GoAsync(await ana.Page.InviteAsync("Bo"));
        await bo.Page.JoinAsync("Bo", StudioHost.Passphrase);
        await host.KnowPeopleAsync();
        await _yard.SetCostsAsync();
        return (ana, bo);
    }

    /// <summary>Example W1: freight 96.00 by weight, duty 20.15 on the fragrance, surcharge 18.00 on the alcohol.</summary>
    private async Task FillTheStoreroomAsync(Visitor ana)
    {
        await ana.AddFragranceAsync(Fragrance, QuinceYard.Supplier);
        await _yard.AddMaterialsAsync();
        await ana.ReceiveAsync(
            QuinceYard.Supplier, "96.00", "942.15",
            new InvoiceLine(Fragrance, "5", "kg", "310.00", "5.6", Duty: "20.15"),
            new InvoiceLine(Alcohol, "20", "kg", "128.00", "22.4", Surcharge: "18.00"),
            new InvoiceLine("Bottle 100 mL", "500", "each", "370.00", "52.0"));
        var main = ana.Page.Locator("main");
        await Expect(main).ToContainTextAsync("67.374");
        await Expect(main).ToContainTextAsync("8.644");
        await Expect(main).ToContainTextAsync("0.8648");
        await ana.Page.Button("Post delivery").ClickAsync();
        await Expect(main).ToContainTextAsync("E-1");
        Assert.Equal(0.067374m, await host.App.ValueAsync<decimal>("select unit_cost from lots where code = 'P-1'"));
        Assert.Equal(0.008644m, await host.App.ValueAsync<decimal>("select unit_cost from lots where code = 'E-1'"));
        Assert.Equal(0.8648m, await host.App.ValueAsync<decimal>("select unit_cost from lots where code = 'B-1'"));
        await _yard.ReceiveAsync(Fragrance, 1m, AmountUnit.Kilogram, 71.90m);
        await _yard.ReceiveAsync("DPG", 2m, AmountUnit.Kilogram, 22.40m);
        await _yard.ReceivePackagingAsync();
    }

    /// <summary>The lots came without their certificates: in quarantine until these are filed.</summary>
    private static async Task ReleaseTheLotsAsync(Visitor ana)
    {
        await ana.ReleaseAsync("P-1");
        await ana.ReleaseAsync("P-2");
    }

    private static async Task WriteTheFormulaAsync(Visitor ana)
    {
        await ana.StartFormulaAsync("Fig", "Room spray, alcohol");
        await ana.TypeLinesAsync((Fragrance, "12"), ("DPG", "5"), (Alcohol, "83"));
        await ana.MeasureDensityAsync("0.815");
        await ana.AddSizeAsync("100 mL bottle", "100", "0.5", Packaging);
        await ana.ReleaseAsync(1);
    }

    /// <summary>Scenario S1: 48 bottles of 82.0 g with 1.5 % loss need 3,996 g, rounded up to 4,000 g.</summary>
    private static async Task PlanAsync(Visitor ana)
    {
        await ana.GoAsync("/bench/plan");
        await ana.Page.EnterAsync("Number", "48");
        await ana.Page.Button("Plan the batch").ClickAsync();
        await Expect(ana.Page.Heading("RS-1")).ToBeVisibleAsync();
        foreach (var grams in new[] { "4,000.0", "480.0", "200.0", "3,320.0" })
        {
            await Expect(ana.Page.Locator("main")).ToContainTextAsync(grams);
        }
    }

    /// <summary>Scenario S2: in quarantine nothing can be weighed from, and the plan says that it is short.</summary>
    private static async Task LookAtTheSheetTooSoonAsync(Visitor bo)
    {
        await bo.GoAsync("/bench/RS-1");
        await Expect(bo.Page.Locator("main")).ToContainTextAsync($"{Fragrance} is short 480.0 g");
    }

    /// <summary>Bo weighs; Ana's Today and Bench follow by themselves.</summary>
    private async Task WeighTogetherAsync(Visitor ana, Visitor bo)
    {
        await ana.GoAsync("/bench");
        var bench = ana.Page;
        var today = await ana.NewTabAsync();
        await ana.GoAsync("/");
        await bo.GoAsync("/bench/RS-1");
        await bo.Page.Button("Start weighing").TapAsync();
        await Expect(today.Locator("main")).ToContainTextAsync("Bo, line 1 of 3");
        await Expect(bench.Locator("main")).ToContainTextAsync("0 of 3 lines");

        var sheet = new Sheet(bo);
        await sheet.IsAtAsync(Fragrance);
        await sheet.TakeLotAsync("P-2");
        await sheet.WeighAsync("180", "180.0");
        await Expect(bo.Page.Locator("main")).ToContainTextAsync("Add 300.0");
        await sheet.TakeLotAsync("P-1");
        await sheet.WeighAsync("300", "300.0");
        await sheet.IsAtAsync("DPG");
        await Expect(today.Locator("main")).ToContainTextAsync("Bo, line 2 of 3");
        await Expect(bench.Locator("main")).ToContainTextAsync("480.0");

        await sheet.WeighAsync("206", "206.0");
        await sheet.AnswerAsync("Accept", "ran out of the jar too fast");
        await sheet.IsAtAsync(Alcohol);
        await TakeBackAsync(bo, "the jar was not DPG but water");
        await sheet.IsAtAsync("DPG");
        await sheet.WeighAsync("200", "200.0");
        await sheet.IsAtAsync(Alcohol);
        await sheet.WeighAsync("3320", "3,320.0");
        await Expect(bo.Page.Heading("All 3 lines are in")).ToBeVisibleAsync();
        await Expect(today.Locator("main")).ToContainTextAsync("all lines weighed");
        await Expect(bench.Locator("main")).ToContainTextAsync("3 of 3 lines");
        await StockFellAsync();
        await today.CloseAsync();
        ana.Return(bench);

        async Task StockFellAsync()
        {
            foreach (var (code, left) in new[] { ("P-1", 4_700_000L), ("P-2", 820_000L), ("D-1", 1_800_000L), ("E-1", 16_680_000L) })
            {
                Assert.Equal(left, await host.App.ValueAsync<long>("select b.on_hand from lot_balances b join lots l on l.id = b.lot_id where l.code = $1", code));
            }

            await ana.GoAsync("/storeroom/lots/E-1");
            await Expect(ana.Page.Locator("main")).ToContainTextAsync("16,680.0");
        }
    }

    private static async Task TakeBackAsync(Visitor bo, string reason)
    {
        await bo.Page.Keyboard.PressAsync("Alt+ArrowUp");
        await bo.Page.Locator(".wline:visible").GetByRole(AriaRole.Button, new() { Name = "Recorded" }).TapAsync();
        var dialog = bo.Page.GetByRole(AriaRole.Dialog);
        await dialog.GetByLabel("Why it is taken back").FillAsync(reason);
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Reverse 206.0 g" }).TapAsync();
    }

    /// <summary>Scenario S8: mixed Sat 24 Oct 20:00 in Berlin, due Mon 26 Oct 19:00 across the change of the clocks.</summary>
    private async Task RestAsync(Visitor ana, Visitor bo)
    {
        host.App.Clock.SetUtcNow(StudioHost.SaturdayEvening.AddHours(2));
        await new Sheet(bo).ConfirmLastAdditionAsync("Cupboard 1");
        await Expect(bo.Page.Heading("RS-1 is resting")).ToBeVisibleAsync();
        await Expect(bo.Page.Locator("main")).ToContainTextAsync("26 Oct 2026, 19:00");

        host.App.Clock.SetUtcNow(new DateTimeOffset(2026, 10, 26, 17, 59, 0, TimeSpan.Zero));
        await ana.GoAsync("/curing/RS-1");
        await Expect(ana.Page.Button("Record check of RS-1")).ToBeVisibleAsync();
        await Expect(ana.Page.Locator("main")).Not.ToContainTextAsync("due for check");
        host.App.Clock.SetUtcNow(new DateTimeOffset(2026, 10, 26, 18, 0, 0, TimeSpan.Zero));
        await ana.GoAsync("/");
        await Expect(ana.Page.Locator("main")).ToContainTextAsync("due for check", new() { IgnoreCase = true });
        await ana.Page.Link("Record check").ClickAsync();
        await Expect(ana.Page.Heading("RS-1")).ToBeVisibleAsync();
        await ana.Page.GetByRole(AriaRole.Radio, new() { Name = "4", Exact = true }).CheckAsync();
        await ana.Page.GetByRole(AriaRole.Radio, new() { Name = "clear", Exact = true }).CheckAsync();
        await ana.Page.EnterAsync("Character", "round, green gone");
        await ana.Page.GetByRole(AriaRole.Radio, new() { Name = "passed", Exact = true }).CheckAsync();
        await ana.Page.Button("Record check of RS-1").ClickAsync();
        await Expect(ana.Page.Locator("main")).ToContainTextAsync("RS-1 is ready.");
        await bo.GoAsync("/curing");
        await Expect(bo.Page.Locator("main")).ToContainTextAsync("ready", new() { IgnoreCase = true });
    }

    /// <summary>Example W2 and scenario S9: 46 saleable at 4.5079, in all 207.36268; 48 of each packaging used up.</summary>
    private async Task FillAsync(Visitor ana)
    {
        await ana.GoAsync("/finished/RS-1/fill");
        foreach (var (label, text) in new[]
        {
            ("Reached filling", "3940"), ("Fill of one bottle", "82"), ("Filled", "48"), ("Rejected of these", "1"), ("Retained of these", "1"),
            ("Hands-on time, whole batch", "130"),
        })
        {
            await ana.Page.EnterAsync(label, text);
        }

        await Expect(ana.Page.Locator(".worked-out")).ToContainTextAsync("207.3627");
        await ana.Page.Button("Record 48 bottles of 100 mL").ClickAsync();
        await Expect(ana.Page.Locator("main")).ToContainTextAsync("RS-1 is filled: 46 bottles to sell.");
        await ana.Page.Link("Look at the batch record").ClickAsync();
        var main = ana.Page.Locator("main");
        foreach (var figure in new[] { "46", "4.51", "207.36", "4.5079", "4.3201" })
        {
            await Expect(main).ToContainTextAsync(figure);
        }

        Assert.Equal(207.36268m, Math.Round(await host.App.ValueAsync<decimal>("select total_cost from fills"), 5));
        foreach (var (code, left) in new[] { ("B-1", 452), ("S-1", 452), ("L-1", 452), ("X-1", 452) })
        {
            Assert.Equal(left, await host.App.ValueAsync<int>("select b.on_hand from lot_balances b join lots l on l.id = b.lot_id where l.code = $1", code));
        }
    }
}
