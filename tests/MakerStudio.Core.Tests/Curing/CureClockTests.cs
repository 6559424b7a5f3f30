using MakerStudio.Core.Curing;

namespace MakerStudio.Core.Tests.Curing;

/// <remarks>
/// Clock changes in the European Union: last Sunday of March and of October at 01:00 UTC (Directive 2000/84/EC,
/// from memory; the zone data of the machine decides and these tests would show a difference).
/// </remarks>
public class CureClockTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");
    private static readonly CureWindow Spray = new(TimeSpan.FromHours(48), TimeSpan.FromDays(14), TimeSpan.FromDays(60));
    private static readonly DateTimeOffset Start = new(2026, 6, 1, 10, 0, 0, TimeSpan.Zero);

    [Fact]
    public void AutumnChange_48HoursEndAnHourEarlierOnTheWall_S8()
    {
        var start = At(2026, 10, 24, 20, 0);
        Assert.Equal(new DateTime(2026, 10, 26, 19, 0, 0), StudioTime.Local(CureClock.DueAt(start, Spray), Berlin).DateTime);

        var before = At(2026, 10, 26, 18, 59);
        var resting = Assert.IsType<CureStanding.Resting>(CureClock.Of(start, Spray, before, null));
        Assert.Equal(TimeSpan.FromMinutes(1), resting.Remaining);
        Assert.Contains(
            new ReleaseRefusal.TimeNotReached(CureClock.DueAt(start, Spray)),
            CureClock.WhyNotRelease(start, Spray, before, Passed(before)));

        var due = At(2026, 10, 26, 19, 0);
        Assert.Equal(new CureStanding.DueForCheck(due), CureClock.Of(start, Spray, due, null));
        Assert.Equal([new ReleaseRefusal.NoPassedCheck()], CureClock.WhyNotRelease(start, Spray, due, null));
    }

    [Fact]
    public void SpringChange_48HoursEndAnHourLaterOnTheWall_S8()
    {
        var start = At(2027, 3, 27, 20, 0);
        Assert.Equal(new DateTime(2027, 3, 29, 21, 0, 0), StudioTime.Local(CureClock.DueAt(start, Spray), Berlin).DateTime);
        Assert.IsType<CureStanding.Resting>(CureClock.Of(start, Spray, At(2027, 3, 29, 20, 59), null));
        Assert.IsType<CureStanding.DueForCheck>(CureClock.Of(start, Spray, At(2027, 3, 29, 21, 0), null));
    }

    [Fact]
    public void Of_TimeReachedAndCheckPassedAndSigned_IsReady()
    {
        var now = Start.AddHours(50);
        var check = Passed(Start.AddHours(49));
        Assert.Equal(new CureStanding.Ready(Start.AddHours(49)), CureClock.Of(Start, Spray, now, check));
        Assert.Empty(CureClock.WhyNotRelease(Start, Spray, now, check));
    }

    [Fact]
    public void Of_CheckPassedEarly_IsReadyOnlyWhenTimeIsReached()
    {
        var check = Passed(Start.AddHours(24));
        Assert.IsType<CureStanding.Resting>(CureClock.Of(Start, Spray, Start.AddHours(47), check));
        Assert.Equal(new CureStanding.Ready(Start.AddHours(48)), CureClock.Of(Start, Spray, Start.AddHours(48), check));
    }

    [Fact]
    public void Of_CheckFailed_StaysDue()
    {
        var check = new CureCheck(Start.AddHours(49), false, "AQ");
        Assert.IsType<CureStanding.DueForCheck>(CureClock.Of(Start, Spray, Start.AddHours(50), check));
        Assert.Equal(
            [new ReleaseRefusal.NoPassedCheck()], CureClock.WhyNotRelease(Start, Spray, Start.AddHours(50), check));
    }

    [Fact]
    public void Of_NoInitials_StaysDue()
    {
        var check = new CureCheck(Start.AddHours(49), true, " ");
        Assert.IsType<CureStanding.DueForCheck>(CureClock.Of(Start, Spray, Start.AddHours(50), check));
        Assert.Equal(
            [new ReleaseRefusal.CheckNotSigned()], CureClock.WhyNotRelease(Start, Spray, Start.AddHours(50), check));
    }

    [Fact]
    public void Of_CheckFromBeforeTheClockRestarted_DoesNotCount() =>
        Assert.IsType<CureStanding.DueForCheck>(
            CureClock.Of(Start, Spray, Start.AddHours(50), Passed(Start.AddHours(-1))));

    [Fact]
    public void Of_ClockOfTheMachineSetBack_ShowsTheWholeRest() =>
        Assert.Equal(
            new CureStanding.Resting(TimeSpan.Zero, Spray.Min), CureClock.Of(Start, Spray, Start.AddHours(-1), null));

    [Fact]
    public void StartedAt_LaterAdditionRestarts_UnlessOverridden()
    {
        var restarted = Start.AddHours(5);
        Assert.Equal(restarted, CureClock.StartedAt([new(Start), new(restarted)]));
        Assert.Equal(Start, CureClock.StartedAt([new(Start), new(restarted, RestartsClock: false)]));
        Assert.Null(CureClock.StartedAt([]));
    }

    [Fact]
    public void IdealAndLatest_AreCountedFromTheStart()
    {
        Assert.Equal(Start.AddDays(14), CureClock.IdealAt(Start, Spray));
        Assert.Equal(Start.AddDays(60), CureClock.LatestAt(Start, Spray));
        Assert.False(CureClock.IsPastLatest(Start, Spray, Start.AddDays(60)));
        Assert.True(CureClock.IsPastLatest(Start, Spray, Start.AddDays(60).AddSeconds(1)));
        Assert.False(CureClock.IsPastLatest(Start, new(Spray.Min, Spray.Ideal), Start.AddDays(9000)));
    }

    [Theory]
    [InlineData(-1, 10, 20)]
    [InlineData(10, 9, 20)]
    [InlineData(10, 20, 19)]
    [InlineData(10, 20, 100_000)]
    public void Window_OutOfOrderOrTooLong_Throws(int min, int ideal, int latest) =>
        Assert.Throws<ArgumentOutOfRangeException>(
            () => new CureWindow(TimeSpan.FromHours(min), TimeSpan.FromHours(ideal), TimeSpan.FromHours(latest)));

    private static CureCheck Passed(DateTimeOffset at) => new(at, true, "AQ");

    private static DateTimeOffset At(int year, int month, int day, int hour, int minute) =>
        Assert.IsType<WallClockReading.Once>(
            StudioTime.Read(new DateTime(year, month, day, hour, minute, 0), Berlin)).At.ToUniversalTime();
}
