using Bunit;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests;
using MakerStudio.Web.Finished.Selling;

namespace MakerStudio.Web.Tests.Finished;

public sealed class CustomersPageTests : StudioContext
{
    protected override void Use() => Use<Customers>();

    [Fact]
    public async Task Change_APhoneNumber_IsKeptAndTheFormCloses()
    {
        (await Studio.Get<Customers>().AddAsync(Studio.Ana, new AddCustomer { Name = "Ida Marsh" })).Expect();
        var page = Render<CustomersPage>();
        page.WaitForElement("button[aria-label='Change Ida Marsh']").Click();

        await page.Find("section:nth-of-type(2) input[type=tel]").ChangeAsync(new() { Value = "000 555 0142" });
        await page.Find("section:nth-of-type(2) form").SubmitAsync();

        page.WaitForAssertion(() => Assert.Contains("Ida Marsh is kept.", page.Markup, StringComparison.Ordinal));
        Assert.Contains("000 555 0142", page.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("input[value='000 555 0142']"));
    }

    [Fact]
    public async Task Find_PartOfAName_ShowsOnlyThose()
    {
        foreach (var name in new[] { "Ida Marsh", "Moss, Pim" })
        {
            (await Studio.Get<Customers>().AddAsync(Studio.Ana, new AddCustomer { Name = name })).Expect();
        }

        var page = Render<CustomersPage>();
        page.WaitForElement("button[aria-label='Change Ida Marsh']");
        Assert.Equal("", page.Find("section input").GetAttribute("value") ?? "");

        await page.Find("section input").ChangeAsync(new() { Value = "moss" });

        page.WaitForAssertion(() => Assert.Equal(["Moss, Pim"], page.FindAll("tbody td:first-child").Select(c => c.TextContent.Trim())));
    }

    [Fact]
    public async Task Change_AfterTheOtherOneDid_ShowsBothAndKeepsWhatWasTyped()
    {
        var id = (await Studio.Get<Customers>().AddAsync(Studio.Ana, new AddCustomer { Name = "Ida Marsh" })).Expect().CustomerId;
        var row = (await Studio.Get<Customers>().FindAsync(id))!;
        var form = Render<CustomerEdit>(p => p.Add(e => e.Customer, row));
        (await Studio.Get<Customers>().ChangeAsync(Studio.Bo, new ChangeCustomer { CustomerId = id, Name = "Ida Marsh", Email = "ida@example.org", Version = row.Version })).Expect();

        await form.Find("input[type=tel]").ChangeAsync(new() { Value = "000 555 0142" });
        await form.Find("form").SubmitAsync();

        form.WaitForAssertion(() => Assert.Contains("ida@example.org", form.Find("dl").TextContent, StringComparison.Ordinal));
        Assert.Equal("000 555 0142", form.Find("input[type=tel]").GetAttribute("value"));
        Assert.Null((await Studio.Get<Customers>().FindAsync(id))!.Phone);
        await form.Find("form").SubmitAsync();
        form.WaitForAssertion(() => Assert.Empty(form.FindAll("dl")));
        Assert.Equal("000 555 0142", (await Studio.Get<Customers>().FindAsync(id))!.Phone);
    }
}
