using Bunit;
using MakerStudio.Core.Assessing;
using MakerStudio.Services.Accounts;
using MakerStudio.Web.Studio;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Studio;

public sealed class WhereWeSellPageTests : StudioContext
{
    protected override void Use() => Use<StudioSettings>();

    [Fact]
    public async Task Keep_WithoutAScheme_AsksForItAndKeepsWhatWasTyped()
    {
        var page = Render<WhereWeSellPage>();
        page.WaitForElement("form");
        await Input(page, "Allergens are declared from").ChangeAsync("0.1");
        await page.Find("form").SubmitAsync();

        Assert.Contains("Choose the rules your labels follow.", page.Markup, StringComparison.Ordinal);
        Assert.Equal("0.1", Input(page, "Allergens are declared from").GetAttribute("value"));
        Assert.Null((await Studio.Get<StudioSettings>().WhereWeSellAsync()).Scheme);

        await Input(page, "Labels follow").ChangeAsync(nameof(LabelScheme.GreatBritain));
        await page.FindAll("button").First(b => b.TextContent.Contains("UK, workroom cabinet, extremely", StringComparison.Ordinal)).ClickAsync(new());
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.EndsWith("/studio", Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal));
        var kept = await Studio.Get<StudioSettings>().WhereWeSellAsync();
        Assert.Equal((LabelScheme.GreatBritain, 0.1m, 50m), (kept.Scheme!.Value, kept.AllergenPercent!.Value, kept.FlammableLimits[0].Most!.Value));
    }

    [Fact]
    public void Page_Always_SaysThatItIsADraftForACompetentPerson()
    {
        var page = Render<WhereWeSellPage>();
        Assert.Contains("working draft, to be checked against current local law by a competent person", page.Markup, StringComparison.Ordinal);
    }

    private static AngleSharp.Dom.IElement Input(IRenderedComponent<WhereWeSellPage> page, string label) =>
        page.Find("#" + page.FindAll("label[for]").First(l => l.TextContent.Trim() == label).GetAttribute("for"));
}
