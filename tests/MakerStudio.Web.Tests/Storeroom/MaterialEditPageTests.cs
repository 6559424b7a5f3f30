using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Storeroom;

public sealed class MaterialEditPageTests : StudioContext
{
    private Materials Materials => Studio.Get<Materials>();

    protected override void Use()
    {
        Use<Materials>();
        Use<Suppliers>();
    }

    [Fact]
    public async Task New_KindChosen_BringsItsUnitAndPapersAndSaves()
    {
        var page = RenderForm();
        await Field(page, "Name").ChangeAsync("Bergamot oil");
        await Field(page, "Kind").ChangeAsync(nameof(MaterialKind.EssentialOil));
        await Field(page, "CAS number, where one applies").ChangeAsync("8007-75-8");
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("/storeroom/materials/", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal));
        var row = Assert.Single(await Materials.FindAsync(new MaterialSearch()));
        var form = (await Materials.FormAsync(row.Id))!;
        Assert.Equal(("Bergamot oil", "8007-75-8", StockUnit.Gram), (form.Name, form.Cas, form.StockedIn));
        Assert.Equal(MaterialKinds.DefaultPapers(MaterialKind.EssentialOil), form.RequiredPapers);
    }

    [Fact]
    public async Task New_CasMistyped_IsSaidUnderTheFieldAndTheTextStays()
    {
        var page = RenderForm();
        await Field(page, "Name").ChangeAsync("Ethanol");
        await Field(page, "Kind").ChangeAsync(nameof(MaterialKind.Solvent));
        await Field(page, "CAS number, where one applies").ChangeAsync("64-17-6");
        await page.Find("form").SubmitAsync();

        var cas = Field(page, "CAS number, where one applies");
        Assert.Equal("true", cas.GetAttribute("aria-invalid"));
        Assert.Equal("64-17-6", cas.GetAttribute("value"));
        Assert.Contains("should end in 5", page.Find("#" + cas.GetAttribute("aria-describedby")).TextContent, StringComparison.Ordinal);
        Assert.Empty(await Materials.FindAsync(new MaterialSearch()));
    }

    [Fact]
    public async Task New_SwitchedToPieces_IsNotRefusedByFieldsItNoLongerShows()
    {
        var page = RenderForm();
        await Field(page, "Name").ChangeAsync("Bottle 100 mL");
        await Field(page, "20 drops weigh").ChangeAsync("0.56");
        await Field(page, "Kind").ChangeAsync(nameof(MaterialKind.Bottle));
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("/storeroom/materials/", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal));
        Assert.Equal(StockUnit.Each, Assert.Single(await Materials.FindAsync(new MaterialSearch())).StockedIn);
    }

    [Fact]
    public async Task Alcohol_TypedAsBareProof_IsAskedAbout()
    {
        var page = RenderForm();
        await Field(page, "Alcohol strength").ChangeAsync("90 proof");

        Assert.Contains("90 US proof is 45 % by volume", page.Find(".ask").TextContent, StringComparison.Ordinal);
        await page.FindAll(".ask button").Single(b => b.TextContent.Contains("US proof", StringComparison.Ordinal)).ClickAsync(new());

        Assert.Equal("90", Field(page, "Alcohol strength").GetAttribute("value"));
        Assert.Equal(nameof(AlcoholBasis.UsProof), Field(page, "stated as").GetAttribute("value"));
    }

    [Fact]
    public async Task Edit_ChangedByBoMeanwhile_ShowsBothAndLosesNothing()
    {
        var id = (await Materials.AddAsync(Studio.Ana, Ethanol())).Expect().Id;
        var page = RenderForm(id);
        var bos = (await Materials.FormAsync(id))!;
        (await Materials.ChangeAsync(Studio.Bo, bos with { RequestId = Guid.CreateVersion7(), Density = 0.7907m, FlashPointCelsius = 14m })).Expect();

        await Field(page, "Density").ChangeAsync("0.789");
        await Field(page, "Notes").ChangeAsync("<img src=x onerror=alert(1)>");
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("Bo changed Ethanol while you had it open.", page.Find(".note").TextContent, StringComparison.Ordinal));
        var rows = page.FindAll(".both tbody tr").Select(r => string.Join(" | ", r.QuerySelectorAll("td").Take(4).Select(c => c.TextContent.Trim()))).ToList();
        Assert.Equal(
            [
                "Density | 0.79 g/mL at 20 °C | 0.7907 g/mL at 20 °C | 0.789 g/mL at 20 °C",
                "Flash point | 13 °C | 14 °C | 13 °C",
                "Notes | – | – | <img src=x onerror=alert(1)>",
            ], rows);
        Assert.Equal("0.789", Field(page, "Density").GetAttribute("value"));
        Assert.Equal("14", Field(page, "Flash point").GetAttribute("value"));
        Assert.Empty(page.FindAll("img"));
        Assert.Equal(0.7907m, (await Materials.FormAsync(id))!.Density);

        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.EndsWith($"/storeroom/materials/{id}", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal));
        var now = (await Materials.FormAsync(id))!;
        Assert.Equal((0.789m, 14m, "<img src=x onerror=alert(1)>"), (now.Density, now.FlashPointCelsius, now.Notes));
    }

    [Fact]
    public async Task Edit_WithALot_KeepsItsUnit()
    {
        var id = await Studio.MaterialAsync("DPG", MaterialKind.Fixative);
        await Studio.LotAsync(id, "D-1", 1_240m, 0.0112m);

        var page = RenderForm(id);

        var units = page.FindAll("fieldset").Single(f => f.TextContent.Contains("Stocked in", StringComparison.Ordinal)).QuerySelectorAll("input");
        Assert.Equal([(true, false), (false, true)], units.Select(u => (u.HasAttribute("checked"), u.HasAttribute("disabled"))));
        Assert.Contains("It has lots, so this stays.", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Suppliers_TwoAddedEmpty_StandBesideEachOther()
    {
        var page = RenderForm();
        for (var i = 0; i < 2; i++)
        {
            await page.FindAll("button").First(b => b.TextContent.Contains("supplier", StringComparison.Ordinal)).ClickAsync(new());
        }

        Assert.Equal(2, page.FindAll("fieldset.sup").Count);
    }

    private IRenderedComponent<MaterialEditPage> RenderForm(Guid? id = null)
    {
        var page = Render<MaterialEditPage>(p => p.Add(m => m.Id, id));
        page.WaitForElement("form");
        return page;
    }

    private static AddMaterial Ethanol() => new()
    {
        Name = "Ethanol", Kind = MaterialKind.Solvent, Density = 0.79m, DensityAtCelsius = 20m, FlashPointCelsius = 13m,
    };

    private static IElement Field(IRenderedComponent<MaterialEditPage> page, string label) =>
        page.Find("#" + page.FindAll("label[for]").Single(l => l.TextContent == label).GetAttribute("for"));
}
