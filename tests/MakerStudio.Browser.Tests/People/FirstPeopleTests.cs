using MakerStudio.Browser.Tests.Browsing;
using MakerStudio.Browser.Tests.Host;
using MakerStudio.Services.Accounts;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.People;

/// <summary>The studio's first day, by its pages: the first person sets it up, a second joins by a link, both come back.</summary>
public sealed class FirstPeopleTests(EmptyStudioHost host) : IClassFixture<EmptyStudioHost>
{
    [Fact]
    public Task FirstDay_TwoPeopleByTheirLinks_BothComeInAndTheLinksAreSpent() => Scene.PlayAsync(host, async scene =>
    {
        var token = await host.App.Get<FirstRun>().IssueLinkAsync();
        var ana = await scene.StrangerAsync(Device.Desk, "Ana");
        await ana.GoAsync($"/first-run?token={token}");
        await Expect(ana.Page.Heading("Set up your studio")).ToBeVisibleAsync();
        await ana.Page.SetUpAsync("Quince Yard Studio", "Ana", "An", StudioHost.Passphrase);
        await Expect(ana.Page.Heading("The studio is yours, Ana")).ToBeVisibleAsync();
        await ana.Page.Link("Go to Today").ClickAsync();
        await Expect(ana.Page.Strip("Quince Yard Studio")).ToBeVisibleAsync();
        await ana.Page.ReadyAsync();

        var link = await ana.Page.InviteAsync("Bo");
        var bo = await scene.StrangerAsync(Device.Phone, "Bo");
        await bo.GoAsync(link);
        await bo.Page.JoinAsync("Bo", StudioHost.Passphrase);
        await Expect(bo.Page.Locator("main")).ToContainTextAsync("Nothing rests and nothing waits");

        var late = await scene.StrangerAsync(Device.Phone, "Somebody late");
        foreach (var spent in new[] { $"/first-run?token={token}", "/first-run", link })
        {
            await late.GoAsync(spent);
            await Expect(late.Page.Heading("No way in here")).ToBeVisibleAsync();
            await Expect(late.Page.GetByLabel("Passphrase")).ToHaveCountAsync(0);
        }

        Assert.Equal(2, await host.App.ValueAsync<int>("select count(*) from people"));
        var again = await scene.StrangerAsync(Device.Desk, "Ana on another machine");
        await again.GoAsync("/storeroom/materials/new");
        await Expect(again.Page.Heading("Who is at the bench?")).ToBeVisibleAsync();
        await again.Page.FillSignInAsync("Ana", StudioHost.Passphrase);
        await Expect(again.Page.Heading("New material")).ToBeVisibleAsync();
    });
}
