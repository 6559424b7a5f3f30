using System.Collections.Immutable;

namespace MakerStudio.Core.Finished;

/// <summary>Whether a finished unit may be sold.</summary>
public enum UnitStatus
{
    Saleable,

    /// <summary>Blocked until somebody has looked: recalled, or come back from a buyer.</summary>
    OnHold,

    /// <summary>Final; it is never sold.</summary>
    Rejected,

    /// <summary>Kept as a sample of its batch.</summary>
    Retained,

    /// <summary>Open for people to try; charged to promotion.</summary>
    Tester,
}

/// <summary>Where a unit is: here, or with a shop that has it on consignment.</summary>
/// <param name="ShopId">Null here.</param>
public readonly record struct UnitPlace(Guid? ShopId)
{
    public static UnitPlace Here => default;

    public static UnitPlace At(Guid shopId) => new(shopId);

    public bool IsHere => ShopId is null;
}

/// <param name="BatchId">The batch, or the assembly of kits.</param>
public readonly record struct UnitsOf(Guid BatchId, UnitPlace Place, UnitStatus Status);

/// <summary>Units that change place or status.</summary>
/// <param name="Count">Above 0.</param>
/// <param name="Status">What they are before; null where the kind leaves no choice.</param>
/// <param name="ShopId">The shop they come from or go to; null when none is concerned.</param>
public sealed record UnitMove(Guid BatchId, UnitMoveKind Kind, int Count, UnitStatus? Status = null, Guid? ShopId = null);

/// <summary>What came of a move.</summary>
public abstract record UnitMoveResult
{
    private UnitMoveResult()
    {
    }

    /// <param name="From">Null when the units came in.</param>
    /// <param name="To">Null when they went out.</param>
    public sealed record Moved(UnitShelf Shelf, UnitsOf? From, UnitsOf? To, BookEffect Effect) : UnitMoveResult;

    /// <param name="Says">Why, in a sentence.</param>
    public sealed record NotAllowed(string Says) : UnitMoveResult;

    public sealed record HoldsLess(UnitsOf From, int Has, int Wanted) : UnitMoveResult;
}

/// <summary>Finished units by batch, place and status. Never below zero; every change is a <see cref="UnitMove"/>.</summary>
public sealed class UnitShelf
{
    private readonly ImmutableDictionary<UnitsOf, int> _counts;

    private UnitShelf(ImmutableDictionary<UnitsOf, int> counts) => _counts = counts;

    public static UnitShelf Empty { get; } = new(ImmutableDictionary<UnitsOf, int>.Empty);

    /// <exception cref="ArgumentOutOfRangeException">A count is below zero.</exception>
    public static UnitShelf Of(IEnumerable<KeyValuePair<UnitsOf, int>> counts)
    {
        ArgumentNullException.ThrowIfNull(counts);
        var held = counts.ToImmutableDictionary();
        foreach (var count in held.Values)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(count, nameof(counts));
        }

        return new UnitShelf(held);
    }

    public int this[UnitsOf units] => _counts.GetValueOrDefault(units);

    /// <summary>What is there; nothing that has come to zero.</summary>
    public IEnumerable<KeyValuePair<UnitsOf, int>> Held => _counts.Where(c => c.Value > 0);

    /// <summary>The shelf after the move; this one stays as it was.</summary>
    public UnitMoveResult Post(UnitMove move)
    {
        ArgumentNullException.ThrowIfNull(move);
        var rule = UnitRules.For(move.Kind);
        if (rule.WhyNot(move) is { } says)
        {
            return new UnitMoveResult.NotAllowed(says);
        }

        var from = rule.Source(move);
        if (from is { } source && this[source] < move.Count)
        {
            return new UnitMoveResult.HoldsLess(source, this[source], move.Count);
        }

        var to = rule.Target(move);
        return new UnitMoveResult.Moved(With(from, -move.Count).With(to, move.Count), from, to, rule.Effect);
    }

    /// <summary>Takes a move back: the units go where they came from, if they are still there.</summary>
    public UnitMoveResult Undo(UnitMove move)
    {
        ArgumentNullException.ThrowIfNull(move);
        var rule = UnitRules.For(move.Kind);
        if (rule.WhyNot(move) is { } says)
        {
            return new UnitMoveResult.NotAllowed(says);
        }

        var (from, to) = (rule.Target(move), rule.Source(move));
        return from is { } source && this[source] < move.Count
            ? new UnitMoveResult.HoldsLess(source, this[source], move.Count)
            : new UnitMoveResult.Moved(With(from, -move.Count).With(to, move.Count), from, to, rule.Effect);
    }

    private UnitShelf With(UnitsOf? units, int change) => units is not { } key
        ? this
        : new UnitShelf(_counts.SetItem(key, this[key] + change));
}
