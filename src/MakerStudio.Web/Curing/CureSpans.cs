using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Curing;

/// <summary>The stretch of time under which cure lines stand, from the batches that are shown.</summary>
public static class CureSpans
{
    /// <summary>A shelf shows no more than this to either side of now, or near things could not be told apart.</summary>
    private static readonly TimeSpan Farthest = TimeSpan.FromDays(42);
    private static readonly TimeSpan Nearest = TimeSpan.FromDays(5);
    private static readonly TimeSpan Air = TimeSpan.FromHours(18);

    /// <summary>Every start and every ideal or latest, within six weeks of now, and at least five days to either side.</summary>
    public static CureSpan Of(IReadOnlyCollection<CureRow> rows, DateTimeOffset now)
    {
        var first = rows.Select(r => r.StartedAt - Air).Append(now - Nearest).Min();
        var last = rows.SelectMany(r => new[] { r.IdealAt, r.LatestAt ?? r.IdealAt }).Select(t => t + Air).Append(now + Nearest).Where(t => t <= now + Farthest).Max();
        return new CureSpan(first < now - Farthest ? now - Farthest : first, last);
    }

    /// <summary>One batch alone: its whole rest, however long ago it was.</summary>
    public static CureSpan Of(CureRow row)
    {
        var ends = new[] { row.DueAt, row.IdealAt, row.LatestAt ?? row.IdealAt, row.AsOf };
        var length = ends.Max() - row.StartedAt;
        return new CureSpan(row.StartedAt - (length * 0.04), ends.Max() + (length * 0.06) + TimeSpan.FromHours(1));
    }

    public static CureTimes Times(CureRow row) =>
        new(row.StartedAt, row.DueAt, row.IdealAt, row.LatestAt, row.State == CureState.OnHold);
}
