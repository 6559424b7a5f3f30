using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>The few facts every page carries: whose studio, what asks for a hand, who is weighing.</summary>
public sealed class StudioPulse(StudioStore store)
{
    /// <summary>Null before the studio has been set up.</summary>
    public async Task<PulseRow?> ReadAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var studio = await db.Studio.Select(s => new { s.Name, s.TimeZone, s.Culture, s.IsSample }).SingleOrDefaultAsync(cancel);
        if (studio is null)
        {
            return null;
        }

        var now = store.Clock.GetUtcNow();
        var today = Core.Curing.StudioTime.Today(now, TimeZoneInfo.FindSystemTimeZoneById(studio.TimeZone));
        var curing = await CureShelf.RowsAsync(db, now, cancel);
        var weighing = await (
            from batch in db.Batches
            where batch.State == BatchState.Weighing
            join person in db.Users on batch.WeighingById equals person.Id
            orderby batch.WeighingSince
            select new WeigherRow(person.Id, person.DisplayName, batch.Code)).ToListAsync(cancel);
        return new PulseRow(
            studio.Name, studio.TimeZone, studio.Culture, studio.IsSample, curing.Count(r => r.State != CureState.Resting), weighing,
            await StoreroomAsync(db, today, cancel));
    }

    /// <summary>Lots that wait for a paper or a decision, lots past their date, and receipts to follow.</summary>
    private static async Task<int> StoreroomAsync(StudioDb db, DateOnly today, CancellationToken cancel) =>
        await db.Lots.CountAsync(l => l.Balance!.OnHand > 0 && (l.Status == LotStatus.Quarantine || l.Status == LotStatus.OnHold
            || (l.Status == LotStatus.Released && (l.ExpiresOn < today || l.RetestOn < today))), cancel)
        + await db.PendingReceipts.CountAsync(p => p.MatchedAt == null, cancel);
}

/// <param name="CuringAsks">Batches due for check, on hold or ready.</param>
/// <param name="StoreroomAsks">Lots waiting for papers or a decision, past their date, and receipts to follow.</param>
public sealed record PulseRow(
    string StudioName, string TimeZone, string Culture, bool IsSample, int CuringAsks, IReadOnlyList<WeigherRow> Weighing, int StoreroomAsks);

public sealed record WeigherRow(Guid PersonId, string Name, string BatchCode);
