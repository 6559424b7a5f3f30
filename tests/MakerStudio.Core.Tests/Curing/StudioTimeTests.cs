using MakerStudio.Core.Curing;

namespace MakerStudio.Core.Tests.Curing;

public class StudioTimeTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    [Fact]
    public void Today_IsTheStudiosDateNotGreenwichs()
    {
        var lateInSummer = new DateTimeOffset(2026, 7, 1, 22, 30, 0, TimeSpan.Zero);
        Assert.Equal(new DateOnly(2026, 7, 2), StudioTime.Today(lateInSummer, Berlin));
        Assert.Equal(new DateOnly(2026, 7, 1), StudioTime.Today(lateInSummer, TimeZoneInfo.Utc));
    }

    [Fact]
    public void Today_TakesTheClockHandedIn() =>
        Assert.Equal(new DateOnly(2027, 1, 1), StudioTime.Today(new NewYear(), Berlin));

    [Fact]
    public void Read_OrdinaryTime_IsOneInstant() =>
        Assert.Equal(
            new WallClockReading.Once(new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.FromHours(1))),
            StudioTime.Read(new DateTime(2026, 11, 25, 9, 0, 0, DateTimeKind.Utc), Berlin));

    [Fact]
    public void Read_HourThatCameTwice_OffersBothInOrder()
    {
        var twice = Assert.IsType<WallClockReading.Twice>(
            StudioTime.Read(new DateTime(2026, 10, 25, 2, 30, 0), Berlin));
        Assert.Equal(new DateTimeOffset(2026, 10, 25, 0, 30, 0, TimeSpan.Zero), twice.First);
        Assert.Equal(new DateTimeOffset(2026, 10, 25, 1, 30, 0, TimeSpan.Zero), twice.Second);
    }

    [Fact]
    public void Read_HourThatNeverCame_SaysSo() =>
        Assert.IsType<WallClockReading.Never>(StudioTime.Read(new DateTime(2027, 3, 28, 2, 30, 0), Berlin));

    private sealed class NewYear : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 12, 31, 23, 0, 0, TimeSpan.Zero);
    }
}
