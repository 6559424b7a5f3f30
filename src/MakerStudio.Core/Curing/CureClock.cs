namespace MakerStudio.Core.Curing;

/// <summary>A re-smell and look at the batch against its retain.</summary>
/// <param name="Initials">Of the person who answers for it; blank until signed.</param>
public sealed record CureCheck(DateTimeOffset At, bool Passed, string Initials)
{
    public bool IsSigned => !string.IsNullOrWhiteSpace(Initials);
}

/// <summary>Something that went into the batch, or the pour.</summary>
/// <param name="RestartsClock">False only when a person overrode the restart and gave a reason.</param>
public sealed record CureAddition(DateTimeOffset At, bool RestartsClock = true);

/// <summary>Where a batch stands in its cure.</summary>
public abstract record CureStanding
{
    private CureStanding()
    {
    }

    /// <summary>The shortest time is not over yet.</summary>
    public sealed record Resting(TimeSpan Elapsed, TimeSpan Remaining) : CureStanding;

    /// <summary>The shortest time is over, and a passed and signed check is still to come.</summary>
    public sealed record DueForCheck(DateTimeOffset Since) : CureStanding;

    /// <summary>Time reached, last check passed, initials given.</summary>
    public sealed record Ready(DateTimeOffset Since) : CureStanding;
}

/// <summary>Why a batch is not released from its cure without a reason from a person.</summary>
public abstract record ReleaseRefusal
{
    private ReleaseRefusal()
    {
    }

    public sealed record TimeNotReached(DateTimeOffset DueAt) : ReleaseRefusal;

    /// <summary>No check since the clock started, or the last one did not pass.</summary>
    public sealed record NoPassedCheck : ReleaseRefusal;

    public sealed record CheckNotSigned : ReleaseRefusal;
}

/// <summary>
/// Reads the cure clock. All sums are elapsed time in UTC; <see cref="StudioTime"/> shows them in local time.
/// </summary>
public static class CureClock
{
    /// <summary>
    /// The clock starts at the last addition (or the pour); a later addition restarts it unless overridden.
    /// Null when nothing has started it.
    /// </summary>
    public static DateTimeOffset? StartedAt(IEnumerable<CureAddition> additions)
    {
        ArgumentNullException.ThrowIfNull(additions);
        return additions.Where(a => a.RestartsClock).Select(a => (DateTimeOffset?)a.At.ToUniversalTime()).Max();
    }

    /// <summary>When the shortest time is over, in UTC.</summary>
    public static DateTimeOffset DueAt(DateTimeOffset start, CureWindow window) => After(start, window).Due;

    /// <summary>When the batch is at its best by rule of thumb, in UTC.</summary>
    public static DateTimeOffset IdealAt(DateTimeOffset start, CureWindow window) => After(start, window).Ideal;

    /// <summary>When it is to be looked at again at the latest, in UTC; null when no latest is set.</summary>
    public static DateTimeOffset? LatestAt(DateTimeOffset start, CureWindow window) => After(start, window).Latest;

    /// <summary>Past the latest time. No fault in itself: the batch asks for a retest.</summary>
    public static bool IsPastLatest(DateTimeOffset start, CureWindow window, DateTimeOffset now) =>
        now > LatestAt(start, window);

    /// <param name="lastCheck">The newest check; one made before <paramref name="start"/> does not count.</param>
    public static CureStanding Of(DateTimeOffset start, CureWindow window, DateTimeOffset now, CureCheck? lastCheck)
    {
        var due = DueAt(start, window);
        if (now < due)
        {
            // A clock set back must not show a rest of less than nothing.
            var elapsed = now < start ? TimeSpan.Zero : now - start;
            return new CureStanding.Resting(elapsed, window.Min - elapsed);
        }
        return Counting(lastCheck, start) is { Passed: true, IsSigned: true } check
            ? new CureStanding.Ready(check.At > due ? check.At.ToUniversalTime() : due)
            : new CureStanding.DueForCheck(due);
    }

    /// <summary>
    /// Everything that stands against release; empty when the batch is ready. Each may be overridden by a person
    /// with a reason, which the batch record prints.
    /// </summary>
    public static IReadOnlyList<ReleaseRefusal> WhyNotRelease(
        DateTimeOffset start, CureWindow window, DateTimeOffset now, CureCheck? lastCheck)
    {
        var refusals = new List<ReleaseRefusal>();
        var due = DueAt(start, window);
        if (now < due)
        {
            refusals.Add(new ReleaseRefusal.TimeNotReached(due));
        }
        if (Counting(lastCheck, start) is not { Passed: true } check)
        {
            refusals.Add(new ReleaseRefusal.NoPassedCheck());
        }
        else if (!check.IsSigned)
        {
            refusals.Add(new ReleaseRefusal.CheckNotSigned());
        }
        return refusals;
    }

    private static CureCheck? Counting(CureCheck? check, DateTimeOffset start) => check?.At < start ? null : check;

    private static (DateTimeOffset Due, DateTimeOffset Ideal, DateTimeOffset? Latest) After(
        DateTimeOffset start, CureWindow window)
    {
        ArgumentNullException.ThrowIfNull(window);
        var utc = start.ToUniversalTime();
        return (utc + window.Min, utc + window.Ideal, utc + window.Latest);
    }
}
