using Bunit;
using MakerStudio.Core.Stock;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Prices;
using MakerStudio.Web.Prices.Worth;
using MudBlazor;

namespace MakerStudio.Web.Tests.Prices;

/// <summary>The forms of the books on a real studio: 46 of RS-1 that cost 207.36 in all.</summary>
public class BooksPageTests : StudioContext
{
    protected override void Use() => Use<Books>();

    [Fact]
    public async Task WriteDown_OneBatch_SaysWhatItComesToAndStandsInTheTable()
    {
        await Studio.FilledBatchAsync();
        var page = Render<BooksPage>();
        page.WaitForAssertion(() => Assert.Contains("Carry it at that, choose what", page.Find(".btn.off").TextContent, StringComparison.Ordinal));

        var what = page.FindAll("select").Single(s => s.TextContent.Contains("RS-1", StringComparison.Ordinal));
        await what.ChangeAsync(new() { Value = what.QuerySelectorAll("option").Single(o => o.TextContent.Contains("RS-1", StringComparison.Ordinal)).GetAttribute("value") });
        await Field(page, "One unit will bring, net").ChangeAsync(new() { Value = "3.50" });
        await Field(page, "Why").ChangeAsync(new() { Value = "Hazy" });
        page.WaitForAssertion(() => Assert.Contains("carried at 161.00: written down by 46.36", page.Markup, StringComparison.Ordinal));
        await page.FindAll("form").Single(f => f.TextContent.Contains("Carry it at that", StringComparison.Ordinal)).SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("Fig, 100 mL is written down by 46.36; 46.36 is expensed now.", page.Markup, StringComparison.Ordinal));
        Assert.Equal(161m, (await Studio.Get<Books>().ReadAsync()).Finished.Single().Value);
    }

    [Fact]
    public async Task FinancialYear_WithAFixedMethod_SaysWhatChangesBeforeItIsDone()
    {
        (await Studio.Get<Books>().ChooseMethodAsync(Studio.Ana, new ChooseMethod { YearOf = new DateOnly(2026, 6, 1), Method = ValuationMethod.Fifo })).Expect();
        var part = Render<FinancialYearPart>(p => p.Add(x => x.View, Studio.Get<Books>().ReadAsync().GetAwaiter().GetResult()));
        Assert.Empty(part.FindAll("button"));

        await part.FindAll("select")[0].ChangeAsync(new() { Value = "4" });
        await part.FindAll("select")[1].ChangeAsync(new() { Value = "6" });

        part.WaitForAssertion(() => Assert.Contains("1 Jan 2027 to 5 Apr 2027, 95 days", part.Markup, StringComparison.Ordinal));
        Assert.Contains("Begin it then…", part.Find("button").TextContent, StringComparison.Ordinal);
        Assert.Equal((1, 1), await Studio.Get<Books>().YearStartAsync());
    }

    /// <summary>Every table of the page, as it stands in the markup, adds up to its last row.</summary>
    [Fact]
    public async Task YearEnd_EveryTable_AddsUpAsItIsPrinted()
    {
        var batch = await Studio.FilledBatchAsync();
        var other = await Studio.AlsoFilledAsync("RS-7", batch, 7, unitCost: 1m / 3m);
        foreach (var (id, count) in new[] { (batch, 13), (other, 3) })
        {
            var sale = SeedGoods.SaleOf(id, count);
            sale.Lines[0].Reason = "The buyer chose";
            (await Studio.Get<Sales>().RecordAsync(Studio.Ana, sale)).Expect();
        }

        var page = Render<YearEndPage>();
        page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll("tr.tot")));

        foreach (var table in page.FindAll("table").Where(t => t.QuerySelector("tr.tot") is not null).Skip(1))
        {
            var rows = table.QuerySelectorAll("tbody tr:not(.grp)").Select(r => r.LastElementChild!.TextContent).ToList();
            Assert.Equal(decimal.Parse(rows[^1], System.Globalization.CultureInfo.InvariantCulture), rows.SkipLast(1).Sum(r => decimal.Parse(r, System.Globalization.CultureInfo.InvariantCulture)));
        }

        Assert.True(page.FindAll("tr.tot").Count >= 5, "Hardly a table was looked at.");
    }

    private static AngleSharp.Dom.IElement Field(IRenderedComponent<BooksPage> page, string label) =>
        page.Find("#" + page.FindAll("label").Single(l => l.TextContent.Trim() == label).GetAttribute("for"));
}
