using Bunit;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Curing;
using MakerStudio.Web.Shell.Drawings;
using MakerStudio.Web.Tests.Shell;

namespace MakerStudio.Web.Tests.Curing;

public sealed class CureShelfTests : ShellContext
{
    /// <summary>Sat 24 Oct 2026, 20:00 in Berlin; the clocks go back that night.</summary>
    private static readonly DateTimeOffset Saturday = new(2026, 10, 24, 18, 0, 0, TimeSpan.Zero);
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    public CureShelfTests() => State.TimeZone = Berlin;

    [Fact]
    public void Row_FortyEightHoursAcrossTheClockChange_SaysMondayNineteenLocal()
    {
        var row = Row(Saturday.AddHours(47.9), CureState.Resting);

        var shown = Shown(row);

        Assert.Contains("min Mon 26 Oct 19:00", shown.Find(".ct p").TextContent, StringComparison.Ordinal);
        Assert.Contains("min Mon 26 Oct 19:00", shown.Find("svg[role=img]").GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Contains("47 h of 48 h", shown.Find(".cs").TextContent, StringComparison.Ordinal);
        Assert.Empty(shown.FindAll(".ca a"));
    }

    [Fact]
    public void Row_AtTheMinimum_IsDueForCheckAndOffersIt()
    {
        var shown = Shown(Row(Saturday.AddHours(48), CureState.DueForCheck));

        Assert.Contains("Due for check", shown.Find(".st").TextContent, StringComparison.Ordinal);
        Assert.Contains("48 h reached at 19:00", shown.Find(".cs").TextContent, StringComparison.Ordinal);
        Assert.Equal("/curing/RS-2#check", shown.Find(".ca a").GetAttribute("href"));
    }

    [Fact]
    public void Row_Ready_SaysWhoPassedItAndOffersToFill()
    {
        var check = new CheckRow(Saturday.AddHours(48.5), "An", 4, "rounder", Clarity.Clear, null, CheckVerdict.Passed);
        var shown = Shown(Row(Saturday.AddHours(49), CureState.Ready) with { LastCheck = check });

        Assert.Contains("passed Mon 26 Oct 19:30, An", shown.Find(".cs").TextContent, StringComparison.Ordinal);
        Assert.Equal("/finished/RS-2/fill", shown.Find(".ca a").GetAttribute("href"));
        Assert.Contains("Fill 36 bottles, or leave to Sat 7 Nov", shown.Find(".ca p").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Row_OnHold_IsDashedAndSaysWhatWasSeen()
    {
        var check = new CheckRow(Saturday.AddHours(44), "Bo", 3, null, Clarity.Haze, "haze at the neck", CheckVerdict.Hold);
        var shown = Shown(Row(Saturday.AddHours(50), CureState.OnHold) with { LastCheck = check, HeldReason = "haze at the neck" });

        Assert.NotEmpty(shown.FindAll("rect.held"));
        Assert.Empty(shown.FindAll("rect.may"));
        Assert.Contains("haze at the neck, Bo Mon 26 Oct 15:00", shown.Find(".cs").TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(26, 1, "Swirl today")]
    [InlineData(27, 1, "Swirl tomorrow")]
    [InlineData(28, 3, "Shake Wed 28 Oct, every 3 days")]
    public void Next_Resting_RemindsOfTheNextMove(int day, int every, string expected)
    {
        var row = Row(Saturday.AddHours(40), CureState.Resting) with { Reminder = new(every == 1 ? "Swirl" : "Shake", new DateOnly(2026, 10, day), every) };
        Assert.Equal(expected, new CureWords(row, Berlin).Next);
    }

    [Fact]
    public void Next_PourWasBeforeTheRest_SoWaxIsPackedAfterIt()
    {
        var row = Row(Saturday.AddDays(30), CureState.Ready) with { ProductKind = "container-candle", PlannedUnits = 1 };
        Assert.Equal("Pack 1 jar", new CureWords(row, Berlin).FillAct);
        Assert.Equal("Pack 24 tins of 180 g", new CureWords(row with { PlannedUnits = 24, SizeName = "180 g tin" }, Berlin).FillAct);
        Assert.Equal("Pack 24 bags", new CureWords(row with { ProductKind = "wax-melt", PlannedUnits = 24 }, Berlin).FillAct);
        Assert.Equal("Take into stock", new CureWords(row with { ProductKind = "pre-blend" }, Berlin).FillAct);
    }

    [Theory]
    [InlineData("Chill test before filtering.")]
    [InlineData("Chill test before filtering")]
    public void About_HeldForATypedSentence_EndsItOnce(string reason)
    {
        var check = new CheckRow(Saturday.AddHours(50), "Bo", 3, null, Clarity.Haze, null, CheckVerdict.Hold);
        var row = Row(Saturday.AddHours(60), CureState.OnHold) with { HeldReason = reason, LastCheck = check };
        Assert.StartsWith("Chill test before filtering, Bo ", new CureWords(row, Berlin).About, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.5, "30 min")]
    [InlineData(72, "72 h")]
    [InlineData(98, "4 d 2 h")]
    [InlineData(336, "14 d")]
    public void Span_Elapsed_IsSaidAsPeopleCountIt(double hours, string expected) => Assert.Equal(expected, CureWords.Span(TimeSpan.FromHours(hours)));

    /// <summary>Half of the rest done: solid and hatched meet at now, and the bar stands at the minimum.</summary>
    [Fact]
    public void Line_HalfWay_PutsDoneAndMinimumWhereElapsedTimeSays()
    {
        var row = Row(Saturday.AddHours(24), CureState.Resting);
        var span = new CureSpan(Saturday.AddHours(-24), Saturday.AddHours(76));

        var line = Render<CureLine>(p => p.Add(l => l.Span, span).Add(l => l.Times, CureSpans.Times(row)).Add(l => l.Now, row.AsOf).Add(l => l.Sentence, "x"));

        Assert.Equal(("24%", "24%"), (line.Find("rect.done").GetAttribute("x"), line.Find("rect.done").GetAttribute("width")));
        Assert.Equal("48%", line.Find("rect.togo").GetAttribute("width"));
        Assert.Equal("72%", line.Find("line.min").GetAttribute("x1"));
        Assert.Equal("48%", line.Find("line.now").GetAttribute("x1"));
    }

    [Fact]
    public void SpanOf_Shelf_HoldsNowAndEveryStartAndLeavesOutTheFarFuture()
    {
        var now = Saturday.AddDays(10);
        var near = Row(now, CureState.DueForCheck);
        var far = near with { LatestAt = now.AddDays(400) };
        var span = CureSpans.Of([near, far], now);

        Assert.All([now, near.StartedAt, near.IdealAt], at => Assert.True(span.Holds(at)));
        Assert.False(span.Holds(far.LatestAt!.Value));
        var alone = CureSpans.Of(far);
        Assert.True(alone.Holds(far.LatestAt.Value));
        Assert.True(CureSpans.Of([], now).Holds(now));
    }

    [Fact]
    public void List_FirstThatAsksForAHand_IsTheOneMainAct()
    {
        var due = Row(Saturday.AddHours(50), CureState.DueForCheck);
        var list = Render<CureShelfList>(p => p
            .Add(l => l.Rows, [due, due with { BatchId = Guid.CreateVersion7(), Code = "RD-2" }, Row(due.AsOf, CureState.Resting) with { Code = "A-2" }])
            .Add(l => l.Now, due.AsOf));

        Assert.Equal("/curing/RS-2#check", Assert.Single(list.FindAll("a.btn.p")).GetAttribute("href"));
        Assert.Equal(3, list.FindAll("li.cr").Count);
    }

    private IRenderedComponent<CureShelfRow> Shown(CureRow row) => Render<CureShelfRow>(p => p
        .Add(r => r.Row, row).Add(r => r.Span, CureSpans.Of([row], row.AsOf)));

    private static CureRow Row(DateTimeOffset asOf, CureState state) => new(
        Guid.CreateVersion7(), "RS-2", "Quince & Smoke", 2, "room-spray-alcohol", 3_000_000, 36, Saturday, Saturday.AddHours(48),
        Saturday.AddDays(14), null, state, asOf, null, null);
}
