using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Services;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Library;
using MakerStudio.Web.Library.Workbench;
using MakerStudio.Web.Shell.Fields;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Web.Tests.Library;

/// <summary>Consequences beside the lines: figures, workings, advice, variants.</summary>
public sealed class WorkbenchTests : StudioContext
{
    private Guid _formula;

    protected override void Use()
    {
        Use<Formulas>();
        Use<Versions>();
        Use<Sizes>();
        Use<Materials>();
    }

    [Fact]
    public async Task Type_AnAmount_ChangesWhatFollows()
    {
        var page = await SprayAsync();
        var before = Figure(page, "Alcohol").QuerySelector(".is")!.TextContent;

        await Amount(page, "Fig fragrance oil, % by weight").InputAsync("40");
        Studio.Clock.Advance(TimeSpan.FromMilliseconds(300));

        page.WaitForAssertion(() => Assert.NotEqual(before, Figure(page, "Alcohol").QuerySelector(".is")!.TextContent));
        Assert.Contains("59.51", Figure(page, "Alcohol").TextContent, StringComparison.Ordinal); // 60 % of 99.18 % by weight
    }

    [Fact]
    public async Task Open_AFigure_ShowsLineRuleAndSource()
    {
        var page = await SprayAsync();

        var alcohol = Figure(page, "Alcohol");

        Assert.Contains("Ethanol brings", alcohol.TextContent, StringComparison.Ordinal);
        Assert.Contains("OIML R 22", alcohol.QuerySelector(".src:last-of-type")!.TextContent + alcohol.TextContent, StringComparison.Ordinal);
        Assert.NotNull(alcohol.QuerySelector("summary"));
    }

