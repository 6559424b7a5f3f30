using Bunit;
using MakerStudio.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Web.Tests.Shell;

public sealed class LayoutTests : ShellContext
{
    [Fact]
    public void RoomsBar_InAPageOfARoom_MarksThatRoomOnly()
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/storeroom/lots/P-1");

        var bar = Render<RoomsBar>();

        Assert.Equal("Storeroom", Assert.Single(bar.FindAll("[aria-current=page]")).TextContent.Trim());
    }

    [Fact]
    public void RoomsBar_Count_HasASpokenLabel()
    {
        State.SetAsking(Room.Curing, 3);

        var bar = Render<RoomsBar>();

        var link = bar.FindAll("a").Single(a => a.TextContent.Contains("Curing", StringComparison.Ordinal));
        Assert.Equal("true", link.QuerySelector(".c")!.GetAttribute("aria-hidden"));
        Assert.Equal(", 3 ask for a hand", link.QuerySelector(".vh")!.TextContent);
    }

    [Fact]
    public void RoomsBar_CountChanges_FollowsWithoutAReload()
    {
        var bar = Render<RoomsBar>();
        Assert.Empty(bar.FindAll(".c"));

        State.SetAsking(Room.Bench, 1);
        State.Tell();

        bar.WaitForAssertion(() => Assert.Equal("1", bar.Find(".c").TextContent));
    }

    [Fact]
    public void Rooms_Letters_AreUniqueAndAddressesToo()
    {
        Assert.Equal(Room.All.Count, Room.All.Select(r => r.Letter).Distinct().Count());
        Assert.Equal(Room.All.Count, Room.All.Select(r => r.Href).Distinct().Count());
    }

    [Fact]
    public void Strip_Find_IsAPlainFormThatWorksWithoutACircuit()
    {
        var strip = Render<Strip>();

        Assert.Equal("/find", strip.Find("form.find").GetAttribute("action"));
        Assert.Equal("get", strip.Find("form.find").GetAttribute("method"));
        Assert.Equal("q", strip.Find("form.find input").GetAttribute("name"));
    }

    [Fact]
    public void Strip_NobodySignedIn_HasNoMenu() => Assert.Empty(Render<Strip>().FindAll(".ini"));
}
