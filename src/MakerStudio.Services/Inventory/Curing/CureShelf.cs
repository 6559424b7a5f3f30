using MakerStudio.Core.Curing;
using MakerStudio.Core.Products;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What rests, what is due for check and what is ready: one file a use case in this folder.</summary>
public sealed partial class CureShelf(StudioStore store)
{
    /// <summary>Every batch whose clock runs and that is not filled yet: what asks for a nose first.</summary>
    public async Task<IReadOnlyList<CureRow>> RowsAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await RowsAsync(db, store.Clock.GetUtcNow(), cancel);
    }

    internal static async Task<IReadOnlyList<CureRow>> RowsAsync(StudioDb db, DateTimeOffset now, CancellationToken cancel)
    {
        var batches = await db.Batches.AsNoTracking().Where(b => b.State == BatchState.Resting || b.State == BatchState.Ready).ToListAsync(cancel);
        var checks = await ChecksAsync(db, [.. batches.Select(b => b.Id)], cancel);
        var zone = await StudioDay.ZoneAsync(db, cancel);
        return
        [
            .. batches.Select(b => RowOf(b, checks[b.Id], now, zone))
                .OrderBy(r => Urgency(r)).ThenBy(r => r.DueAt).ThenBy(r => r.Code, StringComparer.Ordinal),
        ];
    }

    /// <summary>One batch on the shelf with all its checks, or null when no such batch ever rested.</summary>
    public async Task<CureDetail?> FindAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.SingleOrDefaultAsync(b => b.Code == code && b.ClockStartedAt != null, cancel);
        if (batch is null)
        {
            return null;
        }

        var checks = await ChecksAsync(db, [batch.Id], cancel);
        var row = RowOf(batch, checks[batch.Id], store.Clock.GetUtcNow(), await StudioDay.ZoneAsync(db, cancel));
        return new CureDetail(
            row, batch.State, [.. checks[batch.Id]], batch.Place, batch.EarlyReason, batch.Method, await NotesAsync(db, batch.Id, cancel));
    }

    internal static CureWindow WindowOf(Batch batch) => new(
        TimeSpan.FromHours(batch.CureMinHours), TimeSpan.FromHours(batch.CureIdealHours),
        batch.CureLatestHours is { } latest ? TimeSpan.FromHours(latest) : null);

    /// <summary>The check that counts for readiness: the newest since the clock started.</summary>
    internal static CureCheckFact? LastCheck(IEnumerable<CheckRow> checks) =>
        checks.MaxBy(c => c.At) is { } last ? new CureCheckFact(last.At, last.Verdict == CheckVerdict.Passed, last.Initials) : null;

    private static async Task<ILookup<Guid, CheckRow>> ChecksAsync(StudioDb db, IReadOnlyCollection<Guid> ids, CancellationToken cancel)
    {
        var rows = await (
            from check in db.CureChecks
            join person in db.Users on check.PersonId equals person.Id
            where ids.Contains(check.BatchId)
            orderby check.At
            select new { check.BatchId, Row = new CheckRow(check.At, person.Initials, check.Strength, check.Character, check.Clarity, check.Note, check.Verdict) })
            .ToListAsync(cancel);
        return rows.ToLookup(r => r.BatchId, r => r.Row);
    }

    private static CureRow RowOf(Batch batch, IEnumerable<CheckRow> checks, DateTimeOffset now, TimeZoneInfo zone)
    {
        var start = batch.ClockStartedAt!.Value;
        var window = WindowOf(batch);
        var all = checks.ToList();
        var last = LastCheck(all);
        var state = StandingOf(batch, window, now, last);
        return new CureRow(
            batch.Id, batch.Code, batch.ScentName, batch.VersionNumber, batch.ProductKind, batch.TargetMilligrams, batch.PlannedUnits,
            start, CureClock.DueAt(start, window), CureClock.IdealAt(start, window), CureClock.LatestAt(start, window),
            state, now, batch.HeldReason, all.LastOrDefault(), ReminderOf(batch, state, now, zone), batch.EarlyReason, batch.SizeName);
    }

    /// <summary>What is on hold is left alone until somebody decides.</summary>
    private static MoveReminder? ReminderOf(Batch batch, CureState state, DateTimeOffset now, TimeZoneInfo zone)
    {
        var moving = ProductKinds.Get(batch.ProductKind).Moving;
        var on = state == CureState.OnHold ? null : moving?.NextOn(
            StudioTime.Today(batch.ClockStartedAt!.Value, zone), StudioTime.Today(now, zone), state == CureState.Ready);
        return on is { } day ? new MoveReminder(moving!.Verb, day, moving.EveryDays) : null;
    }

    internal static CureState StandingOf(Batch batch, CureWindow window, DateTimeOffset now, CureCheckFact? last)
    {
        if (batch.State is BatchState.Ready)
        {
            return CureState.Ready;
        }

        if (batch.HeldReason is not null)
        {
            return CureState.OnHold;
        }

        return CureClock.Of(batch.ClockStartedAt!.Value, window, now, last?.ToCore()) switch
        {
            CureStanding.Resting => CureState.Resting,
            CureStanding.DueForCheck => CureState.DueForCheck,
            _ => CureState.Ready,
        };
    }

    private static int Urgency(CureRow row) => row.State switch
    {
        CureState.DueForCheck => 0,
        CureState.OnHold => 1,
        CureState.Ready => 2,
        _ => 3,
    };
}

public enum CureState { Resting, DueForCheck, OnHold, Ready }

/// <param name="TargetMilligrams">Mass of the batch.</param>
/// <param name="State">As of <paramref name="AsOf"/>.</param>
public sealed record CureRow(
    Guid BatchId, string Code, string ScentName, int VersionNumber, string ProductKind, long TargetMilligrams, int? PlannedUnits,
    DateTimeOffset StartedAt, DateTimeOffset DueAt, DateTimeOffset IdealAt, DateTimeOffset? LatestAt,
    CureState State, DateTimeOffset AsOf, string? HeldReason, CheckRow? LastCheck, MoveReminder? Reminder = null, string? EarlyReason = null,
    string? SizeName = null)
{
    /// <summary>Rest so far; a clock set back shows zero.</summary>
    public TimeSpan Elapsed => AsOf > StartedAt ? AsOf - StartedAt : TimeSpan.Zero;
}

public sealed record CheckRow(
    DateTimeOffset At, string Initials, int Strength, string? Character, Clarity Clarity, string? Note, CheckVerdict Verdict);

/// <summary>The next day on which to swirl or shake it, in the studio's calendar.</summary>
public sealed record MoveReminder(string Verb, DateOnly On, int EveryDays);

public sealed record CureDetail(
    CureRow Row, BatchState State, IReadOnlyList<CheckRow> Checks, string? Place, string? EarlyReason, string? Method, IReadOnlyList<RestNote> Notes);

/// <summary>The facts of a check that readiness is judged by.</summary>
internal sealed record CureCheckFact(DateTimeOffset At, bool Passed, string Initials)
{
    public Core.Curing.CureCheck ToCore() => new(At, Passed, Initials);
}
