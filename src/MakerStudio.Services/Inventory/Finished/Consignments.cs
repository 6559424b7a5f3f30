using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What a place has, was brought and told.</summary>
/// <param name="Held">Everything there, whatever its status.</param>
public sealed record PlaceView(
    PlaceRow Place, DateOnly Today, IReadOnlyList<HeldRow> Held, IReadOnlyList<PlacementRow> Placements, IReadOnlyList<ShopReportRow> Reports);

/// <summary>Units of a batch at a place, with the terms they were last brought under.</summary>
/// <param name="Placed">Ever brought there and not taken back as an entry.</param>
public sealed record HeldRow(GoodsRow Goods, int Placed, int Sold, int Broken, int SentBack, decimal? NetPrice, decimal CommissionPercent);

public sealed record PlacementRow(Guid EntryId, DateOnly PlacedOn, string Initials, string? Note, IReadOnlyList<PlacedRow> Lines, bool IsTakenBack);

public sealed record PlacedRow(string Code, string ScentName, int Count, decimal NetPrice, decimal CommissionPercent);

/// <param name="ForSold">Not rounded.</param>
public sealed record ShopReportRow(
    Guid EntryId, DateOnly ReportedOn, string Initials, string? Note, string? SaleCode, int Sold, int Broken, int SentBack, int Left, decimal ForSold, decimal ForBroken, bool IsTakenBack);

public sealed partial class Consignments
{
    /// <summary>Null when there is no such place.</summary>
    public async Task<PlaceView?> FindAsync(Guid placeId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        if (await new Places(store).FindAsync(placeId, cancel) is not { } place)
        {
            return null;
        }

        var placements = await PlacementsAsync(db, placeId, cancel);
        var reports = await ReportsAsync(db, placeId, cancel);
        return new PlaceView(
            place, await StudioDay.TodayAsync(db, store.Clock, cancel), await HeldAsync(db, place, cancel), placements, [.. reports]);
    }

    private static async Task<IReadOnlyList<HeldRow>> HeldAsync(StudioDb db, PlaceRow place, CancellationToken cancel)
    {
        var goods = await FinishedGoods.RowsAsync(db, db.UnitBalances.Where(b => b.PlaceId == place.Id && b.Status == UnitStatus.Saleable), cancel);
        var ids = goods.ConvertAll(g => g.BatchId);
        var moved = await db.UnitMovements.Where(m => m.PlaceId == place.Id && ids.Contains(m.BatchId)).GroupBy(m => new { m.BatchId, m.Kind })
            .Select(g => new { g.Key.BatchId, g.Key.Kind, Units = g.Sum(m => m.Change) }).ToListAsync(cancel);
        var terms = await (
            from line in db.PlacementLines
            join placement in db.Placements on line.PlacementId equals placement.Id
            where placement.PlaceId == place.Id && ids.Contains(line.BatchId)
                && !db.UnitMovements.Any(m => m.EntryId == placement.EntryId && db.UnitMovements.Any(r => r.ReversesId == m.Id))
            orderby placement.At descending
            select new { line.BatchId, line.NetPrice, line.CommissionPercent }).ToListAsync(cancel);
        return [.. goods.Select(g =>
        {
            int Of(params UnitMoveKind[] kinds) => Math.Abs(moved.Where(m => m.BatchId == g.BatchId && kinds.Contains(m.Kind)).Sum(m => m.Units));
            var agreed = terms.Find(t => t.BatchId == g.BatchId);
            return new HeldRow(
                g, Of(UnitMoveKind.Place), Of(UnitMoveKind.ReportSold), Of(UnitMoveKind.ReportBroken, UnitMoveKind.ReportPaidFor), Of(UnitMoveKind.TakeBack),
                agreed?.NetPrice, agreed?.CommissionPercent ?? place.CommissionPercent ?? 0m);
        })];
    }

    private static async Task<List<PlacementRow>> PlacementsAsync(StudioDb db, Guid placeId, CancellationToken cancel)
    {
        var rows = await (
            from placement in db.Placements
            join person in db.Users on placement.PersonId equals person.Id
            where placement.PlaceId == placeId
            orderby placement.At descending
            select new
            {
                placement.EntryId, placement.PlacedOn, person.Initials, placement.Note,
                TakenBack = db.UnitMovements.Any(m => m.EntryId == placement.EntryId && db.UnitMovements.Any(r => r.ReversesId == m.Id)),
                Lines = (from line in db.PlacementLines
                         join batch in db.Batches on line.BatchId equals batch.Id
                         where line.PlacementId == placement.Id
                         orderby batch.Code
                         select new PlacedRow(batch.Code, batch.ScentName, line.Count, line.NetPrice, line.CommissionPercent)).ToList(),
            }).Take(100).ToListAsync(cancel);
        return rows.ConvertAll(r => new PlacementRow(r.EntryId, r.PlacedOn, r.Initials, r.Note, r.Lines, r.TakenBack));
    }

    private static async Task<List<ShopReportRow>> ReportsAsync(StudioDb db, Guid placeId, CancellationToken cancel)
    {
        var rows = await (
            from report in db.ConsignmentReports.Include(r => r.Lines)
            join person in db.Users on report.PersonId equals person.Id
            where report.PlaceId == placeId
            orderby report.At descending
            select new
            {
                Report = report, person.Initials, Sale = db.Sales.Where(s => s.Id == report.SaleId).Select(s => s.Code).FirstOrDefault(), Lines = report.Lines.ToList(),
                TakenBack = db.UnitMovements.Any(m => m.EntryId == report.EntryId && db.UnitMovements.Any(r => r.ReversesId == m.Id)),
            }).Take(100).ToListAsync(cancel);
        return rows.ConvertAll(r =>
        {
            var settled = r.Lines.ConvertAll(SettlementOf);
            return new ShopReportRow(
                r.Report.EntryId, r.Report.ReportedOn, r.Initials, r.Report.Note, r.Sale, r.Lines.Sum(l => l.Sold), r.Lines.Sum(l => l.Broken), r.Lines.Sum(l => l.SentBack),
                r.Lines.Sum(l => l.Left), settled.Sum(s => s.Revenue), settled.Sum(s => s.ForBroken), r.TakenBack);
        });
    }
}
