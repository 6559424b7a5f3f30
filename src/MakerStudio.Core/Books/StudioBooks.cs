using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Books;

/// <summary>What there is of a material, a batch in work, or the units of a batch.</summary>
/// <param name="Quantity">1 for a batch in work.</param>
/// <param name="Value">Not rounded.</param>
public sealed record BookRow(Guid Id, decimal Quantity, decimal Value);

/// <summary>What there is of one lot of a material. Where the method does not keep lots apart: its part by quantity.</summary>
public sealed record BookLot(Guid MaterialId, string Lot, decimal Quantity, decimal Value);

/// <summary>What was expensed, by why; together all of <see cref="ValueParts.Expensed"/> that is no write-down.</summary>
/// <param name="Movements">By movement: material that went out to no batch.</param>
/// <param name="Batches">Lost abnormally, or left of a batch that was given up.</param>
/// <param name="Units">Given away, broken, opened.</param>
/// <param name="KitBoxes">Of kits that were taken apart.</param>
public sealed record BookExpenses(
    IReadOnlyDictionary<long, decimal> Movements, decimal Batches, IReadOnlyDictionary<UnitMoveKind, decimal> Units, decimal KitBoxes)
{
    public decimal Total => Movements.Values.Sum() + Batches + Units.Values.Sum() + KitBoxes;
}

