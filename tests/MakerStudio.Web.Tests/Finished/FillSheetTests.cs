using Bunit;
using Bunit.TestDoubles;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Stock;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Account;
using MakerStudio.Web.Finished;
using MakerStudio.Web.Tests.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Finished;

/// <summary>The worked batch of 4,000 g, 48 × 82.0 g; own example, computed by hand.</summary>
public sealed class FillSheetTests : ShellContext
{
    private static readonly DateOnly Today = new(2026, 10, 14);

    public FillSheetTests()
    {
        // No database answers here: what is typed must stay all the same.
        Services.AddLogging();
        Services.AddStudioServices("Host=127.0.0.1;Port=1;Username=nobody;Timeout=1");
        Services.AddScoped<CurrentPerson>();
        this.AddAuthorization().SetAuthorized("Ana");
    }

    [Fact]
    public async Task Typed_CountsAndTime_ShowYieldAndCostOfOneAtOnce()
    {
        var sheet = Sheet(Form());
        await TypeAsync(sheet, "Reached filling", "3940");
        await TypeAsync(sheet, "Filled", "48");
        await TypeAsync(sheet, "Rejected", "1");
        await TypeAsync(sheet, "Retained", "1");
        await TypeAsync(sheet, "Hands-on", "130");

        var worked = Worked(sheet);
        Assert.Equal("3,936.0 g", worked["In the bottles"]);
        Assert.Equal("98.4 %", worked["Yield of what was weighed in"]);
        Assert.Equal("4.0 g", worked["Left after filling"]);
        Assert.Equal("60.0 g", worked["Lost in filter and vessel"]);
        Assert.Equal("46", worked["Saleable"]);
        Assert.Equal("207.3627", worked["Whole batch"]);
        Assert.Equal("4.3201", worked["Per filled"]);
        Assert.Equal("4.5079", worked["Per saleable bottle"]);
        Assert.Contains("Record 48 bottles", sheet.Find("button.btn.p").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_PlannedBatch_SaysHowTheSetPointWasWorkedOut()
    {
        var sheet = Sheet(Form());
        Assert.Contains("100 mL × 0.815 g/mL = 81.5 g, and 0.5 g over", sheet.Markup, StringComparison.Ordinal);
        Assert.Equal("82", Input(sheet, "Fill of one").GetAttribute("value"));
        Assert.Equal("–", Worked(sheet)["Per saleable bottle"]);
    }

    [Fact]
    public async Task Typed_MoreThanThereWas_WarnsBesideTheNumbersAndKeepsThem()
    {
        var sheet = Sheet(Form());
        await TypeAsync(sheet, "Reached filling", "3900");
        await TypeAsync(sheet, "Filled", "48");

        Assert.Contains("More is filled than reached filling.", sheet.Markup, StringComparison.Ordinal);
        Assert.Contains("36.0 g more than there was", sheet.Markup, StringComparison.Ordinal);
        Assert.Equal("48", Input(sheet, "Filled").GetAttribute("value"));

        await TypeAsync(sheet, "Rejected", "40");
        await TypeAsync(sheet, "Retained", "9");
        Assert.Contains("More is rejected and retained than was filled.", sheet.Markup, StringComparison.Ordinal);
        Assert.Equal("–", Worked(sheet)["Per saleable bottle"]);
    }

    [Fact]
    public async Task Typed_MoreThanThePackaging_NamesWhatIsShort()
    {
        var sheet = Sheet(Form(bottles: 40));
        await TypeAsync(sheet, "Filled", "48");
        Assert.Contains("8 short", sheet.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CheckWeights_EnterTakesEach_AndTheSumsFollow()
    {
        var sheet = Sheet(Form());
        await TypeAsync(sheet, "Filled", "48");
        string[] weights = ["82.5", "82,1", "77.0"];
        for (var i = 0; i < weights.Length; i++)
        {
            await TypeAsync(sheet, "Check weight", weights[i]);
            await sheet.FindAll("form")[1].SubmitAsync();
            sheet.WaitForAssertion(() => Assert.Equal(i + 1, sheet.FindAll("ol.weights li").Count));
        }

        Assert.Contains("Check weight 4", sheet.Markup, StringComparison.Ordinal);
        var sums = Pairs(sheet, "dl.sums");
        Assert.Equal("80.53 g", sums["Mean of 3"]);
        Assert.Equal("77.0 g", sums["Lowest"]);
        Assert.Contains("is below the nominal content, 81.50 g", sheet.Markup, StringComparison.Ordinal);
        Assert.Contains("1 of 3 check weights is below 77.83 g", sheet.Markup, StringComparison.Ordinal);

        await sheet.FindAll("ol.weights button")[2].ClickAsync(new());
        sheet.WaitForAssertion(() => Assert.Equal("82.30 g", Pairs(sheet, "dl.sums")["Mean of 2"]));

        // 0.8 g over in each of 48, at the 64.09228 that 4,000 g cost: 0.6153.
        Assert.Equal("1.0 %0.62 of materials in 48", Pairs(sheet, "dl.sums")["Given away"]);
    }

    [Fact]
    public void Open_WithWhatWasKept_BringsItBack()
    {
        var form = Form();
        var kept = new RecordFill { BatchId = form.BatchId, ToFillingGrams = 3_940m, FillGrams = 81.9m, Filled = 47, CheckWeightsGrams = [82.1m], Note = "Pump 2" };
        var sheet = Sheet(form with { Draft = new FillDraft(kept, "Bo", Clock.GetUtcNow()) });

        Assert.Equal("47", Input(sheet, "Filled").GetAttribute("value"));
        Assert.Equal("81.9", Input(sheet, "Fill of one").GetAttribute("value"));
        Assert.Single(sheet.FindAll("ol.weights li"));
        Assert.Contains("Kept 18:12, Bo", Flat(sheet.Find(".mg").TextContent), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Record_Refused_SaysWhyAndKeepsWhatWasTyped()
    {
        var sheet = Sheet(Form());
        await TypeAsync(sheet, "Filled", "48");
        await sheet.Find("button.btn.p").ClickAsync(new());

        sheet.WaitForAssertion(() => Assert.Contains("Weigh what reached filling.", sheet.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        Assert.Contains("Give the hands-on minutes, 0 if none.", sheet.Markup, StringComparison.Ordinal);
        Assert.Equal("48", Input(sheet, "Filled").GetAttribute("value"));
    }

    [Fact]
    public void Refused_NotReady_NamesEachObstacle()
    {
        var form = Form() with { State = BatchState.Resting, Obstacles = [ReadyObstacle.TimeNotReached, ReadyObstacle.NoPassedCheck] };
        var refused = Render<FillRefused>(p => p.Add(r => r.Form, form));
        Assert.Contains("RS-1 is not ready to be filled.", refused.Markup, StringComparison.Ordinal);
        Assert.Contains("Its minimum rest is not over. No check has passed.", refused.Markup, StringComparison.Ordinal);
        Assert.False(form.CanFill);
    }

    private IRenderedComponent<FillSheet> Sheet(FillForm form) => Render<FillSheet>(p => p.Add(s => s.Form, form));

    private static AngleSharp.Dom.IElement Input(IRenderedComponent<FillSheet> sheet, string label) =>
        sheet.Find("#" + sheet.FindAll("label").First(l => l.TextContent.StartsWith(label, StringComparison.Ordinal)).GetAttribute("for"));

    // Keeping goes on behind the page, so a change may have to wait its turn.
    private static Task TypeAsync(IRenderedComponent<FillSheet> sheet, string label, string text) =>
        Input(sheet, label).ChangeAsync(new ChangeEventArgs { Value = text });

    private static Dictionary<string, string> Worked(IRenderedComponent<FillSheet> sheet) => Pairs(sheet, ".worked-out dl");

    private static Dictionary<string, string> Pairs(IRenderedComponent<FillSheet> sheet, string list) =>
        sheet.FindAll($"{list} dt").Zip(sheet.FindAll($"{list} dd")).ToDictionary(p => Flat(p.First.TextContent), p => Flat(p.Second.TextContent));

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static FillForm Form(long bottles = 100)
    {
        FillPart Part(string name, decimal cost, long onHand) => new(Guid.CreateVersion7(), name, 1,
            [new PricedLot(Guid.CreateVersion7(), name[..1] + "-1", LotStatus.Released, onHand, null, false, Today.AddDays(-20), cost)]);

        return new FillForm(
            Guid.CreateVersion7(), "RS-1", "Fig", 3, "room-spray-alcohol", BatchState.Ready, [], 4_000_000, 82_000, 100m, null, "100 mL", 48, 0.815m,
            [Part("Bottle 100 mL", 0.8648m, bottles), Part("Sprayer", 0.42m, 100), Part("Label", 0.19m, 100), Part("Carton", 0.36m, 100)], null,
            new FillCosts(
                [new CostedUse("Fig", 180m, 0.0719m), new CostedUse("Fig", 300m, 0.067374m), new CostedUse("DPG", 200m, 0.0112m), new CostedUse("Ethanol", 3_320m, 0.008644m)],
                18m, 9m, 0.15m),
            Today, null);
    }
}
