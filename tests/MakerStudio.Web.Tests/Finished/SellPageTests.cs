using Bunit;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Finished.Selling;

namespace MakerStudio.Web.Tests.Finished;

public sealed class SellPageTests : StudioContext
{
    protected override void Use()
    {
        Use<Sales>();
        Use<Customers>();
    }

    [Fact]
    public async Task Keys_TwoOfTheWorkedSprayAtItsTag_AreSoldAndTheFormIsReadyForTheNextBuyer()
    {
        var batch = await Studio.FilledBatchAsync();
        var page = Render<SellPage>();
        page.WaitForAssertion(() => Assert.Contains("46 here", page.Markup, StringComparison.Ordinal));
        Assert.Contains("nothing chosen", page.Markup, StringComparison.Ordinal);

        page.Find("button[aria-label^='One more']").Click();
        page.Find("button[aria-label^='One more']").Click();
        page.WaitForAssertion(() => Assert.Contains("a tag is missing", page.Markup, StringComparison.Ordinal));
        await page.Find(".sell > .fld input").ChangeAsync(new() { Value = "22" });
        page.WaitForAssertion(() => Assert.Contains("Record 2 sold for 44.00", page.Markup, StringComparison.Ordinal));
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("Sale SL-1: 44.00 paid.", page.Markup, StringComparison.Ordinal));
        Assert.Equal(44, await Studio.UnitsAsync(batch));
        Assert.Contains("nothing chosen", page.Markup, StringComparison.Ordinal);
        Assert.Equal("22", page.Find(".sell > .fld input").GetAttribute("value")); // the tag stays for the next buyer
    }

    [Fact]
    public async Task Record_MoreThanThereIs_SaysSoAndKeepsWhatWasTyped()
    {
        var batch = await Studio.FilledBatchAsync();
        var page = Render<SellPage>();
        page.WaitForAssertion(() => Assert.Contains("46 here", page.Markup, StringComparison.Ordinal));
        await page.Find(".sell .keys input").ChangeAsync(new() { Value = "47" });
        await page.Find(".sell > .fld input").ChangeAsync(new() { Value = "22" });
        await page.Find("form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("47 wanted, 46 are there", page.Markup, StringComparison.Ordinal));
        Assert.Equal("47", page.Find(".sell .keys input").GetAttribute("value"));
        Assert.Equal(46, await Studio.UnitsAsync(batch));
    }
}
