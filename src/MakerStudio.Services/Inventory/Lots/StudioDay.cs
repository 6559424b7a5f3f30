using MakerStudio.Core.Curing;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Today in the studio's time zone, for reads.</summary>
internal static class StudioDay
{
    public static async Task<DateOnly> TodayAsync(StudioDb db, TimeProvider clock, CancellationToken cancel = default)
    {
        var zone = await db.Studio.Select(s => s.TimeZone).SingleOrDefaultAsync(cancel);
        return StudioTime.Today(clock, zone is null ? TimeZoneInfo.Utc : TimeZoneInfo.FindSystemTimeZoneById(zone));
    }
}
