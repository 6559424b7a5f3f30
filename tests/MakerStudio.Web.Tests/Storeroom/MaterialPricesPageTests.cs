using AngleSharp.Dom;
using Bunit;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Storeroom;

public sealed class MaterialPricesPageTests : StudioContext
{
    private Guid _oil;

    protected override void Use()
    {
        Use<MaterialPrices>();
        Use<StudioSettings>();
    }

    [Fact]
    public async Task New_NoDeliveryAndNoSupplier_SaysHowThePricesGetHere()
    {
        var page = await RenderAsync(new AddMaterial { Name = "Fig fragrance oil", Kind = MaterialKind.FragranceOil });

        Assert.Contains("Nothing of it was delivered yet.", page.Find(".lead").TextContent, StringComparison.Ordinal);
        Assert.Contains("has no supplier yet", page.Markup, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("figure"));
    }

    /// <summary>Own sums: 62.00 a kg, then 65.80; (65.80 − 62) ÷ 62 is 6.1 %.</summary>
    [Fact]
    public async Task Deliveries_Two_AreDrawnToldAndListed()
    {
        await AddAsync(Oil());
        await DeliverAsync(310m, new DateOnly(2026, 9, 24));
        await DeliverAsync(329m, new DateOnly(2026, 10, 20));

        var page = Show();

        Assert.Equal("Last landed at 65.800/kg on 20 Oct 2026 from Alder Supply; it rose 6.1 % since 24 Sep 2026.", page.Find(".lead").TextContent.Trim());
        Assert.Equal(
            "Landed prices of Fig fragrance oil: 62.000/kg on 24 Sep 2026 from Alder Supply, 65.800/kg on 20 Oct 2026 from Alder Supply. It rose 6.1 % since 24 Sep 2026.",
            page.Find("figure").GetAttribute("aria-label"));
        Assert.Equal(2, page.FindAll(".over-days .pt").Count);
        Assert.Equal(["20 Oct 2026", "24 Sep 2026"], page.FindAll("tbody tr td:first-child").Select(c => c.TextContent.Trim()));
    }