    [Fact]
    public async Task Release_WithStopAdvice_IsNotYetPossibleAndSaysWhy()
    {
        var page = await MistAsync();

        var release = page.FindAll("button").Single(b => b.TextContent.Contains("Release v1", StringComparison.Ordinal));

        Assert.Equal("true", release.GetAttribute("aria-disabled"));
        Assert.Contains("1 to answer under Advice", release.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task KeepItAnyway_AsksForAReasonAndRecordsWhoAndWhy()
    {
        var page = await MistAsync();
        await Button(page, "Keep it anyway: Water and scent, no solubiliser").ClickAsync(new());

        await page.FindAll(".anyway button")[0].ClickAsync(new());
        Assert.Contains("needs a reason", page.Find(".anyway").TextContent, StringComparison.Ordinal);
        Assert.Empty((await DraftAsync()).Overrides);

        await page.Find(".anyway input").ChangeAsync("Shaken before each spray");
        await page.FindAll(".anyway button")[0].ClickAsync(new());

        page.WaitForAssertion(() => Assert.Contains("Kept anyway: Shaken before each spray Ana", page.Find(".adv.set").TextContent, StringComparison.Ordinal));
        Assert.Equal("Shaken before each spray", Assert.Single((await DraftAsync()).Overrides).Reason);
        Assert.DoesNotContain("to answer", page.FindAll("button").Single(b => b.TextContent.Contains("Release v1", StringComparison.Ordinal)).TextContent, StringComparison.Ordinal);

        await Button(page, "Take back: Water and scent, no solubiliser").ClickAsync(new());
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".adv.set")));
        Assert.Empty((await DraftAsync()).Overrides);
    }

    [Fact]
    public async Task WithoutFixative_ShowsWhatDiffersAndOnlyUsingItChangesTheDraft()
    {
        var page = await SprayAsync(fixative: true);
        await page.FindAll("button").Single(b => b.TextContent == "Without fixative").ClickAsync(new());

        Assert.Contains("88.00", page.Find(".diff").TextContent, StringComparison.Ordinal);
        Assert.Equal(3, (await DraftAsync()).Lines.Count);

        await page.FindAll("button").Single(b => b.TextContent == "Use this").ClickAsync(new());

        page.WaitForAssertion(() => Assert.StartsWith("Kept ", page.Find(".kick [role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal(2, (await DraftAsync()).Lines.Count);

        await page.FindAll(".undo button").Single().ClickAsync(new());
        page.WaitForAssertion(() => Assert.Equal(3, page.FindAll("table.lines .what .name").Count));
        Assert.Equal([null, 12m, 5m], (await DraftAsync()).Lines.Select(l => l.Amount));
    }

    [Fact]
    public async Task Measure_AFlashPoint_HoldsOverTheEstimate()
    {
        var page = await SprayAsync();
        Assert.Contains("Flash point, estimate", page.Markup, StringComparison.Ordinal);

        await Amount(page, "Flash point, closed cup").ChangeAsync("18.5");
        await page.FindAll("button").Single(b => b.TextContent == "Keep what was measured").ClickAsync(new());
        await page.FindAll("form").Single(f => f.TextContent.Contains("Keep what was measured", StringComparison.Ordinal)).SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("Measured: flash point 18.5 °C", page.Markup, StringComparison.Ordinal));
        page.WaitForAssertion(() => Assert.Contains("18.5", Figure(page, "Flash point").TextContent, StringComparison.Ordinal));
        Assert.Equal(18.5m, (await DraftAsync()).Measured.FlashPoint);
    }

    /// <summary>What stands in a field that was not left yet is known to the browser only, so the field must not be made anew.</summary>
    [Fact]
    public async Task Measure_PageIsReadAgain_KeepsTheFields()
    {
        var page = await SprayAsync();
        var part = page.FindComponent<MeasuredPart>();
        var fields = part.FindComponents<QuantityField>().Select(f => f.Instance).ToArray();

        await page.InvokeAsync(() => part.Instance.SetParametersAsync(ParameterView.FromDictionary(new Dictionary<string, object?>
        {
            [nameof(MeasuredPart.Sheet)] = part.Instance.Sheet with { },
            [nameof(MeasuredPart.Version)] = part.Instance.Version with { KeptAt = Studio.Clock.GetUtcNow() },
        })));

        Assert.NotEmpty(fields);
        Assert.Equal(fields, part.FindComponents<QuantityField>().Select(f => f.Instance));
    }

    /// <summary>Ethanol of 99.5 % vol as the rest, 12 % fragrance, and 5 % fixative when asked for.</summary>
    private async Task<IRenderedComponent<FormulaPage>> SprayAsync(bool fixative = false)
    {
        var ethanol = await Studio.MaterialAsync("Ethanol", MaterialKind.Solvent, density: 0.79m);
        await using (var db = Studio.Db())
        {
            await db.Materials.Where(m => m.Id == ethanol).ExecuteUpdateAsync(m => m
                .SetProperty(x => x.AlcoholValue, 99.5m).SetProperty(x => x.AlcoholBasis, AlcoholBasis.PercentVolume));
        }

        var oil = await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        List<KeptLine> lines = [Line(ethanol, null), Line(oil, 12)];
        if (fixative)
        {
            lines.Add(Line(await Studio.MaterialAsync("DPG", MaterialKind.Fixative, density: 1.02m), 5));
        }

        return await OpenAsync("room-spray-alcohol", lines);
    }

    /// <summary>Water, scent and no solubiliser: it will separate.</summary>
    private async Task<IRenderedComponent<FormulaPage>> MistAsync() => await OpenAsync(
        "room-spray-water",
        [
            Line(await Studio.MaterialAsync("Water", MaterialKind.Water, density: 0.998m), null),
            Line(await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m), 3),
        ]);

    private async Task<IRenderedComponent<FormulaPage>> OpenAsync(string kind, List<KeptLine> lines)
    {
        _formula = (await Studio.Get<Formulas>().NewAsync(Studio.Ana, new NewFormula { Name = "Fig", ProductKind = kind })).Expect().FormulaId;
        var draft = await DraftAsync();
        (await Studio.Get<Versions>().KeepAsync(Studio.Ana, new KeepDraft
        {
            VersionId = draft.Id, Version = draft.Version, CureMinHours = draft.CureMinHours, CureIdealHours = draft.CureIdealHours,
            ExpectedLossPercent = draft.ExpectedLossPercent, Lines = lines,
        })).Expect();
        var page = Render<FormulaPage>(p => p.Add(x => x.Id, _formula));
        page.WaitForElement("table.lines");
        return page;
    }

    private static KeptLine Line(Guid material, decimal? amount) => new() { MaterialId = material, Amount = amount, Basis = LineBasis.PercentByWeight };

    private async Task<VersionRow> DraftAsync() => (await Studio.Get<Formulas>().ReadAsync(_formula))!.Draft!;

    private static IElement Figure(IRenderedComponent<FormulaPage> page, string label) =>
        page.FindAll(".facts .fx").First(f => f.QuerySelector(".what")!.TextContent.StartsWith(label, StringComparison.Ordinal));

    private static IElement Button(IRenderedComponent<FormulaPage> page, string spoken) => page.FindAll("button").Single(b => b.GetAttribute("aria-label") == spoken);

    private static IElement Amount(IRenderedComponent<FormulaPage> page, string label) =>
        page.Find("#" + page.FindAll("label").Single(l => l.TextContent == label).GetAttribute("for"));
}
