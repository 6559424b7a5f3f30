using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Filled units by batch, place and status: one file a use case in this folder.</summary>
public sealed partial class FinishedGoods(StudioStore store)
{
    /// <summary>What is in stock, by product, then batch; of one place or of all.</summary>
    public async Task<IReadOnlyList<GoodsRow>> HereAsync(Guid? placeId = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await RowsAsync(db, db.UnitBalances.Where(b => placeId == null || b.PlaceId == placeId), cancel);
    }

    /// <summary>Every unit of one batch that is still ours, wherever it stands.</summary>
    public async Task<IReadOnlyList<GoodsRow>> OfBatchAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await RowsAsync(db, db.UnitBalances.Where(b => db.Batches.Any(x => x.Id == b.BatchId && x.Code == code)), cancel);
    }

    /// <summary>Who has the units of a batch that were sold, by themselves or in a kit; most units first.</summary>
    public async Task<IReadOnlyList<HolderRow>> HoldersAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.Where(b => b.Code == code).Select(b => b.Id).SingleOrDefaultAsync(cancel);
        var sold = await SoldUnits.OutAsync(db, batch, null, cancel);
        var ids = sold.Keys.ToArray();
        var sales = await db.Sales.Where(s => ids.Contains(s.Id)).Select(s => new
        {
            s.Id, s.Code, s.Channel, s.SoldOn, Customer = s.Customer!.Name, Place = db.Places.Where(p => p.Id == s.PlaceId).Select(p => new { p.Name, p.Kind }).First(),
        }).ToListAsync(cancel);
        return [.. sales.Select(s => new HolderRow(
            s.Customer ?? (s.Place.Kind == PlaceKind.Studio ? s.Channel : $"Buyers at {s.Place.Name}"), s.Code, s.Channel, s.SoldOn, sold[s.Id], s.Customer is not null))
            .OrderByDescending(h => h.Units).ThenByDescending(h => h.SoldOn)];
    }

    /// <summary>The newest acts on units, of one batch or one place or all.</summary>
    /// <param name="take">1 to 200 acts; null is all of them.</param>
    public async Task<IReadOnlyList<UnitEntryRow>> EntriesAsync(Guid? batchId = null, Guid? placeId = null, int? take = 30, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var newest = await db.UnitMovements
            .Where(m => (batchId == null || m.BatchId == batchId) && (placeId == null || m.PlaceId == placeId))
            .GroupBy(m => m.EntryId).Select(g => new { g.Key, Last = g.Max(m => m.Id) })
            .OrderByDescending(g => g.Last).Take(take is { } few ? Math.Clamp(few, 1, 200) : int.MaxValue).ToListAsync(cancel);
        var ids = newest.Select(n => n.Key).ToArray();
        var legs = await (
            from m in db.UnitMovements
            join person in db.Users on m.PersonId equals person.Id
            where ids.Contains(m.EntryId)
            orderby m.Id
            select new
            {
                m.Id, m.EntryId, m.Kind, m.At, person.Initials, m.Batch!.Code, m.Change, m.ReversesId, Place = m.Place!.Name, m.Reason,
                Sale = db.Sales.Where(s => s.Id == m.SaleId).Select(s => s.Code).FirstOrDefault(),
                TakenBack = db.UnitMovements.Any(r => r.ReversesId == m.Id),
            }).ToListAsync(cancel);
        var byEntry = legs.ToLookup(l => l.EntryId);
        return [.. newest.Select(n =>
        {
            var all = byEntry[n.Key].ToList();
            var main = all.Find(l => l.Change > 0) ?? all[0];
            var (came, went) = (all.Where(l => l.Change > 0).Sum(l => l.Change), -all.Where(l => l.Change < 0).Sum(l => l.Change));
            return new UnitEntryRow(
                n.Key, [.. all.Select(l => l.Kind).Distinct()], main.At, main.Initials, string.Join(", ", all.Select(l => l.Code).Distinct().Order(StringComparer.Ordinal)), Math.Max(came, went),
                main.Place, main.Reason, main.Sale, all.Exists(l => l.ReversesId != null), all.Exists(l => l.TakenBack));
        })];
    }

    /// <summary>Acts that are taken back where they were made: fillings and kits.</summary>
    internal static bool BelongsElsewhere(UnitMoveKind kind) => kind is UnitMoveKind.Filled or UnitMoveKind.RejectedAtFilling or UnitMoveKind.RetainedAtFilling
        or UnitMoveKind.IntoKit or UnitMoveKind.OutOfKit or UnitMoveKind.KitMade or UnitMoveKind.KitUndone;

    internal static async Task<List<GoodsRow>> RowsAsync(StudioDb db, IQueryable<UnitBalance> balances, CancellationToken cancel)
    {
        var rows = await (
            from balance in balances
            join batch in db.Batches on balance.BatchId equals batch.Id
            join place in db.Places on balance.PlaceId equals place.Id
            join version in db.FormulaVersions on batch.FormulaVersionId equals version.Id
            join filling in db.Fills on batch.Id equals filling.BatchId into fillings
            from fill in fillings.DefaultIfEmpty()
            where balance.Count > 0
            orderby batch.ScentName, batch.SizeName, batch.FilledAt, batch.Code, place.Kind == PlaceKind.Studio descending, place.Name
            select new
            {
                batch.Id, batch.Code, version.FormulaId, batch.ScentName, batch.ProductKind, batch.SizeName, batch.BestBefore, batch.HeldReason, batch.FilledAt, batch.PlannedAt,
                balance.PlaceId, place.Name, balance.Status, balance.Count,
                Total = fill == null ? (decimal?)null : fill.TotalCost, Saleable = fill == null ? 0 : fill.Filled - fill.Rejected - fill.Retained,
            }).AsNoTracking().ToListAsync(cancel);
        return rows.ConvertAll(r => new GoodsRow(
            r.Id, r.Code, new Product(r.FormulaId, r.ScentName, r.ProductKind, r.SizeName), r.BestBefore, r.HeldReason is not null, r.FilledAt ?? r.PlannedAt,
            r.PlaceId, r.Name, r.Status, r.Count, r is { Total: { } total, Saleable: > 0 } ? total / r.Saleable : null));
    }
}
