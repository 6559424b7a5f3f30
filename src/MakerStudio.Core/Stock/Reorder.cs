using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Stock;

/// <summary>How fast a material is used: grams or pieces a day, not rounded.</summary>
public readonly record struct DailyUse
{
    /// <exception cref="ArgumentOutOfRangeException">Below zero.</exception>
    public DailyUse(decimal perDay, StockUnit unit)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(perDay, 0m);
        PerDay = perDay;
        Unit = unit;
    }

    public decimal PerDay { get; }

    public StockUnit Unit { get; }

    /// <summary>The average over a span of days, days without use included.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The use is below zero, or the span is below one day.</exception>
    public static DailyUse Over(StockAmount used, int days)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        return new DailyUse(used.Display / days, used.Unit);
    }
}

/// <summary>What decides when and how much to order.</summary>
/// <param name="OnOrder">Ordered and not yet here.</param>
/// <param name="CoverDays">Days an order is to last beyond the lead time, 1 or more.</param>
/// <param name="Minimum">The least the supplier sells; zero when anything.</param>
/// <param name="Pack">The supplier sells whole packs of this; zero when any amount.</param>
public sealed record ReorderState(
    StockAmount Available, StockAmount OnOrder, DailyUse Use, int LeadDays, StockAmount Safety, int CoverDays, StockAmount Minimum, StockAmount Pack)
{
    /// <summary>A point the studio set itself; the higher of it and the one worked out holds. Null when it set none.</summary>
    public StockAmount? OwnPoint { get; init; }
}

/// <param name="Point">At this amount it is time to order.</param>
/// <param name="Quantity">What to order; zero while it is not due.</param>
/// <param name="DaysLeft">Days until the point is reached, 0 when it is; null when nothing is being used and it is not due.</param>
/// <param name="ArrivesTooLate">An order placed today comes after the shelf is empty.</param>
public sealed record ReorderAdvice(StockAmount Point, bool IsDue, StockAmount Quantity, int? DaysLeft, bool ArrivesTooLate);

/// <summary>When to order again, and how much.</summary>
public static class Reorder
{
    /// <summary>Average days of a month: 365.25 ÷ 12.</summary>
    public const decimal DaysPerMonth = 30.4375m;

    /// <summary>
    /// Due when what is there and what is on order together are down to <see cref="Point"/>. The order brings them up to
    /// the point and the wanted cover, in whole packs and no less than the supplier's minimum.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    /// <exception cref="InvalidOperationException">Amounts are in different units.</exception>
    public static ReorderAdvice Advise(ReorderState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentOutOfRangeException.ThrowIfLessThan(state.CoverDays, 1, nameof(state));
        foreach (var amount in new[] { state.OnOrder, state.Minimum, state.Pack })
        {
            ArgumentOutOfRangeException.ThrowIfNegative(amount.Units, nameof(state));
        }

        var worked = Point(state.Use, state.LeadDays, state.Safety);
        var point = state.OwnPoint is { } own && own > worked ? own : worked;
        var coming = state.Available + state.OnOrder;
        var isDue = IsDue(coming, point);
        var upTo = Point(state.Use, state.LeadDays + state.CoverDays, state.Safety) + (point - worked);
        var lasts = CoverDays(state.Available, state.Use);
        return new ReorderAdvice(
            point, isDue, isDue ? InPacks(upTo - coming, state) : StockAmount.Zero(point.Unit),
            isDue ? 0 : CoverDays(coming - point, state.Use) is { } days ? (int)decimal.Floor(Math.Min(days, int.MaxValue)) : null,
            isDue && lasts < state.LeadDays);
    }

    /// <summary>Months the stock lasts, not rounded; null when nothing is being used.</summary>
    /// <exception cref="InvalidOperationException">Stock and use are in different units.</exception>
    public static decimal? CoverMonths(StockAmount available, DailyUse use) => CoverDays(available, use) / DaysPerMonth;

    /// <summary>
    /// A suggestion: busiest day's use × longest lead time − usual use × usual lead time. Common practice, no source.
    /// Zero where the usual is the worst there was.
    /// </summary>
    /// <exception cref="InvalidOperationException">The uses are in different units.</exception>
    public static StockAmount SafetySuggestion(DailyUse usual, int usualLeadDays, DailyUse busiest, int longestLeadDays)
    {
        var none = StockAmount.Zero(usual.Unit);
        var more = Point(busiest, longestLeadDays, none) - Point(usual, usualLeadDays, none);
        return more.IsPositive ? more : none;
    }

    /// <summary>Daily use × lead days + safety stock, rounded up to the finest amount that is kept.</summary>
    /// <param name="leadDays">Days from ordering to having it on the shelf, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Lead days or safety stock are below zero.</exception>
    /// <exception cref="InvalidOperationException">Use and safety stock are in different units.</exception>
    public static StockAmount Point(DailyUse use, int leadDays, StockAmount safety)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(leadDays);
        ArgumentOutOfRangeException.ThrowIfNegative(safety.Units, nameof(safety));
        var inLeadTime = use.PerDay * leadDays * BaseUnitsPerShown(use.Unit);
        return new StockAmount((long)decimal.Ceiling(inLeadTime), use.Unit) + safety;
    }

    /// <summary>At the point it is time to order: what is there then just covers lead time and safety stock.</summary>
    public static bool IsDue(StockAmount available, StockAmount point) => available <= point;

    /// <summary>Days the stock lasts, not rounded; 0 when there is none, null when nothing is being used.</summary>
    /// <exception cref="InvalidOperationException">Stock and use are in different units.</exception>
    public static decimal? CoverDays(StockAmount available, DailyUse use)
    {
        if (available.Unit != use.Unit)
        {
            throw new InvalidOperationException("Stock and use are in different units.");
        }
        return use.PerDay == 0 ? null : Math.Max(available.Display, 0) / use.PerDay;
    }

    private static StockAmount InPacks(StockAmount wanted, ReorderState state)
    {
        var least = wanted < state.Minimum ? state.Minimum : wanted;
        return state.Pack.IsPositive
            ? least with { Units = (least.Units + state.Pack.Units - 1) / state.Pack.Units * state.Pack.Units }
            : least;
    }

    private static decimal BaseUnitsPerShown(StockUnit unit) => unit == StockUnit.Gram ? Mass.MilligramsPerGram : 1;
}
