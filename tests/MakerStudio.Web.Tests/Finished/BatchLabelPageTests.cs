using AngleSharp.Dom;
using Bunit;
using MakerStudio.Services.Labels;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Finished;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Web.Tests.Finished;

public sealed class BatchLabelPageTests : StudioContext
{
    protected override void Use()
    {
        Use<BatchLabels>();
        Use<FormulaLabels>();
        Use<LabelStocks>();
    }

    [Fact]
    public async Task Open_NothingConfirmed_SaysSoAndCannotPrint()
    {
        await Studio.LabelledBatchAsync();
        var page = Open();

        Assert.Equal("No label is confirmed for Fig v1 in 100 mL.", page.Find(".mark").TextContent);
        Assert.Empty(page.FindAll("form[action='/labels/print']"));
        Assert.Contains("nobody yet", page.Markup, StringComparison.Ordinal);
        Assert.Equal("missing", State(page, "Poison-centre code (UFI)"));
    }

    [Fact]
    public async Task Open_Confirmed_PrintsEveryUnitAndShowsTheSheets()
    {
        await Studio.LabelledBatchAsync();
        await Studio.ConfirmFigAsync();
        var page = Open();

        Assert.Contains("48 labels on 6 pages.", page.Markup, StringComparison.Ordinal);
        Assert.Equal(["sheets 1 to 5, 45 labels", "sheet 6, 3 labels, 6 places left"], page.FindAll("figcaption").Select(f => f.TextContent));
        Assert.Contains("Print 48", page.Find("form[action='/labels/print'] button[type=submit]").TextContent, StringComparison.Ordinal);
        Assert.Equal("48", page.Find("input[name=count]").GetAttribute("value"));
        Assert.Equal("there", State(page, "Poison-centre code (UFI)"));
        Assert.Contains("v1 = v1", page.Markup, StringComparison.Ordinal);
        Assert.Contains("Highly flammable", page.Find("svg.label-pic").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_LabelOfAnotherVersion_SaysBothVersionsAndCannotPrint()
    {
        var batch = await Studio.LabelledBatchAsync();
        await Studio.ConfirmFigAsync();
        var second = await Studio.SecondVersionAsync();
        await using (var db = Studio.Db())
        {
            await db.Batches.Where(b => b.Id == batch).ExecuteUpdateAsync(set => set.SetProperty(b => b.FormulaVersionId, second).SetProperty(b => b.VersionNumber, 2));
        }

        var page = Open();
        Assert.Equal("Label and formula version differ: v1 label, batch of v2.", page.Find(".mark").TextContent);
        Assert.Empty(page.FindAll("form[action='/labels/print'] button[type=submit]"));
    }

    [Fact]
    public async Task Open_SheetChangedSince_NamesWhatChanged()
    {
        await Studio.LabelledBatchAsync();
        await Studio.ConfirmFigAsync();
        await Studio.ReplaceSheetAsync("DPG", "Eye Dam. 1 H318");

        var page = Open();
        Assert.Contains("Since Ana confirmed this label, something behind it has changed.", page.Markup, StringComparison.Ordinal);
        Assert.Contains("H318", page.Find(".note.warn").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_NoSuchBatch_SaysSo() =>
        Assert.Contains("No batch has this code", Render<BatchLabelPage>(p => p.Add(x => x.Code, "RS-99")).Markup, StringComparison.Ordinal);

    private IRenderedComponent<BatchLabelPage> Open()
    {
        var page = Render<BatchLabelPage>(p => p.Add(x => x.Code, "RS-1"));
        page.WaitForState(() => page.FindAll("svg.label-pic").Count > 0);
        return page;
    }

    private static string State(IRenderedComponent<BatchLabelPage> page, string element) =>
        page.FindAll("tr").Single(row => row.FirstElementChild!.TextContent == element).LastElementChild!.TextContent.Trim();
}
