using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Stock;

/// <summary>A lot as it stands on the shelf.</summary>
/// <param name="OnHand">What may be taken; reservations of others already off.</param>
/// <param name="EffectiveExpiry">Last day of use, see <see cref="LotDates"/>; null when none is known.</param>
public sealed record LotOnShelf(
    Guid LotId,
    string Code,
    LotStatus Status,
    StockAmount OnHand,
    DateOnly? EffectiveExpiry,
    bool IsOpen,
    DateOnly ReceivedOn);

/// <summary>Why a lot may not be weighed from.</summary>
public abstract record LotRefusal
{
    private LotRefusal()
    {
    }

    /// <summary>Final; there is no override.</summary>
    public sealed record Rejected : LotRefusal;

    /// <summary>In quarantine or on hold.</summary>
    public sealed record NotReleased(LotStatus Status) : LotRefusal;

    /// <param name="On">The last day of use, now past.</param>
    public sealed record Expired(DateOnly On) : LotRefusal;

    /// <summary>Nothing on hand.</summary>
    public sealed record Empty : LotRefusal;
}

public sealed record LotPick(Guid LotId, string Code, StockAmount Amount);

/// <param name="Picks">In the order in which to weigh from them.</param>
/// <param name="Shortfall">What no lot could give; zero when the demand is met.</param>
/// <param name="PassedOver">Lots that may not be used, with the reason.</param>
public sealed record PickPlan(
    IReadOnlyList<LotPick> Picks,
    StockAmount Shortfall,
    IReadOnlyList<(LotOnShelf Lot, LotRefusal Why)> PassedOver)
{
    public bool IsMet => Shortfall.IsZero;
}

/// <summary>
/// Chooses lots by first expired, first out. This is the order of picking only; for the value of stock see
/// <see cref="Valuation"/>.
/// </summary>
public static class LotChoice
{
    /// <summary>
    /// Takes the lots that may be used in <see cref="InPickOrder"/> until the demand is met, splitting it where one
    /// lot does not hold enough.
    /// </summary>
    /// <param name="demand">0 or more.</param>
    /// <param name="lots">Lots of one material.</param>
    /// <exception cref="ArgumentOutOfRangeException">The demand is below zero.</exception>
    /// <exception cref="InvalidOperationException">A lot is stocked in another unit than the demand.</exception>
    public static PickPlan For(StockAmount demand, IEnumerable<LotOnShelf> lots, DateOnly today)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(demand.Units, nameof(demand));
        ArgumentNullException.ThrowIfNull(lots);
        var judged = lots.Select(lot => (Lot: lot, Why: WhyNot(lot, today))).ToList();
        var picks = new List<LotPick>();
        var open = demand;
        foreach (var lot in InPickOrder(judged.Where(j => j.Why is null).Select(j => j.Lot)))
        {
            var taken = StockAmount.Min(open, lot.OnHand);
            if (taken.IsPositive)
            {
                picks.Add(new LotPick(lot.LotId, lot.Code, taken));
                open -= taken;
            }
        }
        return new PickPlan(picks, open, [.. judged.Where(j => j.Why is not null).Select(j => (j.Lot, j.Why!))]);
    }

    /// <summary>
    /// Earliest expiry first and no expiry last; on one date an open lot before an unopened one, then the one
    /// received first, then by code.
    /// </summary>
    public static IOrderedEnumerable<LotOnShelf> InPickOrder(IEnumerable<LotOnShelf> lots) => lots
        .OrderBy(l => l.EffectiveExpiry ?? DateOnly.MaxValue)
        .ThenBy(l => l.EffectiveExpiry is null)
        .ThenByDescending(l => l.IsOpen)
        .ThenBy(l => l.ReceivedOn)
        .ThenBy(l => l.Code, StringComparer.Ordinal)
        .ThenBy(l => l.LotId);

    /// <summary>
    /// Why the lot may not be weighed from, gravest reason first; null when it may. A lot may be used on the day
    /// its date names, and not after.
    /// </summary>
    public static LotRefusal? WhyNot(LotOnShelf lot, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return lot switch
        {
            { Status: LotStatus.Rejected } => new LotRefusal.Rejected(),
            { Status: not LotStatus.Released } => new LotRefusal.NotReleased(lot.Status),
            { EffectiveExpiry: { } date } when date < today => new LotRefusal.Expired(date),
            { OnHand.IsPositive: false } => new LotRefusal.Empty(),
            _ => null,
        };
    }
}
