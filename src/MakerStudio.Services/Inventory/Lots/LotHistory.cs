using MakerStudio.Core.Stock;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

public sealed partial class Lots
{
    /// <summary>Everything that happened to a lot, oldest first: ledger entries and events in one line of time.</summary>
    public async Task<IReadOnlyList<LotHistoryRow>> HistoryAsync(Guid lotId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var movements = await db.Movements.Where(m => m.LotId == lotId).OrderBy(m => m.Id).Select(m => new
        {
            m.Id, m.At, m.Kind, m.Reason, m.Change, m.OnHandAfter, m.Note, m.ReversesId,
            Who = db.Users.Where(p => p.Id == m.PersonId).Select(p => p.DisplayName).FirstOrDefault(),
            Batch = db.Batches.Where(b => b.Id == m.BatchId).Select(b => b.Code).FirstOrDefault(),
            Delivery = db.Deliveries.Where(d => d.Id == m.DeliveryId).Select(d => d.Code).FirstOrDefault(),
            IsReversed = db.Movements.Any(r => r.ReversesId == m.Id),
        }).ToListAsync(cancel);
        var events = await db.LotEvents.Where(e => e.LotId == lotId).OrderBy(e => e.Id).Select(e => new
        {
            e.Id, e.At, e.Kind, e.What, e.Reason, e.OldDate, e.NewDate,
            Who = db.Users.Where(p => p.Id == e.PersonId).Select(p => p.DisplayName).FirstOrDefault(),
        }).ToListAsync(cancel);

        var ledger = movements.Select(m => new LotHistoryRow(
            m.At, m.Reason is { } reason ? LotWords.Reason(reason) : LotWords.Kind(m.Kind), m.Note, m.Who ?? "–", m.Change, m.OnHandAfter, m.Id, m.ReversesId,
            m.IsReversed, m.Batch, m.Delivery, null, null)
        {
            IsReversal = m.Kind == MovementKind.Reversal,
            MayReverse = !m.IsReversed && (m.Kind is MovementKind.Adjustment or MovementKind.Return or MovementKind.Opening || (m.Kind == MovementKind.Receipt && m.Delivery is null)),
        });
        var log = events.Select(e => new LotHistoryRow(e.At, e.What, e.Reason, e.Who ?? "–", null, null, null, null, false, null, null, e.OldDate, e.NewDate));
        return WithRunningOnHand([.. ledger.Concat(log).OrderBy(r => r.At).ThenBy(r => r.MovementId is null)]);
    }

    /// <summary>An event stands between two entries: what was on hand then is what the entry before left.</summary>
    private static List<LotHistoryRow> WithRunningOnHand(List<LotHistoryRow> rows)
    {
        var onHand = 0L;
        return [.. rows.Select(r => r with { OnHand = onHand = r.OnHand ?? onHand })];
    }
}

/// <param name="What">Kind of entry, reason of an adjustment, or what happened.</param>
/// <param name="Change">Milligrams or pieces; null for an event.</param>
/// <param name="OnHand">After it.</param>
/// <param name="MovementId">Null for an event.</param>
/// <param name="ReversesId">The entry this one takes back.</param>
/// <param name="OldDate">For a moved date: what it was before.</param>
public sealed record LotHistoryRow(
    DateTimeOffset At, string What, string? Why, string Who, long? Change, long? OnHand, long? MovementId, long? ReversesId, bool IsReversed,
    string? BatchCode, string? DeliveryCode, DateOnly? OldDate, DateOnly? NewDate)
{
    public bool IsReversal { get; init; }

    /// <summary>Whether the entry can be taken back here; others have their own way back.</summary>
    public bool MayReverse { get; init; }
}
