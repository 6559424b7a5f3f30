namespace MakerStudio.Core.Buying;

/// <summary>What a material cost on a day.</summary>
/// <param name="UnitCost">Landed, of one gram or one piece, 0 or more.</param>
public sealed record PricePoint(DateOnly On, decimal UnitCost);

/// <summary>How the price of a material went, from the first time it was paid to the last.</summary>
/// <param name="Before">The one before the last; null when there is only one.</param>
/// <param name="Lowest">The latest of equals, as the highest.</param>
public sealed record PriceTrend(PricePoint First, PricePoint? Before, PricePoint Last, PricePoint Lowest, PricePoint Highest)
{
    /// <summary>Above this fraction over what is reckoned with, a price is well above. Own threshold.</summary>
    public const decimal WellAbove = 0.10m;

    /// <summary>A fraction: 0.12 is 12 % dearer than the first; null with one price, or when the first was free.</summary>
    public decimal? SinceFirst => Before is null ? null : Change(First.UnitCost, Last.UnitCost);

    /// <summary>A fraction against the price before; null with one price, or when that was free.</summary>
    public decimal? SinceBefore => Before is null ? null : Change(Before.UnitCost, Last.UnitCost);

    /// <param name="paid">In the order they were paid, oldest first.</param>
    /// <returns>Null when nothing was paid yet.</returns>
    public static PriceTrend? Of(IReadOnlyList<PricePoint> paid)
    {
        ArgumentNullException.ThrowIfNull(paid);
        return paid.Count == 0 ? null : new PriceTrend(
            paid[0], paid.Count > 1 ? paid[^2] : null, paid[^1], paid.Reverse().MinBy(p => p.UnitCost)!, paid.Reverse().MaxBy(p => p.UnitCost)!);
    }

    /// <summary>By which fraction a price lies over the one reckoned with; null unless it is <see cref="WellAbove"/> it.</summary>
    /// <param name="price">0 or more, per the same as <paramref name="reckoned"/>.</param>
    public static decimal? Above(decimal price, decimal reckoned) => Change(reckoned, price) is { } change && change > WellAbove ? change : null;

    private static decimal? Change(decimal from, decimal to) => from == 0 ? null : (to - from) / from;
}
