using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Books;

/// <summary>Stock of an item carried below its cost from a moment on: of one lot, or of all there was of it.</summary>
/// <param name="Id">Orders write-downs: a later one takes the place of an earlier one of the same lot.</param>
/// <param name="Lot">Null for all there was then.</param>
/// <param name="Quantity">There then, above 0.</param>
/// <param name="Amount">What it was written down by in all.</param>
public sealed record HeldWriteDown(long Id, DateTimeOffset At, string? Lot, decimal Quantity, decimal Amount)
{
    /// <summary>
    /// What of the write-downs of an item still lies in its stock, by lot. Of each lot no more is held than the least
    /// there was of it since: the rest left with the stock, so that what went out is charged at its full cost.
    /// </summary>
    /// <param name="downs">Of one item, in any order.</param>
    /// <param name="changes">All changes of the item's quantity up to now, in any order.</param>
    public static IReadOnlyDictionary<string, LotWriteDown> ByLot(
        IEnumerable<HeldWriteDown> downs, IEnumerable<(DateTimeOffset At, string Lot, decimal Change)> changes)
    {
        ArgumentNullException.ThrowIfNull(downs);
        var byLot = changes.OrderBy(c => c.At).ToLookup(c => c.Lot, c => (c.At, c.Change));
        var newest = new Dictionary<string, HeldWriteDown>(StringComparer.Ordinal);
        foreach (var down in downs.OrderBy(d => d.Id))
        {
            foreach (var part in down.Lot is null ? OverLots(down, byLot) : [down])
            {
                newest[part.Lot!] = part;
            }
        }

        return newest.ToDictionary(n => n.Key, n => new LotWriteDown(n.Value.Id, n.Value.StillHeld(byLot[n.Key])), StringComparer.Ordinal);
    }

    /// <summary>One of all there was is one of each lot, by quantity.</summary>
    private static IEnumerable<HeldWriteDown> OverLots(HeldWriteDown down, ILookup<string, (DateTimeOffset At, decimal Change)> changes)
    {
        var left = new ValuePool(down.Quantity, down.Amount);
        foreach (var lot in changes)
        {
            var there = lot.Where(c => c.At <= down.At).Sum(c => c.Change);
            (var part, left) = left.Take(Math.Clamp(there, 0m, left.Quantity));
            if (part.Quantity > 0)
            {
                yield return down with { Lot = lot.Key, Quantity = part.Quantity, Amount = part.Value };
            }
        }
    }

    private decimal StillHeld(IEnumerable<(DateTimeOffset At, decimal Change)> changes)
    {
        var (there, least) = (0m, Quantity);
        foreach (var (at, change) in changes)
        {
            there += change;
            least = at > At ? Math.Min(least, there) : least;
        }

        return NetRealisable.StillHeld(Quantity, Amount, Math.Max(0m, least));
    }
}

/// <param name="Id">Of the write-down it comes from.</param>
/// <param name="Amount">0 or more.</param>
public readonly record struct LotWriteDown(long Id, decimal Amount);