/// <summary>The whole studio valued at one moment under one method.</summary>
/// <param name="Materials">By material; what has come to nothing is left out, here and below.</param>
/// <param name="WorkInProgress">By batch: weighed, resting, and not filled.</param>
/// <param name="Finished">By batch or assembly of kits.</param>
/// <param name="Lots">The materials once more, lot by lot.</param>
/// <param name="Sold">By batch or assembly of kits, less what came back, at its cost.</param>
/// <param name="BatchCosts">All each batch cost under the method, whether it is filled or not.</param>
/// <param name="Issues">The money of each movement out, by its id.</param>
/// <param name="NotCovered">Materials out before anything came in for them; they have no value yet.</param>
public sealed record StudioBooks(
    ConservationCheck Check,
    IReadOnlyList<BookRow> Materials,
    IReadOnlyList<BookRow> WorkInProgress,
    IReadOnlyList<BookRow> Finished,
    IReadOnlyList<BookLot> Lots,
    IReadOnlyList<BookRow> Sold,
    BookExpenses Expenses,
    IReadOnlyDictionary<Guid, decimal> BatchCosts,
    IReadOnlyDictionary<long, decimal> Issues,
    IReadOnlyList<Guid> NotCovered)
{
    /// <summary>
    /// More rounds than pre-blends go into each other. Rework of a material into itself comes closer by its share each
    /// round; what is then left open stays in work in progress, so that nothing is lost.
    /// </summary>
    private const int MostRounds = 60;

    /// <remarks>
    /// A pre-blend costs what its batch cost, and that depends on the value of what went in. So materials are valued
    /// again with the costs of the round before until no cost changes: once for each pre-blend on the longest way.
    /// </remarks>
    /// <param name="asOf">Entries of this very moment count, later ones do not.</param>
    /// <exception cref="ArgumentException">As <see cref="Valuation.Of"/>, or more units go than there were.</exception>
    public static StudioBooks Of(
        ValuationMethod method,
        IEnumerable<BookMovement> movements,
        IReadOnlyList<BookBatch> batches,
        IEnumerable<BookUnits> units,
        DateTimeOffset asOf,
        FinancialYears years,
        int moneyDecimals = 2)
    {
        ArgumentNullException.ThrowIfNull(movements);
        ArgumentNullException.ThrowIfNull(batches);
        var standing = Standing(movements.Where(m => m.At <= asOf)).ToList();
        Require(standing, batches);
        var byMaterial = standing.ToLookup(m => m.MaterialId);
        var madeQuantity = standing.Where(IsMade).GroupBy(m => m.BatchId!.Value).ToDictionary(g => g.Key, g => g.Sum(m => m.Quantity));
        var made = new Dictionary<long, decimal>();
        Dictionary<Guid, StockValue> values;
        Dictionary<Guid, decimal> costs;
        Dictionary<Guid, decimal> losses;
        var round = 0;
        while (true)
        {
            values = byMaterial.ToDictionary(m => m.Key, m => Valuation.Of(method, m.Select(x => Valued(x, made)), asOf, years));
            costs = CostsOf(batches, standing, values, asOf);
            losses = LossesOf(batches, standing, values, asOf);
            var next = MadeOf(standing, costs, losses, madeQuantity);
            if (++round > MostRounds || next.All(m => made.GetValueOrDefault(m.Key) == m.Value))
            {
                break;
            }

            made = next;
        }

        return Sum(standing, batches, values, costs, losses, made, ReplayUnits(costs, losses, units, asOf), asOf, moneyDecimals);
    }

    private static void Require(List<BookMovement> standing, IReadOnlyList<BookBatch> batches)
    {
        var known = batches.Select(b => b.Id).ToHashSet();
        if (standing.Find(m => m.BatchId is { } id ? !known.Contains(id) : m is { Quantity: > 0, Value: null }) is { } odd)
        {
            throw new ArgumentException($"Movement {odd.Id} came in without a value, or names a batch that is not given.", nameof(standing));
        }
    }

    private static bool IsMade(BookMovement m) => m is { Quantity: > 0, Value: null, BatchId: not null };

    private static ValuedMovement Valued(BookMovement m, Dictionary<long, decimal> made) =>
        new(m.Id, m.At, m.Lot, m.Quantity, m.Quantity < 0 ? 0m : m.Value ?? made.GetValueOrDefault(m.Id));

    private static IEnumerable<BookMovement> Standing(IEnumerable<BookMovement> movements) => movements.GroupBy(m => m.MaterialId).SelectMany(material =>
    {
        var ids = Valuation.Standing([.. material.Select(m => new ValuedMovement(m.Id, m.At, m.Lot, m.Quantity, m.Value ?? 0m, m.Reverses))]).Select(m => m.Id).ToHashSet();
        return material.Where(m => ids.Contains(m.Id));
    });

    private static Dictionary<Guid, decimal> CostsOf(
        IReadOnlyList<BookBatch> batches, List<BookMovement> standing, Dictionary<Guid, StockValue> values, DateTimeOffset asOf)
    {
        var costs = batches.ToDictionary(b => b.Id, b => Charges(b, asOf) + Estimates(b, asOf));
        foreach (var m in standing.Where(m => m.BatchId is not null && !IsMade(m)))
        {
            costs[m.BatchId!.Value] += WentIn(m, values);
        }

        return costs;
    }

    /// <summary>What a movement brought into its batch; below 0 where it came back out.</summary>
    private static decimal WentIn(BookMovement movement, Dictionary<Guid, StockValue> values) =>
        movement.Quantity < 0 ? values[movement.MaterialId].Issues[movement.Id] : -movement.Value!.Value;

    /// <summary>What each batch cost less abnormal losses, shared over what it made.</summary>
    private static Dictionary<long, decimal> MadeOf(
        List<BookMovement> standing, Dictionary<Guid, decimal> costs, Dictionary<Guid, decimal> losses, Dictionary<Guid, decimal> quantity) =>
        standing.Where(IsMade).ToDictionary(
            m => m.Id,
            m => decimal.Round(Math.Max(0m, costs[m.BatchId!.Value] - losses[m.BatchId!.Value]) * (m.Quantity / quantity[m.BatchId!.Value]), ValuePool.ShareDecimals));

    private static decimal Charges(BookBatch batch, DateTimeOffset asOf) => batch.Charges.Where(c => c.At <= asOf).Sum(c => c.Amount);

    private static decimal Estimates(BookBatch batch, DateTimeOffset asOf) =>
        batch.Estimates.Where(e => e.At <= asOf && !(e.MatchedAt <= asOf)).Sum(e => e.Amount);

    private static Dictionary<Guid, decimal> LossesOf(
        IReadOnlyList<BookBatch> batches, List<BookMovement> standing, Dictionary<Guid, StockValue> values, DateTimeOffset asOf)
    {
        var weighed = standing.Where(m => m is { BatchId: not null, IsPackaging: false } && !IsMade(m))
            .GroupBy(m => m.BatchId!.Value).ToDictionary(g => g.Key, g => g.Sum(m => WentIn(m, values)));
        return batches.ToDictionary(b => b.Id, b => decimal.Round(
            (weighed.GetValueOrDefault(b.Id) + Estimates(b, asOf)) * Math.Min(1m, b.Losses.Where(l => l.At <= asOf).Sum(l => l.Fraction)), ValuePool.ShareDecimals));
    }

    private static UnitBooks ReplayUnits(Dictionary<Guid, decimal> costs, Dictionary<Guid, decimal> losses, IEnumerable<BookUnits> units, DateTimeOffset asOf)
    {
        var books = new UnitBooks(costs.ToDictionary(c => c.Key, c => c.Value - losses[c.Key]));
        foreach (var move in units.Where(u => u.At <= asOf).OrderBy(u => u.At).ThenBy(u => u.Id))
        {
            books.Post(move);
        }

        return books;
    }

    private static StudioBooks Sum(
        List<BookMovement> standing, IReadOnlyList<BookBatch> batches, Dictionary<Guid, StockValue> values, Dictionary<Guid, decimal> costs,
        Dictionary<Guid, decimal> losses, Dictionary<long, decimal> made, UnitBooks units, DateTimeOffset asOf, int moneyDecimals)
    {
        var (inWork, lostOfBatches) = (new List<BookRow>(), 0m);
        var madeByBatch = standing.Where(IsMade).GroupBy(m => m.BatchId!.Value).ToDictionary(g => g.Key, g => g.Sum(m => made.GetValueOrDefault(m.Id)));
        foreach (var batch in batches)
        {
            var loss = losses[batch.Id];
            var left = units.Begun.Contains(batch.Id) ? 0m : costs[batch.Id] - loss - madeByBatch.GetValueOrDefault(batch.Id);
            var isOver = batch.ClosedAt <= asOf;
            lostOfBatches += loss + (isOver ? left : 0m);
            if (!isOver && left != 0m)
            {
                inWork.Add(new(batch.Id, 1m, left));
            }
        }

        var issues = values.Values.SelectMany(v => v.Issues).ToDictionary();
        var expenses = new BookExpenses(
            standing.Where(m => m.Quantity < 0 && m.BatchId is null).ToDictionary(m => m.Id, m => issues[m.Id]), lostOfBatches, units.Lost, units.KitBoxes);
        var parts = new ValueParts(
            standing.Where(m => m is { Quantity: > 0, BatchId: null }).Sum(m => m.Value ?? 0m) + units.Found + batches.Sum(b => Estimates(b, asOf)),
            batches.Sum(b => Charges(b, asOf)),
            values.Values.Sum(v => v.Ending), inWork.Sum(w => w.Value), units.Held.Values.Sum(p => p.Value), units.CostOfSales, expenses.Total);
        return new StudioBooks(
            Conservation.Check(parts, moneyDecimals),
            [.. values.Where(v => v.Value.Quantity != 0 || v.Value.Ending != 0).Select(v => new BookRow(v.Key, v.Value.Quantity, v.Value.Ending))],
            inWork,
            [.. units.Held.Where(h => h.Value.Quantity != 0).Select(h => new BookRow(h.Key, h.Value.Quantity, h.Value.Value))],
            [.. standing.GroupBy(m => m.MaterialId).SelectMany(m => LotsOf(m.Key, m, values[m.Key]))],
            [.. units.Sold.Select(s => new BookRow(s.Key, s.Value.Quantity, s.Value.Value))],
            expenses, costs, issues, [.. values.Where(v => v.Value.NotCovered > 0).Select(v => v.Key)]);
    }

    private static IEnumerable<BookLot> LotsOf(Guid material, IEnumerable<BookMovement> standing, StockValue value)
    {
        var left = new ValuePool(Math.Max(0m, value.Quantity), value.Ending);
        foreach (var lot in standing.GroupBy(m => m.Lot).Select(g => (Code: g.Key, Quantity: g.Sum(m => m.Quantity)))
            .Where(l => l.Quantity > 0).OrderBy(l => l.Code, StringComparer.Ordinal))
        {
            if (value.Lots is { } apart)
            {
                yield return new BookLot(material, lot.Code, lot.Quantity, apart.GetValueOrDefault(lot.Code).Value);
                continue;
            }

            (var part, left) = left.Take(Math.Min(lot.Quantity, left.Quantity));
            yield return new BookLot(material, lot.Code, lot.Quantity, part.Value);
        }
    }
}
