using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Curing;
using Microsoft.AspNetCore.Components.Web;

namespace MakerStudio.Web.Tests.Curing;

/// <summary>Something added after the last addition: the clock starts again, or runs on with a reason.</summary>
public sealed class LaterAdditionTests : StudioContext
{
    private Guid _oil;

    protected override void Use()
    {
        Use<WeighSheets>();
        Use<CureShelf>();
        Use<Batches>();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Add_FiveHoursLater_MovesTheClockUnlessItIsKept(bool keep)
    {
        var code = await RestingAsync();
        var began = (await Studio.Get<CureShelf>().FindAsync(code))!.Row.StartedAt;
        Studio.Clock.Advance(TimeSpan.FromHours(5));
        var told = 0;
        var form = Render<LaterAddition>(p => p.Add(l => l.Code, code).Add(l => l.OnAdded, () => told++));
        await Button(form).ClickAsync(new MouseEventArgs());
        Assert.Contains("material open", Record(form).TextContent, StringComparison.Ordinal);

        await Field(form, "Material").ChangeAsync(form.Find("option[value]:not([value=''])").GetAttribute("value")!);
        Assert.NotEqual("", Field(form, "From lot").GetAttribute("value"));
        await Field(form, "Added").ChangeAsync("2.5");
        if (keep)
        {
            await form.FindAll("input[type=radio]")[1].ChangeAsync(true);
        }

        await form.Find("form").SubmitAsync();
        Assert.Contains("Say why, for the record.", form.Markup, StringComparison.Ordinal);
        Assert.Equal("2.5", Field(form, "Added").GetAttribute("value"));
        await form.Find("textarea").ChangeAsync("rounder with a touch more");
        await form.Find("form").SubmitAsync();

        form.WaitForAssertion(() => Assert.Equal(1, told));
        var row = (await Studio.Get<CureShelf>().FindAsync(code))!.Row;
        Assert.Equal(keep ? began : began.AddHours(5), row.StartedAt);
        Assert.Contains(keep ? "runs on" : "rests again from now", form.Markup, StringComparison.Ordinal);
        var sheet = (await Studio.Get<WeighSheets>().SheetAsync(code))!;
        Assert.Equal(102_500, sheet.RecordedMilligrams);
        Assert.Equal(keep ? DeviationChoice.ClockKept : DeviationChoice.Accepted, sheet.Deviations.Single().Choice);
    }

    private async Task<string> RestingAsync()
    {
        _oil = await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var lot = await Studio.LotAsync(_oil, "P-1", 1_000m, 0.067m);
        var version = await Studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (_oil, 100m));
        var plan = (await Studio.Get<Batches>().PlanAsync(Studio.Ana, new PlanBatch { FormulaVersionId = version, TargetMilligrams = 100_000 })).Expect();
        (await Studio.Get<Batches>().StartWeighingAsync(Studio.Ana, new StartWeighing { BatchId = plan.BatchId })).Expect();
        var sheets = Studio.Get<WeighSheets>();
        var line = (await sheets.SheetAsync(plan.Code))!.Lines.Single();
        (await sheets.RecordAsync(Studio.Ana, new RecordWeighing { BatchId = plan.BatchId, LineId = line.LineId, LotId = lot, NetMilligrams = 100_000 })).Expect();
        (await sheets.ConfirmLastAdditionAsync(Studio.Ana, new ConfirmLastAddition { BatchId = plan.BatchId, StirredConfirmed = true })).Expect();
        return plan.Code;
    }

    private static IElement Field(IRenderedComponent<LaterAddition> form, string label) =>
        form.Find($"#{form.FindAll("label").First(l => l.TextContent.Trim() == label).GetAttribute("for")}");

    private static IElement Button(IRenderedComponent<LaterAddition> form) => form.Find("button");

    private static IElement Record(IRenderedComponent<LaterAddition> form) => form.Find("button.p, button.off");
}
