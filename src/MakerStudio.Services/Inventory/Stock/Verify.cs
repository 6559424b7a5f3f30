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
        var lots = await db.Lots.LongCountAsync(cancel);
        var movements = await db.Movements.LongCountAsync(cancel);
        return new VerifyReport(
        [
            new("lots", lots, "on hand is the sum of their movements", await BalancesAsync(db, cancel)),
            new("movements", movements, "the on hand noted after each is the sum up to it", await RunningAsync(db, cancel)),
            new("weighings", await db.Weighings.LongCountAsync(cancel), "each is what the ledger took for it", await WeighingsAsync(db, cancel)),
            new("fillings", await db.Fills.LongCountAsync(cancel), "materials are what was weighed, totals are the sum of their parts", await FillsAsync(db, cancel)),
            new("movements of units", await db.UnitMovements.LongCountAsync(cancel), "units of each batch, place and status are their sum", await UnitsAsync(db, cancel)),
            new("lots of kits", await db.KitLots.LongCountAsync(cancel), "units inside and kits sold are what their entries say", await KitsAsync(db, cancel)),
            .. await BooksCheck.OfAsync(db, store.Clock, cancel),
        ]);
    }

    private static async Task<IReadOnlyList<Difference>> BalancesAsync(StudioDb db, CancellationToken cancel)
    {
        var sums = await db.Lots.Select(l => new
        {
            l.Code, l.Material!.StockedIn, Stored = (long?)l.Balance!.OnHand, Sum = db.Movements.Where(m => m.LotId == l.Id).Sum(m => m.Change),
        }).Where(l => l.Stored == null || l.Stored != l.Sum || l.Stored < 0).OrderBy(l => l.Code).ToListAsync(cancel);
        return [.. sums.Select(l => Difference.OfLot(l.Code, l.Stored is { } stored
            ? $"Lot {l.Code}: on hand {AmountWords.Amount(stored, l.StockedIn)}, its movements add up to {AmountWords.Amount(l.Sum, l.StockedIn)}."
            : $"Lot {l.Code}: has no balance, its movements add up to {AmountWords.Amount(l.Sum, l.StockedIn)}."))];
    }

    /// <summary>The on hand noted beside each movement against the running sum up to it.</summary>
    private static async Task<IReadOnlyList<Difference>> RunningAsync(StudioDb db, CancellationToken cancel)
    {
        var wrong = await db.Database.SqlQuery<RunningDifference>($"""
            select r.id as "Id", l.code as "Code", r.on_hand_after as "Noted", r.running as "Running" from
              (select id, lot_id, on_hand_after, sum(change) over (partition by lot_id order by id)::bigint as running from movements) r
            join lots l on l.id = r.lot_id where r.on_hand_after <> r.running order by r.id
            """).ToListAsync(cancel);
        return [.. wrong.Select(w => Difference.OfLot(w.Code, $"Lot {w.Code}, entry {w.Id}: noted {w.Noted} on hand after it, the sum up to it is {w.Running}."))];
    }

    /// <summary>Each weighing from a lot against what the ledger took for it: the quantity, and nothing once it is taken back.</summary>
    private static async Task<IReadOnlyList<Difference>> WeighingsAsync(StudioDb db, CancellationToken cancel)
    {
        var wrong = await (
            from weighing in db.Weighings
            join batch in db.Batches on weighing.BatchId equals batch.Id
            let taken = -db.Movements.Where(m => m.WeighingId == weighing.Id).Sum(m => m.Change)
            let due = weighing.LotId == null || weighing.ReversedAt != null ? 0 : weighing.NetMilligrams
            where taken != due
            orderby weighing.At
            select new { batch.Code, taken, due }).ToListAsync(cancel);
        return [.. wrong.Select(w => Difference.OfBatch(
            w.Code, $"Batch {w.Code}: a weighing of {AmountWords.Amount(w.due, StockUnit.Gram)} stands against {AmountWords.Amount(w.taken, StockUnit.Gram)} in the ledger."))];
    }

    /// <summary>The materials cost stored with a filling against its batch's weighings, and the total against its parts.</summary>
    private static async Task<IReadOnlyList<Difference>> FillsAsync(StudioDb db, CancellationToken cancel)
    {
        var fills = await db.Fills.Select(f => new
        {
            f.Batch!.Code, f.ToFillingMilligrams, f.MaterialsCost, f.PackagingCost, f.LabourCost, f.OverheadCost, f.TotalCost,
            Weighings = db.Weighings.Where(w => w.BatchId == f.BatchId && w.ReversedAt == null).Select(w => new { w.NetMilligrams, w.UnitCost }).ToList(),
            Lost = db.BatchLosses.Where(l => l.BatchId == f.BatchId).Sum(l => l.Milligrams),
        }).ToListAsync(cancel);
        var differences = new List<Difference>();
        foreach (var fill in fills)
        {
            var weighed = fill.Weighings.Sum(w => Mass.FromMilligrams(w.NetMilligrams).Grams * w.UnitCost);
            var materials = weighed * (1m - Fills.LostPart(fill.Weighings.Sum(w => w.NetMilligrams), fill.Lost, fill.ToFillingMilligrams));
            if (Differs(materials, fill.MaterialsCost))
            {
                differences.Add(Difference.OfBatch(fill.Code, $"Batch {fill.Code}: materials stored as {AmountWords.MoneyInFull(fill.MaterialsCost)}, its weighings come to {AmountWords.MoneyInFull(materials)}."));
            }

            // Added here: the database would add with more digits than a decimal can be read back with.
            var parts = fill.MaterialsCost + fill.PackagingCost + fill.LabourCost + fill.OverheadCost;
            if (Differs(parts, fill.TotalCost))
            {
                differences.Add(Difference.OfBatch(fill.Code, $"Batch {fill.Code}: total stored as {AmountWords.MoneyInFull(fill.TotalCost)}, its parts come to {AmountWords.MoneyInFull(parts)}."));
            }
        }

        return differences;
    }

    /// <summary>Units that are kept against the sum of their movements, spot by spot.</summary>
    private static async Task<IReadOnlyList<Difference>> UnitsAsync(StudioDb db, CancellationToken cancel)
    {
        var wrong = await db.Database.SqlQuery<UnitDifference>($"""
            select b.code as "Code", p.name as "Place", coalesce(u.status, m.status) as "Status", coalesce(u.count, 0) as "Kept", coalesce(m.sum, 0)::int as "Sum" from
              (select batch_id, place_id, status, sum(change) as sum from unit_movements group by batch_id, place_id, status) m
            full join unit_balances u on (u.batch_id, u.place_id, u.status) = (m.batch_id, m.place_id, m.status)
            join batches b on b.id = coalesce(u.batch_id, m.batch_id) join places p on p.id = coalesce(u.place_id, m.place_id)
            where coalesce(u.count, 0) <> coalesce(m.sum, 0) order by b.code, p.name, 3
            """).ToListAsync(cancel);
        return [.. wrong.Select(w => Difference.OfBatch(w.Code, $"Batch {w.Code} at {w.Place}, {w.Status}: {w.Kept} kept, its movements add up to {w.Sum}."))];
    }

    /// <summary>Kits that were sold against the lines of sales, and their units against what was built into them.</summary>
    private static async Task<IReadOnlyList<Difference>> KitsAsync(StudioDb db, CancellationToken cancel)
    {
        var kits = await db.KitLots.Select(k => new
        {
            k.Code, k.Made, k.Undone, k.Sold, Lines = db.SaleLines.Where(l => l.KitLotId == k.Id).Sum(l => l.Quantity),
            InEach = k.Contents.Where(c => c.BatchId != null).Sum(c => c.Count), Built = -db.UnitMovements.Where(m => m.KitLotId == k.Id).Sum(m => m.Change),
        }).Where(k => k.Sold != k.Lines || k.Built != (k.Made - k.Undone) * k.InEach).OrderBy(k => k.Code).ToListAsync(cancel);
        return [.. kits.Select(k => new Difference(
            k.Sold != k.Lines
                ? $"Kits {k.Code}: {k.Sold} noted as sold, the lines of sales come to {k.Lines}."
                : $"Kits {k.Code}: {k.Made - k.Undone} of {k.InEach} units each, the ledger built {k.Built} in.",
            $"Finished → Kits, {k.Code} (/finished/kits)"))];
    }

    /// <summary>Sums of decimals taken in another order may differ in their last digit; a hundred-thousandth is far below a coin.</summary>
    private static bool Differs(decimal left, decimal right) => Math.Abs(left - right) > 0.00001m;

    private sealed record UnitDifference(string Code, string Place, string Status, int Kept, int Sum);

    private sealed record RunningDifference(long Id, string Code, long Noted, long Running);
}

