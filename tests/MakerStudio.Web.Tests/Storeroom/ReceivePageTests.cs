using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Storeroom;

/// <summary>From what is typed off an invoice to the question it raises, the answer, and the lot.</summary>
public sealed class ReceivePageTests : StudioContext
{
    private readonly Guid _draft = Guid.CreateVersion7();

    protected override void Use()
    {
        Use<Deliveries>();
        Use<Suppliers>();
        Use<Purchasing>();
        Use<Materials>();
    }

    /// <summary>Own example: 25 L at 0.79 g/mL is 19.75 kg; 160.00 ÷ 19.75 = 8.10 a kg as before, 160.00 ÷ 25 = 6.40 is 21 % below.</summary>
    [Fact]
    public async Task Line_LitresTypedAsKilograms_AsksAndTheAnswerMendsTheUnit()
    {
        var ethanol = await Studio.MaterialAsync("Ethanol 99.5 % vol", MaterialKind.CarrierBase, density: 0.79m);
        await ReceivedBeforeAsync(ethanol, 5m, 40.50m);
        var page = Page();
        await AddSupplierAsync(page, "Alder Supply");
        await ChooseAsync(page, "Ethanol 99.5 % vol");
        await TypeAsync(page, "As invoiced", "25");
        await TypeAsync(page, "Price of the line", "160.00");

        page.WaitForAssertion(() => Assert.Contains("Is this line in kg?", page.Markup, StringComparison.Ordinal));
        Assert.Contains("21 % below", page.Markup, StringComparison.Ordinal);
        Assert.Contains("1 question open", Post(page).TextContent, StringComparison.Ordinal);
        await Post(page).ClickAsync(new MouseEventArgs());
        Assert.Single(await LotsAsync());

        await Button(page, "It says L").ClickAsync(new MouseEventArgs());

        page.WaitForAssertion(() => Assert.DoesNotContain("question open", Post(page).TextContent, StringComparison.Ordinal));
        Assert.Equal("L", Field(page, "Unit").GetAttribute("value"));
        await Post(page).ClickAsync(new MouseEventArgs());
        page.WaitForAssertion(() => Assert.Contains("/storeroom/deliveries/", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal));
        Assert.Contains(await LotsAsync(), l => l.OnHand == 19_750_000 && decimal.Round(l.UnitCost, 6) == 0.008101m);
    }

    [Fact]
    public async Task Line_PriceFarFromTheLastOne_IsKeptWhenThePersonSaysSo()
    {
        var fig = await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await ReceivedBeforeAsync(fig, 1m, 62.00m);
        var page = Page();
        await AddSupplierAsync(page, "Alder Supply");
        await ChooseAsync(page, "Fig fragrance oil");
        await TypeAsync(page, "As invoiced", "5 kg");
        await TypeAsync(page, "Price of the line", "620.00");
        page.WaitForAssertion(() => Assert.Contains("1 question open", Post(page).TextContent, StringComparison.Ordinal));

        await Button(page, "It is right").ClickAsync(new MouseEventArgs());

        page.WaitForAssertion(() => Assert.Equal("Post delivery", Post(page).TextContent.Trim()));
        await TypeAsync(page, "Price of the line", "1240.00");
        page.WaitForAssertion(() => Assert.Contains("1 question open", Post(page).TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Field_ThatCannotBeRead_KeepsItsTextAndHoldsThePosting()
    {
        await Studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var page = Page();
        await ChooseAsync(page, "Fig fragrance oil");
        await TypeAsync(page, "As invoiced", "5 oz");

        page.WaitForAssertion(() => Assert.Contains("1 field to mend", Post(page).TextContent, StringComparison.Ordinal));
        page.WaitForAssertion(() => Assert.Equal("5 oz", Field(page, "As invoiced").GetAttribute("value")));
        var kept = await KeptAsync(d => d.Lines.Single().Quantity == "5 oz");
        Assert.Equal("5 oz", kept?.Lines.Single().Quantity);
    }

    /// <summary>The first day: no supplier is on the list, and the invoice is not left to make one.</summary>
    [Fact]
    public async Task Supplier_NoneOnTheList_IsAddedHereAndChosen()
    {
        var page = Page();
        Assert.True(page.Find("details.under").HasAttribute("open"));

        await AddSupplierAsync(page, "Alder Supply");

        var supplier = Assert.Single(await Studio.Get<Suppliers>().ListAsync());
        page.WaitForAssertion(() => Assert.Equal(supplier.Id.ToString(), Field(page, "Supplier").GetAttribute("value")));
        var kept = await KeptAsync(d => d.SupplierId == supplier.Id);
        Assert.Equal(supplier.Id, kept?.SupplierId);
    }

    /// <summary>The kept draft, once it is as wanted or patience ends: the page keeps behind the drawing, one keep after the other.</summary>
    private async Task<DeliveryDraft?> KeptAsync(Func<DeliveryDraft, bool> wanted)
    {
        DeliveryDraft? draft = null;
        for (var tries = 0; tries < 150 && (draft is null || !wanted(draft)); tries++)
        {
            await Task.Delay(100);
            draft = (await Studio.Get<Deliveries>().ReadDraftAsync(_draft))?.Draft;
        }

        return draft;
    }

    private IRenderedComponent<ReceivePage> Page()
    {
        var page = Render<ReceivePage>(p => p.Add(r => r.DraftId, _draft));
        page.WaitForElement("details.under");
        page.WaitForElement("fieldset.line");
        return page;
    }

    /// <summary>An earlier delivery tells the last price.</summary>
    private async Task ReceivedBeforeAsync(Guid material, decimal kilograms, decimal price)
    {
        var supplier = (await Studio.Get<Suppliers>().AddAsync(Studio.Ana, new AddSupplier { Name = "Fir Supply" })).Expect();
        (await Studio.Get<Deliveries>().PostAsync(Studio.Ana, new PostDelivery
        {
            SupplierId = supplier.Id, ReceivedOn = new DateOnly(2026, 9, 24),
            Lines = [new DeliveryLineTyped { MaterialId = material, Quantity = kilograms, Unit = AmountUnit.Kilogram, Price = price }],
        })).Expect();
    }

    private async Task<IReadOnlyList<LotRow>> LotsAsync() => await Studio.Get<Lots>().OnShelfAsync();

    private static async Task AddSupplierAsync(IRenderedComponent<ReceivePage> page, string name)
    {
        await Field(page, "Supplier’s name").ChangeAsync(name);
        await page.Find("details.under form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains(name, Field(page, "Supplier").TextContent, StringComparison.Ordinal));
    }

    private static async Task ChooseAsync(IRenderedComponent<ReceivePage> page, string material)
    {
        await Field(page, "Line 1, material").InputAsync(material);
        page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll("[role=option]")));
        await Field(page, "Line 1, material").BlurAsync(new FocusEventArgs());
        page.WaitForAssertion(() => Assert.Contains("on receipt", page.Markup, StringComparison.Ordinal));
    }

    private static Task TypeAsync(IRenderedComponent<ReceivePage> page, string label, string text) => Field(page, label).ChangeAsync(text);

    private static IElement Field(IRenderedComponent<ReceivePage> page, string label)
    {
        var id = page.FindAll("label").First(l => l.TextContent.Trim() == label).GetAttribute("for");
        return page.Find($"#{id}");
    }

    private static IElement Post(IRenderedComponent<ReceivePage> page) => Button(page, "Post delivery");

    private static IElement Button(IRenderedComponent<ReceivePage> page, string starts) =>
        page.FindAll("button").First(b => b.TextContent.Trim().StartsWith(starts, StringComparison.Ordinal));
}
