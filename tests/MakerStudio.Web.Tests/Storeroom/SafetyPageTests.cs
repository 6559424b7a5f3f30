using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Storeroom;

public sealed class SafetyPageTests : StudioContext
{
    private Materials Materials => Studio.Get<Materials>();

    protected override void Use() => Use<Materials>();

    [Fact]
    public async Task New_KnownCas_IsFilledFromTheTableAndSaved()
    {
        var page = await RenderAsync("64-17-5");

        Assert.Contains("from memory", page.Find(".note").TextContent, StringComparison.Ordinal);
        await Button(page, "Fill from the table").ClickAsync(new());
        Assert.Equal("Flam. Liq. 2 H225; Eye Irrit. 2 H319", Field(page, "Classes and statements, apart by semicolons").GetAttribute("value"));
        Assert.Contains("Read as Flam. Liq. 2 · Eye Irrit. 2", page.Markup, StringComparison.Ordinal);
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.EndsWith($"/storeroom/materials/{page.Instance.Id}", Uri, StringComparison.Ordinal));
        Assert.Equal("Eye Irrit. 2 50", (await Materials.SafetyAsync(page.Instance.Id))!.Hazards.Limits);
    }

    [Fact]
    public async Task Classes_ThatCannotBeRead_AreNamedAndStay()
    {
        var page = await RenderAsync();
        const string Label = "Classes and statements, apart by semicolons";
        await Field(page, Label).ChangeAsync("Flam. Liq. 2 H225; stings a bit");
        await page.Find("form").SubmitAsync();

        var field = Field(page, Label);
        Assert.Equal("Flam. Liq. 2 H225; stings a bit", field.GetAttribute("value"));
        Assert.Contains("“stings a bit”", page.Find("#" + field.GetAttribute("aria-describedby")).TextContent, StringComparison.Ordinal);
        Assert.False((await Materials.SafetyAsync(page.Instance.Id))!.IsStated);
    }

    [Fact]
    public async Task Paste_Lines_AreShownFirstAndBecomeRowsAndTheRestStays()
    {
        var page = await RenderAsync();
        await page.Find("textarea[placeholder]").InputAsync("linalool; 78-70-6; 5–10; Skin Sens. 1B H317\ncitral; 5392-40-5; some");

        Assert.Contains("Line 2, “citral; 5392-40-5; some”: No range", page.Markup, StringComparison.Ordinal);
        await Button(page, "Make rows of them").ClickAsync(new());

        Assert.Equal(("linalool", "78-70-6", "5", "10"), (Value(page, "Substance"), Value(page, "CAS number"), Value(page, "From"), Value(page, "Up to")));
        Assert.Equal("citral; 5392-40-5; some", page.Find("textarea[placeholder]").GetAttribute("value"));
    }

    [Fact]
    public async Task Rows_TwoAddedEmpty_StandBesideEachOtherAndAreAskedForTheirNames()
    {
        var page = await RenderAsync();
        await Button(page, "Add a substance").ClickAsync(new());
        await Button(page, "Add another substance").ClickAsync(new());
        await Button(page, "Add the categories of home fragrance").ClickAsync(new());
        await page.Find("form").SubmitAsync();

        Assert.Equal(2 + 3, page.FindAll("fieldset.sup").Count);
        Assert.Equal(2, page.FindAll(".err").Count(e => e.TextContent.Contains("Which substance is this", StringComparison.Ordinal)));
        Assert.Equal(3, page.FindAll(".err").Count(e => e.TextContent.Contains("How much is allowed", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Edit_ChangedByBoMeanwhile_TakesTheirsAndKeepsYours()
    {
        var page = await RenderAsync();
        var bos = new SetSafety { MaterialId = page.Instance.Id, VanillinPercent = 4, HoldsCitrus = true };
        (await Materials.SetSafetyAsync(Studio.Bo, bos)).Expect();

        await Field(page, "Vanillin and ethyl vanillin").ChangeAsync("5");
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("Bo changed this safety sheet", page.Find(".note").TextContent, StringComparison.Ordinal));
        Assert.Equal("5", Value(page, "Vanillin and ethyl vanillin"));
        Assert.True(page.Find("input[type=checkbox]").HasAttribute("checked"));
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.EndsWith($"/storeroom/materials/{page.Instance.Id}", Uri, StringComparison.Ordinal));
        var kept = (await Materials.SafetyAsync(page.Instance.Id))!;
        Assert.Equal((5m, true), (kept.VanillinPercent, kept.HoldsCitrus));
    }

    [Fact]
    public void Section_NewerSdsFiled_SaysSo()
    {
        var safety = new SetSafety { MaterialId = Guid.CreateVersion7(), Version = 7, SheetEdition = "rev. 4", SheetDate = new DateOnly(2026, 2, 3), Hazards = new() { Classes = "not classified" } };
        var newer = new PaperRow(Guid.CreateVersion7(), null, null, PaperKind.Sds, "rev. 5", new DateOnly(2026, 9, 1), "a.pdf", 1, "Ana", Studio.Clock.GetUtcNow());

        var section = Render<SafetySection>(p => p.Add(s => s.Safety, safety).Add(s => s.Name, "DPG").Add(s => s.Papers, [newer]));

        Assert.Contains("A newer SDS is filed", section.Find(".note").TextContent, StringComparison.Ordinal);
        Assert.Contains("From the SDS, rev. 4, 3 Feb 2026.", section.Markup, StringComparison.Ordinal);
    }

    private string Uri => Services.GetRequiredService<NavigationManager>().Uri;

    private async Task<IRenderedComponent<SafetyPage>> RenderAsync(string? cas = null)
    {
        var id = (await Materials.AddAsync(Studio.Ana, new AddMaterial { Name = "Fig fragrance oil", Kind = MaterialKind.FragranceOil, Cas = cas })).Expect().Id;
        var page = Render<SafetyPage>(p => p.Add(x => x.Id, id));
        page.WaitForElement("form");
        return page;
    }

    private static IElement Button(IRenderedComponent<SafetyPage> page, string text) =>
        page.FindAll("button").First(b => b.TextContent.Trim().StartsWith(text, StringComparison.Ordinal));

    private static string? Value(IRenderedComponent<SafetyPage> page, string label) => Field(page, label).GetAttribute("value");

    private static IElement Field(IRenderedComponent<SafetyPage> page, string label) =>
        page.Find("#" + page.FindAll("label[for]").First(l => l.TextContent.Trim() == label).GetAttribute("for"));
}
