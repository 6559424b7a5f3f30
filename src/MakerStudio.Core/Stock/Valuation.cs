namespace MakerStudio.Core.Stock;

/// <summary>How the books say which purchase a unit that left had come from. Which lot is *picked* is another matter: see <see cref="LotChoice"/>.</summary>
public enum ValuationMethod
{
    /// <summary>First in, first out: what came first is taken as gone first.</summary>
    Fifo,

    /// <summary>One average over all that was there in the financial year; within the year, over the year so far.</summary>
    WeightedAverage,

    /// <summary>The average is worked out anew after each receipt, and never rounded midway.</summary>
    MovingAverage,

    /// <summary>Each lot keeps its own cost.</summary>
    SpecificLot,
}

/// <summary>A movement of the ledger as the books see it.</summary>
/// <param name="Id">Orders movements of one moment.</param>
/// <param name="Quantity">Above 0 came in, below 0 went out; in the finest unit kept.</param>
/// <param name="Value">Of what came in, for the whole quantity, 0 or more; not looked at for what went out.</param>
/// <param name="Reverses">The movement it undoes, of the same quantity the other way.</param>
public sealed record ValuedMovement(long Id, DateTimeOffset At, string Lot, decimal Quantity, decimal Value = 0m, long? Reverses = null);

/// <summary>The value of one material, or of one finished product, at a moment; not rounded.</summary>
/// <param name="Received">All that came in up to then, entries that were undone left out.</param>
/// <param name="Ending">What is there.</param>
/// <param name="Issued">What went out; with <see cref="Ending"/> it adds up to <see cref="Received"/> exactly.</param>
/// <param name="NotCovered">Went out before anything came in to cover it; it has no value yet.</param>
/// <param name="Issues">The money of each movement out, by its id.</param>
public sealed record StockValue(
    decimal Quantity, decimal Received, decimal Ending, decimal Issued, decimal NotCovered, IReadOnlyDictionary<long, decimal> Issues)
{
    /// <summary>What is there of each lot, by its code, where the method keeps lots apart; else null.</summary>
    public IReadOnlyDictionary<string, ValuePool>? Lots { get; init; }
}

/// <summary>
/// Puts a value on stock by replaying its movements. IAS 2 prescribes FIFO or weighted average for goods that are
/// alike, specific identification for goods that are not.
/// </summary>
public static class Valuation
{
    /// <summary>
    /// The value as it stood at a moment, seen from the movements up to then and no later ones. An entry that was
    /// undone by then counts as never made.
    /// </summary>
    /// <param name="movements">Of one material or one product, in any order.</param>
    /// <param name="asOf">Movements of this very moment count.</param>
    /// <exception cref="ArgumentException">
    /// A quantity is zero, a value below zero, an id comes twice, or a reversal does not fit what it undoes.
    /// </exception>
    public static StockValue Of(
        ValuationMethod method, IEnumerable<ValuedMovement> movements, DateTimeOffset asOf, FinancialYears years)
    {
        ArgumentNullException.ThrowIfNull(movements);
        ArgumentNullException.ThrowIfNull(years);
        var standing = Standing([.. movements.Where(m => m.At <= asOf)]).OrderBy(m => m.At).ThenBy(m => m.Id);
        // All receipts of a year before its issues: then the running average is the average of the year.
        IEnumerable<ValuedMovement> inOrder = method == ValuationMethod.WeightedAverage
            ? standing.GroupBy(m => years.Of(m.At)).SelectMany(year => year.OrderBy(m => m.Quantity < 0))
            : standing;
        CostFlow flow = method switch
        {
            ValuationMethod.Fifo => new FirstInFirstOut(),
            ValuationMethod.SpecificLot => new PoolOfEach(m => m.Lot),
            ValuationMethod.MovingAverage or ValuationMethod.WeightedAverage => new PoolOfEach(_ => string.Empty),
            _ => throw new ArgumentOutOfRangeException(nameof(method)),
        };
        foreach (var movement in inOrder)
        {
            flow.Post(movement);
        }

        return flow.Value() with { Lots = method == ValuationMethod.SpecificLot ? ((PoolOfEach)flow).Pools : null };
    }

    /// <summary>The movements without those that were undone and what undid them.</summary>
    internal static List<ValuedMovement> Standing(IReadOnlyList<ValuedMovement> movements)
    {
        var byId = new Dictionary<long, ValuedMovement>();
        foreach (var movement in movements)
        {
            if (movement.Quantity == 0 || movement.Value < 0 || !byId.TryAdd(movement.Id, movement))
            {
                throw new ArgumentException($"Movement {movement.Id} has no quantity, a value below zero, or comes twice.", nameof(movements));
            }
        }

        // Latest first: a reversal that was itself reversed undoes nothing.
        var undone = new HashSet<long>();
        foreach (var reversal in movements.Where(m => m.Reverses is not null).OrderByDescending(m => m.At).ThenByDescending(m => m.Id))
        {
            if (!byId.TryGetValue(reversal.Reverses!.Value, out var original) || original.Quantity != -reversal.Quantity || original.Lot != reversal.Lot)
            {
                throw new ArgumentException($"Movement {reversal.Id} does not fit the movement it undoes.", nameof(movements));
            }

            if (!undone.Contains(reversal.Id))
            {
                undone.Add(reversal.Id);
                undone.Add(original.Id);
            }
        }

        return [.. movements.Where(m => !undone.Contains(m.Id))];
    }
}
