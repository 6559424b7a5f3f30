using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Books;

/// <summary>All there was of an item, carried below its cost from a moment on.</summary>
/// <param name="Quantity">There then, above 0.</param>
/// <param name="Amount">What it was written down by in all.</param>
public sealed record HeldWriteDown(DateTimeOffset At, decimal Quantity, decimal Amount)
{
    /// <summary>
    /// What of it still lies in the stock: no more than the least there was since, for what came later was not written
    /// down. The rest left with the stock, so that what went out is charged at its full cost.
    /// </summary>
    /// <param name="changes">All changes of the item's quantity up to now.</param>
    /// <param name="cost">Of what is there.</param>
    public decimal StillHeld(IEnumerable<(DateTimeOffset At, decimal Change)> changes, decimal cost)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var (there, least) = (0m, Quantity);
        foreach (var (at, change) in changes.OrderBy(c => c.At))
        {
            there += change;
            least = at > At ? Math.Min(least, there) : least;
        }

        return Math.Min(cost, NetRealisable.StillHeld(Quantity, Amount, Math.Max(0m, least)));
    }
}
