using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Recomputes what is stored twice and lists where the two differ. An empty list is what it should be.</summary>
public sealed class Verify(StudioStore store)
{
    public async Task<VerifyReport> RunAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        await using var still = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        var lots = await db.Lots.CountAsync(cancel);
        var movements = await db.Movements.LongCountAsync(cancel);
        var batches = await db.Batches.CountAsync(cancel);
        List<string> differences =
        [
            .. await BalancesAsync(db, cancel),
            .. await RunningAsync(db, cancel),
            .. await WeighingsAsync(db, cancel),
            .. await FillsAsync(db, cancel),
            .. await UnitsAsync(db, cancel),
            .. await KitsAsync(db, cancel),
            .. await BooksCheck.OfAsync(db, store.Clock, cancel),
        ];
        return new VerifyReport(lots, movements, batches, differences);
    }

    private static async Task<IEnumerable<string>> BalancesAsync(StudioDb db, CancellationToken cancel)
    {
        var sums = await db.Lots.Select(l => new
        {
            l.Code, l.Material!.StockedIn, Stored = (long?)l.Balance!.OnHand, Sum = db.Movements.Where(m => m.LotId == l.Id).Sum(m => m.Change),
        }).Where(l => l.Stored == null || l.Stored != l.Sum || l.Stored < 0).OrderBy(l => l.Code).ToListAsync(cancel);
        return sums.Select(l => l.Stored is { } stored
            ? $"Lot {l.Code}: on hand {AmountWords.Amount(stored, l.StockedIn)}, its movements add up to {AmountWords.Amount(l.Sum, l.StockedIn)}."
            : $"Lot {l.Code}: has no balance, its movements add up to {AmountWords.Amount(l.Sum, l.StockedIn)}.");
    }

    /// <summary>The on hand noted beside each movement against the running sum up to it.</summary>
    private static async Task<IEnumerable<string>> RunningAsync(StudioDb db, CancellationToken cancel)
    {
        var wrong = await db.Database.SqlQuery<RunningDifference>($"""
            select r.id as "Id", l.code as "Code", r.on_hand_after as "Noted", r.running as "Running" from
              (select id, lot_id, on_hand_after, sum(change) over (partition by lot_id order by id)::bigint as running from movements) r
            join lots l on l.id = r.lot_id where r.on_hand_after <> r.running order by r.id
            """).ToListAsync(cancel);
        return wrong.Select(w => $"Lot {w.Code}, entry {w.Id}: noted {w.Noted} on hand after it, the sum up to it is {w.Running}.");
    }

    /// <summary>Each weighing from a lot against what the ledger took for it: the quantity, and nothing once it is taken back.</summary>
    private static async Task<IEnumerable<string>> WeighingsAsync(StudioDb db, CancellationToken cancel)
    {
        var wrong = await (
            from weighing in db.Weighings
            join batch in db.Batches on weighing.BatchId equals batch.Id
            let taken = -db.Movements.Where(m => m.WeighingId == weighing.Id).Sum(m => m.Change)
            let due = weighing.LotId == null || weighing.ReversedAt != null ? 0 : weighing.NetMilligrams
            where taken != due
            orderby weighing.At
            select new { batch.Code, taken, due }).ToListAsync(cancel);
        return wrong.Select(w =>
            $"Batch {w.Code}: a weighing of {AmountWords.Amount(w.due, StockUnit.Gram)} stands against {AmountWords.Amount(w.taken, StockUnit.Gram)} in the ledger.");
    }

    /// <summary>The materials cost stored with a filling against its batch's weighings, and the total against its parts.</summary>
    private static async Task<IEnumerable<string>> FillsAsync(StudioDb db, CancellationToken cancel)
    {
        var fills = await db.Fills.Select(f => new
        {
            f.Batch!.Code, f.ToFillingMilligrams, f.MaterialsCost, f.PackagingCost, f.LabourCost, f.OverheadCost, f.TotalCost,
            Weighings = db.Weighings.Where(w => w.BatchId == f.BatchId && w.ReversedAt == null).Select(w => new { w.NetMilligrams, w.UnitCost }).ToList(),
            Lost = db.BatchLosses.Where(l => l.BatchId == f.BatchId).Sum(l => l.Milligrams),
        }).ToListAsync(cancel);
        var differences = new List<string>();
        foreach (var fill in fills)
        {
            var weighed = fill.Weighings.Sum(w => Mass.FromMilligrams(w.NetMilligrams).Grams * w.UnitCost);
            var materials = weighed * (1m - Fills.LostPart(fill.Weighings.Sum(w => w.NetMilligrams), fill.Lost, fill.ToFillingMilligrams));
            if (Differs(materials, fill.MaterialsCost))
            {
                differences.Add($"Batch {fill.Code}: materials stored as {AmountWords.MoneyInFull(fill.MaterialsCost)}, its weighings come to {AmountWords.MoneyInFull(materials)}.");
            }

            // Added here: the database would add with more digits than a decimal can be read back with.
            var parts = fill.MaterialsCost + fill.PackagingCost + fill.LabourCost + fill.OverheadCost;
            if (Differs(parts, fill.TotalCost))
            {
                differences.Add($"Batch {fill.Code}: total stored as {AmountWords.MoneyInFull(fill.TotalCost)}, its parts come to {AmountWords.MoneyInFull(parts)}.");
            }
        }

        return differences;
    }

    /// <summary>Units that are kept against the sum of their movements, spot by spot.</summary>
    private static async Task<IEnumerable<string>> UnitsAsync(StudioDb db, CancellationToken cancel)
    {
        var wrong = await db.Database.SqlQuery<UnitDifference>($"""
            select b.code as "Code", p.name as "Place", coalesce(u.status, m.status) as "Status", coalesce(u.count, 0) as "Kept", coalesce(m.sum, 0)::int as "Sum" from
              (select batch_id, place_id, status, sum(change) as sum from unit_movements group by batch_id, place_id, status) m
            full join unit_balances u on (u.batch_id, u.place_id, u.status) = (m.batch_id, m.place_id, m.status)
            join batches b on b.id = coalesce(u.batch_id, m.batch_id) join places p on p.id = coalesce(u.place_id, m.place_id)
            where coalesce(u.count, 0) <> coalesce(m.sum, 0) order by b.code, p.name, 3
            """).ToListAsync(cancel);
        return wrong.Select(w => $"Batch {w.Code} at {w.Place}, {w.Status}: {w.Kept} kept, its movements add up to {w.Sum}.");
    }

    /// <summary>Kits that were sold against the lines of sales, and their units against what was built into them.</summary>
    private static async Task<IEnumerable<string>> KitsAsync(StudioDb db, CancellationToken cancel)
    {
        var kits = await db.KitLots.Select(k => new
        {
            k.Code, k.Made, k.Undone, k.Sold, Lines = db.SaleLines.Where(l => l.KitLotId == k.Id).Sum(l => l.Quantity),
            InEach = k.Contents.Where(c => c.BatchId != null).Sum(c => c.Count), Built = -db.UnitMovements.Where(m => m.KitLotId == k.Id).Sum(m => m.Change),
        }).Where(k => k.Sold != k.Lines || k.Built != (k.Made - k.Undone) * k.InEach).OrderBy(k => k.Code).ToListAsync(cancel);
        return kits.Select(k => k.Sold != k.Lines
            ? $"Kits {k.Code}: {k.Sold} noted as sold, the lines of sales come to {k.Lines}."
            : $"Kits {k.Code}: {k.Made - k.Undone} of {k.InEach} units each, the ledger built {k.Built} in.");
    }

    /// <summary>Sums of decimals taken in another order may differ in their last digit; a hundred-thousandth is far below a coin.</summary>
    private static bool Differs(decimal left, decimal right) => Math.Abs(left - right) > 0.00001m;

    private sealed record UnitDifference(string Code, string Place, string Status, int Kept, int Sum);

    private sealed record RunningDifference(long Id, string Code, long Noted, long Running);
}

public sealed record VerifyReport(int Lots, long Movements, int Batches, IReadOnlyList<string> Differences)
{
    public bool Agrees => Differences.Count == 0;
}

/// <summary>The check as a command of the host: what to print, and the exit code.</summary>
public static class VerifyCommand
{
    /// <summary>0 when everything agrees, 1 when something differs.</summary>
    public static async Task<(int ExitCode, string Text)> RunAsync(Verify verify, CancellationToken cancel = default)
    {
        var report = await verify.RunAsync(cancel);
        var looked = $"Looked at {report.Lots} lots, {report.Movements} movements and {report.Batches} batches.";
        return report.Agrees
            ? (0, $"{looked} Every balance and every cost agrees with its movements.")
            : (1, $"{looked} {report.Differences.Count} differ:{Environment.NewLine}{string.Join(Environment.NewLine, report.Differences)}");
    }
}
