using MakerStudio.Core.Curing;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services;

/// <summary>The studio's calendar, for reads; a command has its own <see cref="Command.Today"/> and <see cref="Command.Zone"/>.</summary>
internal static class StudioDay
{
    /// <summary>Today in the studio's time zone.</summary>
    public static async Task<DateOnly> TodayAsync(StudioDb db, TimeProvider clock, CancellationToken cancel = default) =>
        StudioTime.Today(clock, await ZoneAsync(db, cancel));

    /// <summary>The studio's time zone; UTC before it has been set up.</summary>
    public static async Task<TimeZoneInfo> ZoneAsync(StudioDb db, CancellationToken cancel = default) =>
        await db.Studio.Select(s => s.TimeZone).SingleOrDefaultAsync(cancel) is { } zone ? TimeZoneInfo.FindSystemTimeZoneById(zone) : TimeZoneInfo.Utc;
}