/// <param name="What">The two figures that differ, and of what.</param>
/// <param name="Where">The page to look at.</param>
public sealed record Difference(string What, string Where)
{
    internal static Difference OfLot(string code, string what) => new(what, $"Storeroom → lot {code} (/storeroom/lots/{code})");

    internal static Difference OfBatch(string code, string what) => new(what, $"the record of batch {code} (/finished/{code})");
}

/// <summary>One comparison over all there is of its kind.</summary>
/// <param name="Of">What was looked at, in the plural.</param>
/// <param name="Says">What should be so.</param>
public sealed record VerifyCheck(string Of, long Count, string Says, IReadOnlyList<Difference> Differences);

public sealed record VerifyReport(IReadOnlyList<VerifyCheck> Checks)
{
    /// <summary>In sentences, in the order in which they were found.</summary>
    public IReadOnlyList<string> Differences => [.. All.Select(d => d.What)];

    public bool Agrees => All.Count == 0;

    public IReadOnlyList<Difference> All => [.. Checks.SelectMany(c => c.Differences)];
}

/// <summary>The check as a command of the host: what to print, and the exit code.</summary>
public static class VerifyCommand
{
    /// <summary>More than these are counted and not listed.</summary>
    private const int MostListed = 50;

    /// <summary>0 when everything agrees, 1 when something differs.</summary>
    public static async Task<(int ExitCode, string Text)> RunAsync(Verify verify, CancellationToken cancel = default)
    {
        var report = await verify.RunAsync(cancel);
        return (report.Agrees ? 0 : 1, string.Join(Environment.NewLine, Lines(report)));
    }

    private static IEnumerable<string> Lines(VerifyReport report)
    {
        yield return "What was compared:";
        foreach (var check in report.Checks)
        {
            yield return $"  {(check.Differences.Count == 0 ? "agrees " : "DIFFERS")}  {check.Of} ({check.Count:#,0}): {check.Says}{(check.Differences.Count == 0 ? "" : $"; not so: {check.Differences.Count:#,0}")}";
        }

        if (report.Agrees)
        {
            yield return "Every balance and every cost agrees with its movements.";
            yield break;
        }

        yield return $"{report.All.Count:#,0} {(report.All.Count == 1 ? "differs" : "differ")}. The first:";
        yield return $"  {report.All[0].What}";
        yield return $"  Look at {report.All[0].Where}.";
        foreach (var difference in report.All.Skip(1).Take(MostListed))
        {
            yield return $"  {difference.What} See {difference.Where}.";
        }

        if (report.All.Count > MostListed + 1)
        {
            yield return $"  … and {report.All.Count - MostListed - 1:#,0} more.";
        }

        yield return "Nothing was changed. The movements are what was posted; a balance or a cost beside them is worked out from them.";
    }
}
