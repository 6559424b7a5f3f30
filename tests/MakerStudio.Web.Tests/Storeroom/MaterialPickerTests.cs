using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.Components.Web;

namespace MakerStudio.Web.Tests.Storeroom;

public sealed class MaterialPickerTests : StudioContext
{
    private Guid? _value;
    private MaterialRow? _row;

    protected override void Use() => Use<Materials>();

    [Fact]
    public async Task ArrowsAndEnter_ChooseWithoutAMouse()
    {
        await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var second = await Studio.MaterialAsync("Fig leaf oil", MaterialKind.EssentialOil);
        var picker = RenderPicker();

        await Input(picker).InputAsync("fig");
        Assert.Equal("true", Input(picker).GetAttribute("aria-expanded"));
        await Input(picker).KeyDownAsync(new KeyboardEventArgs { Key = "ArrowDown" });
        var active = picker.Find("[role=option][aria-selected=true]");
        Assert.Equal(active.Id, Input(picker).GetAttribute("aria-activedescendant"));
        await Input(picker).KeyDownAsync(new KeyboardEventArgs { Key = "Enter" });

        Assert.Equal(second, _value);
        Assert.Equal("Fig leaf oil", _row!.Name);
        Assert.Equal("Fig leaf oil", Input(picker).GetAttribute("value"));
        Assert.Equal("false", Input(picker).GetAttribute("aria-expanded"));
    }

    [Fact]
    public async Task Leave_WithTextThatNamesNothing_KeepsItAndSaysSo()
    {
        await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var picker = RenderPicker();

        await Input(picker).InputAsync("<script>alert(1)</script>");
        await Input(picker).BlurAsync(new FocusEventArgs());

        Assert.Null(_value);
        Assert.Equal("<script>alert(1)</script>", Input(picker).GetAttribute("value"));
        Assert.Contains("No material is chosen yet", picker.Find(".err").TextContent, StringComparison.Ordinal);
        Assert.Empty(picker.FindAll("script"));
    }

    [Fact]
    public async Task Leave_WithTheWholeName_MeansThatMaterial()
    {
        var id = await Studio.MaterialAsync("DPG", MaterialKind.Fixative);
        await Studio.MaterialAsync("DPG, technical", MaterialKind.Fixative);
        var picker = RenderPicker();

        await Input(picker).InputAsync("dpg");
        await Input(picker).BlurAsync(new FocusEventArgs());

        Assert.Equal(id, _value);
    }

    [Fact]
    public async Task Escape_PutsTheChosenOneBack()
    {
        var id = await Studio.MaterialAsync("DPG", MaterialKind.Fixative);
        _value = id;
        var picker = RenderPicker();
        picker.WaitForAssertion(() => Assert.Equal("DPG", Input(picker).GetAttribute("value")));

        await Input(picker).InputAsync("wax");
        await Input(picker).KeyDownAsync(new KeyboardEventArgs { Key = "Escape" });

        Assert.Equal("DPG", Input(picker).GetAttribute("value"));
        Assert.Equal(id, _value);
    }

    [Fact]
    public async Task Suggest_OnlyWhatTheFieldTakes()
    {
        await Studio.MaterialAsync("Bottle 100 mL", MaterialKind.Bottle, StockUnit.Each);
        await Studio.MaterialAsync("Bottle green dye", MaterialKind.Colourant);
        var picker = RenderPicker(StockUnit.Each);

        await Input(picker).InputAsync("bottle");

        Assert.Equal("Bottle 100 mL", picker.Find("[role=option] span").TextContent);
        Assert.Single(picker.FindAll("[role=option]"));
    }

    private IRenderedComponent<MaterialPicker> RenderPicker(StockUnit? unit = null) => Render<MaterialPicker>(p => p
        .Add(m => m.Label, "Material").Add(m => m.StockedIn, unit)
        .Bind(m => m.Value, _value, v => _value = v, () => _value)
        .Add(m => m.Chosen, row => _row = row));

    private static IElement Input(IRenderedComponent<MaterialPicker> picker) => picker.Find("input[role=combobox]");
}
