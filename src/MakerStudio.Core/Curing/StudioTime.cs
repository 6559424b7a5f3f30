namespace MakerStudio.Core.Curing;

/// <summary>What a time typed off the studio's wall clock means.</summary>
public abstract record WallClockReading
{
    private WallClockReading()
    {
    }

    public sealed record Once(DateTimeOffset At) : WallClockReading;

    /// <summary>The clocks went back over it: it came twice, and a person must say which.</summary>
    public sealed record Twice(DateTimeOffset First, DateTimeOffset Second) : WallClockReading;

    /// <summary>The clocks went forward over it: it never came.</summary>
    public sealed record Never : WallClockReading;
}

/// <summary>Between instants and the clock on the studio's wall. The zone and the instant are handed in.</summary>
public static class StudioTime
{
    /// <summary>The instant as the studio's clock shows it.</summary>
    public static DateTimeOffset Local(DateTimeOffset instant, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(instant, zone);

    /// <summary>The date on the studio's calendar at that instant.</summary>
    public static DateOnly Today(DateTimeOffset instant, TimeZoneInfo zone) =>
        DateOnly.FromDateTime(Local(instant, zone).DateTime);

    /// <summary>The date on the studio's calendar now.</summary>
    public static DateOnly Today(TimeProvider clock, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return Today(clock.GetUtcNow(), zone);
    }

    /// <summary>Reads a typed local time; its <see cref="DateTime.Kind"/> is not looked at.</summary>
    public static WallClockReading Read(DateTime wallClock, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var local = DateTime.SpecifyKind(wallClock, DateTimeKind.Unspecified);
        if (zone.IsInvalidTime(local))
        {
            return new WallClockReading.Never();
        }
        if (!zone.IsAmbiguousTime(local))
        {
            return new WallClockReading.Once(new DateTimeOffset(local, zone.GetUtcOffset(local)));
        }
        var offsets = zone.GetAmbiguousTimeOffsets(local);
        // The greater offset is summer time, and its instant comes first.
        return new WallClockReading.Twice(
            new DateTimeOffset(local, offsets.Max()), new DateTimeOffset(local, offsets.Min()));
    }
}
