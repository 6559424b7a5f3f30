using Bunit;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Finished.Selling;
using Microsoft.EntityFrameworkCore;

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

    [Fact]
    public async Task Channel_Another_BringsItsTagsAndFees_AndLeavesATypedTagAlone()
    {
        var batch = await Studio.FilledBatchAsync();
        await using (var db = Studio.Db())
        {
            var formula = await db.Batches.Where(b => b.Id == batch).Select(b => b.FormulaVersion!.FormulaId).SingleAsync();
            var size = await db.Batches.Where(b => b.Id == batch).Select(b => b.SizeName).SingleAsync();
            db.FormulaSizes.Add(new() { FormulaId = formula, Name = size!, NominalMillilitres = 100m });
            await db.SaveChangesAsync();
            var book = Studio.Get<PriceBook>();
            var web = (await book.KeepChannelAsync(Studio.Ana, new KeepChannel { Name = "Web shop", TaxPercent = 20, Fees = [new() { Name = "Card", Percent = 2.9m, Fixed = 0.30m }] })).Expect().ChannelId;
            var stall = (await book.KeepChannelAsync(Studio.Ana, new KeepChannel { Name = "Market stall", TaxPercent = 20 })).Expect().ChannelId;
            var id = await db.FormulaSizes.Select(s => s.Id).SingleAsync();
            (await book.SetTagAsync(Studio.Ana, new SetTag { SizeId = id, ChannelIds = [web], Amount = 22m })).Expect();
            (await book.SetTagAsync(Studio.Ana, new SetTag { SizeId = id, ChannelIds = [stall], Amount = 20m })).Expect();
        }

        var page = Render<SellPage>();
        page.WaitForAssertion(() => Assert.Equal("22", page.Find(".sell > .fld input").GetAttribute("value")));
        await page.Find("input[list=channels]").ChangeAsync(new() { Value = "Market stall" });
        Assert.Equal("20", page.Find(".sell > .fld input").GetAttribute("value"));
        await page.Find(".sell > .fld input").ChangeAsync(new() { Value = "19" });
        await page.Find("input[list=channels]").ChangeAsync(new() { Value = "Web shop" });
        Assert.Equal("19", page.Find(".sell > .fld input").GetAttribute("value"));

        page.Find("button[aria-label^='One more']").Click();
        page.WaitForAssertion(() => Assert.Contains("Empty takes 0.85, as Web shop charges", page.Markup, StringComparison.Ordinal));
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("19.00 paid", page.Markup, StringComparison.Ordinal));
        Assert.Equal(0.85m, Assert.Single(await Studio.Get<Sales>().ListAsync()).Fees);
    }
}