    [Fact]
    public async Task Form_APriceForEachKilogram_IsNotedAndCompared()
    {
        await AddAsync(Oil());
        await DeliverAsync(310m, new DateOnly(2026, 9, 24));
        var page = Show();

        await NoteAsync(page, "1", "70", freight: "10");
        await NoteAsync(page, "5", "60", each: true);

        page.WaitForAssertion(() => Assert.Contains("5 kg from Alder Supply is cheapest: 60.000/kg landed. It ties up 220.00 more than the smallest quantity.", page.Markup, StringComparison.Ordinal));
        Assert.Equal(["80.000", "60.000"], page.FindAll("td[data-l='EUR/kg'] b").Skip(1).Select(c => c.TextContent.Trim()));
        Assert.Contains("Noted: 5 kg.", page.Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    /// <summary>Own sums: 5 kg there; 5 kg more at 20 g a day last 500 days, 25 kg 1,500.</summary>
    [Fact]
    public async Task Use_TypedAndLifeTyped_ChangeTheVerdictAndNothingElse()
    {
        await AddAsync(Oil());
        await DeliverAsync(310m, new DateOnly(2026, 9, 24));
        var page = Show();
        await NoteAsync(page, "5", "300");
        await NoteAsync(page, "25", "1250");

        await Field(page, "Used a day").InputAsync("20");
        await Field(page, "Used a day").BlurAsync(new());
        await Field(page, "To be used up within").InputAsync("600");
        await Field(page, "To be used up within").BlurAsync(new());

        page.WaitForAssertion(() => Assert.Contains("25 kg from Alder Supply would be 50.000/kg, but it would last 1,500 days and must be used up in 600 days.", page.Markup, StringComparison.Ordinal));
        Assert.Contains("5 kg from Alder Supply is cheapest: 60.000/kg landed. It lasts 16.4 months with what is there.", page.Markup, StringComparison.Ordinal);
        Assert.Contains("outlasts its life", page.FindAll("tbody tr")[^1].TextContent, StringComparison.Ordinal);
        Assert.EndsWith("?use=20&life=600", page.FindAll("a[download]")[^1].GetAttribute("href"), StringComparison.Ordinal);
    }

    /// <summary>Own sums: 5 kg there and 1 kg more at 10 g a day last 600 days.</summary>
    [Fact]
    public async Task Use_SoSmallThatNothingIsUsedUp_SaysSo()
    {
        await AddAsync(Oil() with { ShelfLifeDays = 400 });
        await DeliverAsync(310m, new DateOnly(2026, 9, 24));
        var page = Show();
        await NoteAsync(page, "1", "70");
        Assert.Contains("Nothing was used in the last 60 days, so nothing says that any of these would be used up in 400 days.", page.Markup, StringComparison.Ordinal);

        await Field(page, "Used a day").InputAsync("10");
        await Field(page, "Used a day").BlurAsync(new());

        page.WaitForAssertion(() => Assert.Contains("None of these is used up in 400 days: with what is there, even 1 kg from Alder Supply would last 600 days.", page.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain("cheapest", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Form_LitresWithoutDensity_SaysSoAndKeepsWhatWasTyped()
    {
        await AddAsync(Oil() with { Density = null, DensityAtCelsius = null });
        var page = Show();

        await Field(page, "Quantity").ChangeAsync("5 L");
        await Field(page, "They ask").ChangeAsync("300");
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("needs its density", page.Find("[role=alert]").TextContent, StringComparison.Ordinal));
        Assert.Equal(("5", "300"), (Field(page, "Quantity").GetAttribute("value"), Field(page, "They ask").GetAttribute("value")));
        Assert.Equal("L", Field(page, "Unit").GetAttribute("value"));
    }

    [Fact]
    public async Task TakeOff_OnePrice_LeavesTheOther()
    {
        await AddAsync(Oil());
        var page = Show();
        await NoteAsync(page, "1", "70");
        await NoteAsync(page, "5", "300");
        page.WaitForAssertion(() => Assert.Equal(2, page.FindAll("tbody tr").Count));

        await page.Find("button[aria-label='Take off what is no longer asked: 1 kg from Alder Supply']").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Contains("300.00", Assert.Single(page.FindAll("tbody tr")).TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Alert_LowestAskedFarAboveTheNewestLot_StandsFirst()
    {
        await AddAsync(Oil());
        await DeliverAsync(310m, new DateOnly(2026, 9, 24));
        var page = Show();

        await NoteAsync(page, "5", "372");

        page.WaitForAssertion(() => Assert.Contains("The lowest price asked for Fig fragrance oil is 20 % above what your products are costed with.", page.Find(".note.warn").TextContent, StringComparison.Ordinal));
        Assert.Contains("Alder Supply asks 74.400/kg landed since 26 Oct 2026; products are costed with 62.000/kg, the newest lot. No product on sale holds it.", page.Find(".note.warn").TextContent, StringComparison.Ordinal);
    }

    private static AddMaterial Oil() => new()
    {
        Name = "Fig fragrance oil", Kind = MaterialKind.FragranceOil, Density = 0.98m, DensityAtCelsius = 20, Suppliers = [new SupplierLine { Name = "Alder Supply" }],
    };

    private async Task AddAsync(AddMaterial material) => _oil = (await Studio.Get<Materials>().AddAsync(Studio.Ana, material)).Expect().Id;

    private async Task<IRenderedComponent<MaterialPricesPage>> RenderAsync(AddMaterial material)
    {
        await AddAsync(material);
        return Show();
    }

    private IRenderedComponent<MaterialPricesPage> Show()
    {
        var page = Render<MaterialPricesPage>(p => p.Add(x => x.Id, _oil));
        page.WaitForElement("h1");
        return page;
    }

    /// <summary>5 kg of the oil.</summary>
    private async Task DeliverAsync(decimal price, DateOnly on)
    {
        var supplier = (await Studio.Get<Suppliers>().ListAsync()).Single(s => s.Name == "Alder Supply").Id;
        (await Studio.Get<Deliveries>().PostAsync(Studio.Ana, new PostDelivery
        {
            SupplierId = supplier, ReceivedOn = on, Lines = [new DeliveryLineTyped { MaterialId = _oil, Quantity = 5, Unit = AmountUnit.Kilogram, Price = price }],
        })).Expect();
    }

    private static async Task NoteAsync(IRenderedComponent<MaterialPricesPage> page, string kilograms, string price, string? freight = null, bool each = false)
    {
        await Field(page, "Quantity").ChangeAsync(kilograms);
        await Field(page, "They ask").ChangeAsync(price);
        await Field(page, "That is").ChangeAsync(each ? nameof(PriceIs.OfOne) : nameof(PriceIs.OfAll));
        await Field(page, "Freight of all of it").ChangeAsync(freight ?? "");
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains($"Noted: {kilograms} kg.", page.Markup, StringComparison.Ordinal));
    }

    private static IElement Field(IRenderedComponent<MaterialPricesPage> page, string label) =>
        page.Find("#" + page.FindAll("label[for]").First(l => l.TextContent.Trim() == label).GetAttribute("for"));
}
