using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Stock;

/// <summary>How fast a material is used: grams or pieces a day, not rounded.</summary>
public readonly record struct DailyUse
{
    /// <exception cref="ArgumentOutOfRangeException">Below zero.</exception>
    public DailyUse(decimal perDay, StockUnit unit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(perDay);
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

/// <summary>When to order again.</summary>
public static class Reorder
{
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

    private static decimal BaseUnitsPerShown(StockUnit unit) => unit == StockUnit.Gram ? Mass.MilligramsPerGram : 1;
}
