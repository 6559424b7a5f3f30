namespace MakerStudio.Core.Curing;

/// <summary>
/// How long a batch rests: not before <see cref="Min"/>, best at <see cref="Ideal"/>, looked at again by
/// <see cref="Latest"/>. Elapsed time, so 48 h is 48 h across a clock change too.
/// </summary>
public sealed record CureWindow
{
    /// <summary>Longest rest that is believed to be meant: ten years; own bound against a slip of the unit.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(3653);

    /// <exception cref="ArgumentOutOfRangeException">Not 0 ≤ min ≤ ideal ≤ latest ≤ ten years.</exception>
    public CureWindow(TimeSpan min, TimeSpan ideal, TimeSpan? latest = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(min, TimeSpan.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThan(ideal, min);
        ArgumentOutOfRangeException.ThrowIfLessThan(latest ?? ideal, ideal, nameof(latest));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(latest ?? ideal, Longest, nameof(latest));
        Min = min;
        Ideal = ideal;
        Latest = latest;
    }

    public TimeSpan Min { get; }

    public TimeSpan Ideal { get; }

    public TimeSpan? Latest { get; }
}
