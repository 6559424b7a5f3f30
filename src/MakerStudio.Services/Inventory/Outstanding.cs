using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <param name="Units">Base units still to be taken, above zero.</param>
internal sealed record OutstandingRow(Guid BatchId, string BatchCode, DateTimeOffset PlannedAt, Guid MaterialId, long Units);

/// <summary>
/// What planned and running batches still need. This is all that "reserved" means: it is worked out from their
/// targets and stored nowhere else, so it cannot drift.
/// </summary>
internal static class Outstanding
{
    private static readonly BatchState[] Weighs = [BatchState.Planned, BatchState.Weighing];
    private static readonly BatchState[] NotFilled = [BatchState.Planned, BatchState.Weighing, BatchState.Resting, BatchState.Ready];

    /// <param name="materials">Only these; null for all.</param>
    public static async Task<List<OutstandingRow>> OfAsync(
        StudioDb db, IReadOnlyCollection<Guid>? materials = null, CancellationToken cancel = default)
    {
        var lines = await (
            from b in db.Batches.AsNoTracking()
            where Weighs.Contains(b.State)
            from l in b.Lines
            where l.DoneAt == null && (materials == null || materials.Contains(l.MaterialId))
            select new
            {
                b.Id, b.Code, b.PlannedAt, l.MaterialId, l.TargetMilligrams,
                Recorded = db.Weighings.Where(w => w.BatchLineId == l.Id && w.ReversedAt == null).Sum(w => (long?)w.NetMilligrams) ?? 0,
            }).ToListAsync(cancel);
        var parts = await (
            from b in db.Batches.AsNoTracking()
            where NotFilled.Contains(b.State) && b.PlannedUnits != null
            from p in b.Parts
            where materials == null || materials.Contains(p.MaterialId)
            select new { b.Id, b.Code, b.PlannedAt, p.MaterialId, Units = (long)b.PlannedUnits! * p.CountPerUnit }).ToListAsync(cancel);
        return lines.Select(l => new OutstandingRow(l.Id, l.Code, l.PlannedAt, l.MaterialId, l.TargetMilligrams - l.Recorded))
            .Concat(parts.Select(p => new OutstandingRow(p.Id, p.Code, p.PlannedAt, p.MaterialId, p.Units)))
            .Where(row => row.Units > 0)
            .ToList();
    }
}
