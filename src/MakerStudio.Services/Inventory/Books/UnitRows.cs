using MakerStudio.Core.Books;
using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Finished units and kits as the books see them: only what carries money, and only what comes or goes. A lot of kits
/// keeps its counts in its own row, so its making, its sales and its taking apart are written here from what goes with them.
/// </summary>
internal static class UnitRows
{
    /// <summary>Between the ids of two legs there is room for what is written from them.</summary>
    private const long Room = 1_000_000;

    public static async Task<IReadOnlyList<BookUnits>> OfAsync(StudioDb db, CancellationToken cancel)
    {
        var legs = await db.UnitMovements.Where(m => m.Status == UnitStatus.Saleable || m.Status == UnitStatus.OnHold).OrderBy(m => m.Id)
            .Select(m => new Leg(m.Id, m.At, m.EntryId, m.BatchId, m.Kind, m.Change, m.KitLotId)).ToListAsync(cancel);
        var kits = await db.KitLots.Include(k => k.Contents).ToDictionaryAsync(k => k.Id, cancel);
        var sales = await (
            from line in db.SaleLines
            join sale in db.Sales on line.SaleId equals sale.Id
            where line.KitLotId != null
            orderby sale.At, sale.OfSaleId != null, sale.Code, line.Position
            select new { KitLotId = line.KitLotId!.Value, sale.At, line.Quantity }).ToListAsync(cancel);
        var made = legs.Where(l => l is { Kind: UnitMoveKind.IntoKit, Change: < 0, KitLotId: not null }).GroupBy(l => l.KitLotId!.Value)
            .ToDictionary(g => g.Key, g => new BookUnits(g.Max(l => l.Id) * Room + 1, g.First().At, g.Key, kits[g.Key].Made, BookEffect.Kit, g.Key));
        return
        [
            .. legs.Select(l => (Leg: l, UnitRules.For(l.Kind).Effect)).Where(l => l.Effect != BookEffect.None)
                .Select(l => new BookUnits(l.Leg.Id * Room, l.Leg.At, l.Leg.BatchId, l.Leg.Change, l.Effect, l.Effect == BookEffect.Kit ? l.Leg.KitLotId : null, l.Leg.Kind)),
            .. made.Values,
            .. legs.Where(l => l is { Kind: UnitMoveKind.OutOfKit, Change: > 0, KitLotId: not null }).GroupBy(l => l.EntryId).Select(g => g.First())
                .Select(l => new BookUnits(l.Id * Room - 1, l.At, l.KitLotId!.Value, -l.Change / InOne(kits[l.KitLotId!.Value], l.BatchId), BookEffect.Kit, l.KitLotId)),
            .. sales.Select((s, i) => new BookUnits(made[s.KitLotId].Id + 1 + i, s.At, s.KitLotId, -s.Quantity, BookEffect.CostOfSales)),
        ];
    }

    /// <summary>An assembly takes packaging as a batch does, and is at once what it will be.</summary>
    public static async Task<IEnumerable<BookBatch>> KitLotsAsync(StudioDb db, CancellationToken cancel) =>
        (await db.KitLots.Select(k => new { k.Id, k.At }).ToListAsync(cancel)).Select(k => new BookBatch(k.Id, [], [], [], k.At));

    private static int InOne(KitLot kit, Guid batch) => Math.Max(1, kit.Contents.Where(c => c.BatchId == batch).Sum(c => c.Count));

    private sealed record Leg(long Id, DateTimeOffset At, Guid EntryId, Guid BatchId, UnitMoveKind Kind, int Change, Guid? KitLotId);
}
