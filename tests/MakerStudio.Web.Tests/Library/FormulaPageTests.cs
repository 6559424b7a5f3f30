using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Services;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Library;

namespace MakerStudio.Web.Tests.Library;

public sealed class FormulaPageTests : StudioContext
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
    public async Task Type_OneToOneAndAHalf_ShowsTheSharesAndIsKept()
    {
        var page = await OpenAsync((1m, LineBasis.PartsByWeight), (null, LineBasis.PartsByWeight));
        await Amount(page, "Fig fragrance oil, parts by weight").ChangeAsync("1,5");

        page.WaitForAssertion(() => Assert.Equal(["40.00", "60.00", "100.00"], page.FindAll("td[data-l='% w/w']").Select(c => c.TextContent.Trim())));
        page.WaitForAssertion(() => Assert.StartsWith("Kept ", page.Find(".kick [role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal([1m, 1.5m], (await DraftAsync()).Lines.Select(l => l.Amount));
    }

    [Fact]
    public async Task Type_WhatCannotBeRead_StaysOnThePageAndIsNotKept()
    {
        var page = await OpenAsync((null, LineBasis.PercentByWeight), (12m, LineBasis.PercentByWeight));
        await Amount(page, "Fig fragrance oil, % by weight").ChangeAsync("twelve");

        Assert.Equal("twelve", Amount(page, "Fig fragrance oil, % by weight").GetAttribute("value"));
        Assert.Equal("Not kept: a field cannot be read", page.Find(".kick [role=status]").TextContent);
        // An unread amount must never pass for "the rest".
        Assert.Equal([null, 12m], (await DraftAsync()).Lines.Select(l => l.Amount));

        await Amount(page, "Fig fragrance oil, % by weight").ChangeAsync("11");
        page.WaitForAssertion(() => Assert.StartsWith("Kept ", page.Find(".kick [role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal([null, 11m], (await DraftAsync()).Lines.Select(l => l.Amount));
    }

    [Fact]
    public async Task Type_WithoutLeaving_ShowsTheSharesAndKeepsTheDraftAfterARest()
    {
        var page = await OpenAsync((null, LineBasis.PercentByWeight), (12m, LineBasis.PercentByWeight));
        await Amount(page, "Fig fragrance oil, % by weight").InputAsync("11.1");
        Assert.Equal("88.00", Shares(page)[0]);

        Studio.Clock.Advance(TimeSpan.FromMilliseconds(300));
        page.WaitForAssertion(() => Assert.Equal(["88.90", "11.10", "100.00"], Shares(page)));
        page.WaitForAssertion(() => Assert.StartsWith("Kept ", page.Find(".kick [role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal([null, 11.1m], (await DraftAsync()).Lines.Select(l => l.Amount));
    }

    [Fact]
    public async Task Type_Unreadable_LeavesTheLastNumbersStandingAndSaysSo()
    {
        var page = await OpenAsync((null, LineBasis.PercentByWeight), (12m, LineBasis.PercentByWeight));
        await Amount(page, "Fig fragrance oil, % by weight").InputAsync("1x");
        Studio.Clock.Advance(TimeSpan.FromMilliseconds(300));
        Assert.Empty(page.FindAll(".note.warn"));

        Studio.Clock.Advance(TimeSpan.FromMilliseconds(1200));
        page.WaitForAssertion(() => Assert.Contains("One field cannot be read yet.", page.Find(".note.warn").TextContent, StringComparison.Ordinal));
        Assert.Equal(["88.00", "12.00", "100.00"], Shares(page));
    }

    private static string[] Shares(IRenderedComponent<FormulaPage> page) => [.. page.FindAll("td[data-l='% w/w']").Select(c => c.TextContent.Trim())];

    [Fact]
    public async Task SwitchBasis_ThatDoesNotComeOutEven_AsksBeforeAnythingChanges()
    {
        var page = await OpenAsync((1m, LineBasis.PartsByWeight), (2m, LineBasis.PartsByWeight));
        await page.FindAll(".seg label").Single(l => l.TextContent == "% by weight").QuerySelector("input")!.ChangeAsync("on");

        Assert.Contains("Nothing was changed", page.Find(".note.warn b").TextContent, StringComparison.Ordinal);
        Assert.Equal([1m, 2m], (await DraftAsync()).Lines.Select(l => l.Amount));
        await page.FindAll(".note.warn button").First(b => b.TextContent.StartsWith("Take", StringComparison.Ordinal)).ClickAsync(new());
        page.WaitForAssertion(() => Assert.StartsWith("Kept ", page.Find(".kick [role=status]").TextContent, StringComparison.Ordinal));
        Assert.All((await DraftAsync()).Lines, l => Assert.Equal(LineBasis.PercentByWeight, l.Basis));
        Assert.Contains("100.00", page.Find("tr.tot td[data-l='% w/w']").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keep_AfterBoKeptTheSameDraft_ShowsBothAndKeepsMineWhenAsked()
    {
        var page = await OpenAsync((null, LineBasis.PercentByWeight), (12m, LineBasis.PercentByWeight));
        var opened = await DraftAsync();
        (await Studio.Get<Versions>().KeepAsync(Studio.Bo, Keep(opened, 15m))).Expect();
        await Amount(page, "Fig fragrance oil, % by weight").ChangeAsync("11");

        page.WaitForAssertion(() => Assert.Contains("Bo changed this draft", page.Find(".note.warn").TextContent, StringComparison.Ordinal));
        Assert.Equal(15m, (await DraftAsync()).Lines[1].Amount);
        await page.FindAll(".note.warn button").Single(b => b.TextContent == "Keep mine over it").ClickAsync(new());
        page.WaitForAssertion(() => Assert.StartsWith("Kept ", page.Find(".kick [role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal(11m, (await DraftAsync()).Lines[1].Amount);
    }

    /// <summary>Ethanol, then fragrance, with these amounts.</summary>
    private async Task<IRenderedComponent<FormulaPage>> OpenAsync(params (decimal? Amount, LineBasis Basis)[] lines)
    {
        Guid[] materials =
        [
            await Studio.MaterialAsync("Ethanol", MaterialKind.Solvent, density: 0.79m),
            await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m),
        ];
        _formula = (await Studio.Get<Formulas>().NewAsync(Studio.Ana, new NewFormula { Name = "Fig", ProductKind = "room-spray-alcohol" })).Expect().FormulaId;
        var draft = await DraftAsync();
        var keep = Keep(draft, null);
        keep.Lines.AddRange(lines.Select((l, i) => new KeptLine { MaterialId = materials[i], Amount = l.Amount, Basis = l.Basis }));
        (await Studio.Get<Versions>().KeepAsync(Studio.Ana, keep)).Expect();
        var page = Render<FormulaPage>(p => p.Add(x => x.Id, _formula));
        page.WaitForElement("table.lines");
        return page;
    }

    /// <summary>The draft as it is, with another amount on its last line.</summary>
    private static KeepDraft Keep(VersionRow draft, decimal? last) => new()
    {
        VersionId = draft.Id, Version = draft.Version, CureMinHours = draft.CureMinHours, CureIdealHours = draft.CureIdealHours,
        ExpectedLossPercent = draft.ExpectedLossPercent,
        Lines = [.. draft.Lines.Select((l, i) => new KeptLine { LineId = l.LineId, MaterialId = l.MaterialId, Basis = l.Basis, Amount = i == draft.Lines.Count - 1 ? last : l.Amount })],
    };

    private async Task<VersionRow> DraftAsync() => (await Studio.Get<Formulas>().ReadAsync(_formula))!.Draft!;

    private static IElement Amount(IRenderedComponent<FormulaPage> page, string label)
    {
        var found = page.FindAll("label").Single(l => l.TextContent == label);
        return page.Find("#" + found.GetAttribute("for"));
    }
}
