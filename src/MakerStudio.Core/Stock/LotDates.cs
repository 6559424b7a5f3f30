namespace MakerStudio.Core.Stock;

/// <summary>Which date ends the use of a lot.</summary>
public enum ExpiryReason
{
    /// <summary>The supplier's expiry; a passed retest never moves it.</summary>
    SupplierExpiry,

    /// <summary>The retest date; a passed retest moves it.</summary>
    Retest,

    /// <summary>Days after opening are over.</summary>
    Opened,
}

/// <param name="On">Last day on which the lot may be used.</param>
public sealed record LotExpiry(DateOnly On, ExpiryReason Reason);

/// <summary>Works out until when a lot may be used.</summary>
public static class LotDates
{
    /// <summary>Longest life after opening that is believed to be meant, in days: ten years; own bound.</summary>
    public const int LongestLifeAfterOpeningDays = 3653;

    /// <summary>The earliest of supplier expiry, retest, and opened + life after opening; null when none is known.</summary>
    /// <param name="lifeAfterOpeningDays">0 to 3,653.</param>
    /// <exception cref="ArgumentOutOfRangeException">The life after opening is outside its range.</exception>
    public static DateOnly? EffectiveExpiry(
        DateOnly? supplierExpiry, DateOnly? retest, DateOnly? opened, int? lifeAfterOpeningDays) =>
        Expiry(supplierExpiry, retest, opened, lifeAfterOpeningDays)?.On;

    /// <summary>
    /// The same with the reason. On equal dates the supplier's expiry is named first and the retest second, since
    /// that is the order in which less can be done about it.
    /// </summary>
    public static LotExpiry? Expiry(
        DateOnly? supplierExpiry, DateOnly? retest, DateOnly? opened, int? lifeAfterOpeningDays)
    {
        if (lifeAfterOpeningDays is { } days)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(days, nameof(lifeAfterOpeningDays));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(
                days, LongestLifeAfterOpeningDays, nameof(lifeAfterOpeningDays));
        }
        (DateOnly? On, ExpiryReason Reason)[] dates =
        [
            (supplierExpiry, ExpiryReason.SupplierExpiry),
            (retest, ExpiryReason.Retest),
            (lifeAfterOpeningDays is { } life ? opened?.AddDays(life) : null, ExpiryReason.Opened),
        ];
        return dates
            .Where(d => d.On is not null)
            .Select(d => new LotExpiry(d.On!.Value, d.Reason))
            .MinBy(d => d.On);
    }

    /// <summary>
    /// The expiry of a lot we made ourselves: its own, but never later than the earliest of what went into it.
    /// </summary>
    public static DateOnly? NotLaterThanParents(DateOnly? own, IEnumerable<DateOnly?> parents)
    {
        ArgumentNullException.ThrowIfNull(parents);
        return parents.Append(own).Min();
    }
}
