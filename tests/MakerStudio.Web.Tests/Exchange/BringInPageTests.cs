using System.Text;
using Bunit;
using MakerStudio.Services.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Exchange;

/// <summary>The page on a file that is kept already, as after its sending or when it is opened again.</summary>
public sealed class BringInPageTests : StudioContext
{
    protected override void Use() => Use<BroughtFiles>();

    [Fact]
    public async Task Open_GoodFile_ShowsEveryRowAndBringsItIn()
    {
        var page = await OpenAsync(BringInKind.Materials, "Material,Kind,Colour\nDPG,Solvent,clear\nFig oil,Fragrance oil,brown\n");

        Assert.Equal("2 of 2 rows would be brought in: 2 materials.", page.Find("p[role=status]").TextContent);
        Assert.Contains("Columns that are left aside: Colour.", page.Markup, StringComparison.Ordinal);
        Assert.Equal(2, page.FindAll("tbody tr").Count);

        await page.FindAll("button").Single(b => b.TextContent.Trim() == "Bring in 2 materials").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Contains("2 materials: brought in.", page.Markup, StringComparison.Ordinal));
        Assert.Empty(page.FindAll("tbody tr"));
        Assert.Equal(["DPG", "Fig oil"], (await Studio.Get<Materials>().FormsAsync()).Select(m => m.Name));
    }

    [Fact]
    public async Task Open_RowRefused_CannotBeBroughtInAndSaysWhy()
    {
        var page = await OpenAsync(BringInKind.Materials, "Material,Kind\nDPG,Solvent\nFig oil,Perfume\n");

        var button = page.FindAll("button").Single(b => b.TextContent.Contains("Bring in", StringComparison.Ordinal));
        Assert.Equal(("Bring in 1 material, 1 row is refused", "true"), (button.TextContent.Trim(), button.GetAttribute("aria-disabled")));
        Assert.EndsWith("/refused.csv", page.FindAll("a").Single(a => a.TextContent.Contains("Refused rows", StringComparison.Ordinal)).GetAttribute("href"), StringComparison.Ordinal);

        await page.FindAll("button").Single(b => b.TextContent.Trim() == "Show refused rows only").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Contains("“Perfume” is none of:", Assert.Single(page.FindAll("tbody tr")).TextContent, StringComparison.Ordinal));
        await button.ClickAsync(new());
        Assert.Empty(await Studio.Get<Materials>().FormsAsync());
    }

    [Fact]
    public async Task Open_NumberThatCouldBeTwo_IsAskedBeforeAnyRowIsShown()
    {
        var page = await OpenAsync(BringInKind.Materials, "Material;Kind;Density (g/mL)\nDPG;Solvent;1,023\n");
        Assert.Contains("1,023 on line 2 could be two numbers.", page.Markup, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("tbody tr"));

        await page.FindAll("button").Single(b => b.TextContent.Trim() == "A comma, so it is 1.023").ClickAsync(new());
        page.WaitForAssertion(() => Assert.Contains("Numbers are read with a comma before decimals.", page.Markup, StringComparison.Ordinal));
        await page.FindAll("button").Single(b => b.TextContent.Trim() == "Bring in 1 material").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Contains("1 material: brought in.", page.Markup, StringComparison.Ordinal));
        Assert.Equal(1.023m, Assert.Single(await Studio.Get<Materials>().FormsAsync()).Density);
    }

    [Fact]
    public async Task Choose_Lots_TellsTheirColumnsAndAnEmptyFile()
    {
        var page = Render<BringInPage>();
        page.WaitForAssertion(() => Assert.Contains("Needed: Material, Kind.", page.Markup, StringComparison.Ordinal));

        await page.FindAll("input[type=radio]")[1].ChangeAsync(new ChangeEventArgs { Value = "on" });

        page.WaitForAssertion(() => Assert.Contains("Needed: Material, Amount, Landed (EUR per kg or each), Received.", page.Markup, StringComparison.Ordinal));
        Assert.Equal("/brought-files/empty/lots.csv", page.Find("a[download]").GetAttribute("href"));
        Assert.Equal("Lots", page.Find("input[name=kind]").GetAttribute("value"));
    }

    private async Task<IRenderedComponent<BringInPage>> OpenAsync(BringInKind kind, string text)
    {
        var file = (await Studio.Get<BroughtFiles>().AddAsync(Studio.Ana, new AddBroughtFile { Kind = kind, Name = "from before.csv" }, new MemoryStream(Encoding.UTF8.GetBytes(text)))).Expect();
        Services.GetRequiredService<NavigationManager>().NavigateTo($"/storeroom/bring-in?file={file.FileId}");
        var page = Render<BringInPage>();
        page.WaitForAssertion(() => Assert.Contains("from before.csv", page.Markup, StringComparison.Ordinal));
        return page;
    }
}
