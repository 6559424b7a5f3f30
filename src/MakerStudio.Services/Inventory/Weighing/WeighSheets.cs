using MakerStudio.Core.Bench;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>The weigh sheet: what it shows and every act on it, one file a use case.</summary>
public sealed partial class WeighSheets(StudioStore store)
{
    /// <summary>
    /// The sheet of a batch, or null when there is none. Names, targets and tolerance are the batch's own: a material
    /// renamed, archived or given another density meanwhile changes nothing here.
    /// </summary>
    public async Task<WeighSheet?> SheetAsync(string batchCode, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.Include(b => b.Lines).Include(b => b.Scale).SingleOrDefaultAsync(b => b.Code == batchCode, cancel);
        if (batch is null)
        {
            return null;
        }

        var materials = batch.Lines.Select(l => l.MaterialId).Distinct().ToArray();
        var kinds = await db.Materials.Where(m => materials.Contains(m.Id)).ToDictionaryAsync(m => m.Id, m => m.Kind, cancel);
        var weighings = await WeighingsOfAsync(db, batch.Id, cancel);
        var deviations = await db.Deviations.Where(d => d.BatchId == batch.Id).OrderBy(d => d.At).ThenBy(d => d.Id)
            .Select(d => new SheetDeviation(
                d.BatchLineId, d.Choice, d.What, d.Factor, d.Reason, db.Users.Where(p => p.Id == d.PersonId).Select(p => p.DisplayName).First(), d.At))
            .ToListAsync(cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var lots = await Shelf.LotsOfAsync(db, materials, cancel);
        var before = (await Outstanding.OfAsync(db, materials, cancel))
            .Where(r => r.BatchId != batch.Id && (r.PlannedAt, r.BatchId).CompareTo((batch.PlannedAt, batch.Id)) < 0).ToList();
        var lines = batch.Lines.OrderBy(l => l.Position)
            .Select(l => LineOf(batch, l, kinds[l.MaterialId], weighings[l.Id], lots.FindAll(s => s.MaterialId == l.MaterialId), before.FindAll(r => r.MaterialId == l.MaterialId), today))
            .ToList();
        var weigher = await db.Users.Where(p => p.Id == batch.WeighingById).Select(p => p.DisplayName).SingleOrDefaultAsync(cancel);
        var kind = ProductKinds.Get(batch.ProductKind);
        return new(
            batch.Id, batch.Code, batch.State, batch.ScentName, batch.VersionNumber, kind.Name, kind.ClockStartsAt, batch.TargetMilligrams,
            lines.Sum(l => l.RecordedMilligrams), batch.PlannedUnits, batch.SizeName, batch.Scale?.Name, batch.ReadabilityMilligrams,
            batch.TolerancePercent, batch.ToleranceDivisions, batch.Place, batch.RoomCelsius, batch.CureMinHours, batch.CureIdealHours,
            batch.WeighingById, weigher, batch.WeighingSince, lines.SelectMany(l => l.Weighings).Max(w => (DateTimeOffset?)w.At), batch.ClockStartedAt,
            lines.Find(l => !l.IsDone)?.LineId, lines, deviations);
    }

    private static async Task<ILookup<Guid, SheetWeighing>> WeighingsOfAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        var rows = await (
            from w in db.Weighings
            join p in db.Users on w.PersonId equals p.Id
            where w.BatchId == batchId
            orderby w.At, w.Id
            select new { w.BatchLineId, Row = new SheetWeighing(
                w.Id, w.Lot!.Code, w.NetMilligrams, w.TareMilligrams, w.At, p.DisplayName, p.Initials, w.ReversedAt, w.ReversedReason) })
            .ToListAsync(cancel);
        return rows.ToLookup(r => r.BatchLineId, r => r.Row);
    }

    private static SheetLine LineOf(
        Batch batch, BatchLine line, MaterialKind kind, IEnumerable<SheetWeighing> weighings, List<ShelfLot> shelf, List<OutstandingRow> before, DateOnly today)
    {
        var stand = weighings.ToList();
        var recorded = stand.Where(w => w.ReversedAt is null).Sum(w => w.NetMilligrams);
        var rest = new StockAmount(line.DoneAt is null ? Math.Max(0, line.TargetMilligrams - recorded) : 0, StockUnit.Gram);
        var picks = LotChoice.For(rest, shelf.Select(s => s.Lot), today);
        var byId = shelf.ToDictionary(s => s.Lot.LotId, s => LotOf(s, today));
        var inOrder = LotChoice.InPickOrder(shelf.Select(s => s.Lot)).Select(l => byId[l.LotId]).OrderBy(l => l.WhyNot is not null).ToList();
        var usable = shelf.Where(s => byId[s.Lot.LotId].WhyNot is null).Sum(s => s.Lot.OnHand.Units);
        var reserved = before.Sum(r => r.Units);
        return new(
            line.Id, line.Position, line.MaterialId, line.MaterialName, kind, line.Method, line.PlannedMilligrams, line.TargetMilligrams,
            Tolerance(batch, line.TargetMilligrams), recorded, line.DoneAt, picks.Picks.Count == 0 ? null : byId[picks.Picks[0].LotId], inOrder,
            rest.IsZero ? 0 : Math.Max(0, rest.Units - Math.Max(0, usable - reserved)), reserved, [.. before.Select(r => r.BatchCode).Distinct()], stand);
    }

    private static SheetLot LotOf(ShelfLot s, DateOnly today) => new(
        s.Lot.LotId, s.Lot.Code, s.Lot.Status, s.Lot.OnHand.Units, s.Expiry?.On, s.Expiry?.Reason, s.Lot.IsOpen, s.Shelf, s.TareMilligrams,
        LotChoice.WhyNot(s.Lot, today) is { } why ? LotWords.WhyNotInList(why) : null);

    private static long Tolerance(Batch batch, long target) => WeighTolerance.Of(
        Mass.FromMilligrams(target), Mass.FromMilligrams(batch.ReadabilityMilligrams), batch.TolerancePercent, batch.ToleranceDivisions).Milligrams;
}
