using Bunit;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Parts;
using Microsoft.AspNetCore.Components;

namespace MakerStudio.Web.Tests.Shell;

public sealed class PartsTests : ShellContext
{
    public static TheoryData<StatusKind> States => new(Enum.GetValues<StatusKind>());

    [Theory, MemberData(nameof(States))]
    public void Status_EveryState_ShowsAPictureAndAWord(StatusKind kind)
    {
        var status = Render<Status>(p => p.Add(s => s.Is, kind));

        Assert.NotEmpty(status.Find("svg").InnerHtml);
        Assert.Equal("true", status.Find("svg").GetAttribute("aria-hidden"));
        Assert.Equal(StatusLook.Of(kind).Word, status.Find(".st").TextContent.Trim());
    }

    [Fact]
    public void Num_UnknownValue_ShowsADashNotZero()
    {
        var num = Render<Num>(p => p.Add(n => n.Unit, "g"));

        Assert.Equal("–g", num.Find(".num").TextContent);
    }

    [Theory]
    [InlineData(CameFrom.Typed, "typed")]
    [InlineData(CameFrom.Weighed, "weighed")]
    [InlineData(CameFrom.WorkedOut, "worked")]
    [InlineData(CameFrom.Estimate, "about")]
    public void Num_Origin_DecidesHowItLooks(CameFrom from, string css)
    {
        var num = Render<Num>(p => p.Add(n => n.Text, "480.0").Add(n => n.From, from));

        Assert.Contains(css, num.Find(".num").ClassList);
    }

    [Fact]
    public void PageHead_WithScent_SetsItInItsOwnFaceAndKeepsTheSpace()
    {
        var head = Render<PageHead>(p => p.Add(h => h.Scent, "Fig").Add(h => h.Title, "v4"));

        Assert.Equal("Fig v4", head.Find("h1").TextContent.Trim());
        Assert.Equal("Fig", head.Find("h1 .nm").TextContent);
    }

    [Fact]
    public void Section_Title_NamesTheRegion()
    {
        var section = Render<Section>(p => p.Add(s => s.Title, "Dates and papers").AddChildContent("x"));

        Assert.Equal(section.Find("h2").Id, section.Find("section").GetAttribute("aria-labelledby"));
    }

    [Fact]
    public void Btn_NotYet_StaysFocusableSaysWhyAndDoesNothing()
    {
        var pressed = 0;
        var button = Render<Btn>(p => p.AddChildContent("Post delivery").Add(b => b.NotYet, "1 question open")
            .Add(b => b.OnClick, EventCallback.Factory.Create(this, () => pressed++)));

        button.Find("button").Click();

        Assert.Equal(0, pressed);
        Assert.Equal("Post delivery, 1 question open", button.Find("button").TextContent.Trim());
        Assert.Equal("true", button.Find("button").GetAttribute("aria-disabled"));
        Assert.False(button.Find("button").HasAttribute("disabled"));
    }

    [Fact]
    public async Task Btn_SlowAct_IsInertAtOnceAndSaysSoAfterThreeTenthsOfASecond()
    {
        var pressed = 0;
        var act = new TaskCompletionSource();
        var button = Render<Btn>(p => p.AddChildContent("Record").Add(b => b.OnClick, EventCallback.Factory.Create(this, () =>
        {
            pressed++;
            return act.Task;
        })));

        var first = button.Find("button").ClickAsync(new());
        button.Find("button").Click();
        Assert.Equal(1, pressed);
        Assert.Equal("Record", button.Find("button").TextContent.Trim());

        Clock.Advance(TimeSpan.FromMilliseconds(300));
        button.WaitForAssertion(() => Assert.Equal("Recording…", button.Find("button").TextContent.Trim()));

        act.SetResult();
        await first;
        button.WaitForAssertion(() => Assert.Equal("Record", button.Find("button").TextContent.Trim()));
    }

    [Fact]
    public void Note_Refusal_IsSpokenAsAlertOnlyWhenAnnounced()
    {
        var quiet = Render<Note>(p => p.Add(n => n.Kind, NoteKind.Bad).Add(n => n.Fact, "N-7 is short 130.0 g."));
        var loud = Render<Note>(p => p.Add(n => n.Kind, NoteKind.Bad).Add(n => n.Fact, "N-7 is short 130.0 g.").Add(n => n.Announce, true));

        Assert.False(quiet.Find(".note").HasAttribute("role"));
        Assert.Equal("alert", loud.Find(".note").GetAttribute("role"));
    }

    [Theory]
    [InlineData("2026-10-24T18:00:00Z", "Sat 24 Oct 2026, 20:00")]
    [InlineData("2026-10-26T18:00:00Z", "Mon 26 Oct 2026, 19:00")]
    public void When_AroundTheClockChange_ShowsTheStudiosLocalTime(string utc, string shown)
    {
        State.TimeZone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

        var when = Render<When>(p => p.Add(w => w.At, DateTimeOffset.Parse(utc, null)).Add(w => w.Show, WhenShown.Planned));

        Assert.Equal(shown, when.Find("time").TextContent);
        Assert.Equal(utc, when.Find("time").GetAttribute("datetime"));
    }

    [Fact]
    public void UndoStrip_TwoMinutesAfterPosting_IsGone()
    {
        var strip = Render<UndoStrip>(p => p.Add(u => u.What, "Sample, 12.0 g, taken from P-1.").Add(u => u.PostedAt, Clock.GetUtcNow()));

        Clock.Advance(TimeSpan.FromSeconds(119));
        Assert.Single(strip.FindAll(".undo"));

        Clock.Advance(TimeSpan.FromSeconds(1));
        strip.WaitForAssertion(() => Assert.Empty(strip.FindAll(".undo")));
        Assert.Single(strip.FindAll("[role=status]"));
    }

    [Fact]
    public void UndoStrip_Pressed_ReversesOnceAndCloses()
    {
        var reversed = 0;
        var strip = Render<UndoStrip>(p => p.Add(u => u.What, "x").Add(u => u.PostedAt, Clock.GetUtcNow())
            .Add(u => u.OnUndo, EventCallback.Factory.Create(this, () => reversed++)));

        strip.Find("button").Click();

        Assert.Equal(1, reversed);
        Assert.Empty(strip.FindAll(".undo"));
    }
}
