namespace MakerStudio.Core.Curing;

/// <summary>
/// How a resting batch is moved so that it mixes: a liquid is swirled daily for the first three days, dry matter is
/// shaken every three days, what was poured is left alone. Common practice, no source.
/// </summary>
/// <param name="Verb">What the person does: "Swirl".</param>
/// <param name="EveryDays">1 or more.</param>
/// <param name="ForDays">Days after which it ends, or null to go on until the batch is ready.</param>
public sealed record Moving(string Verb, int EveryDays, int? ForDays)
{
    public static Moving SwirlLiquid { get; } = new("Swirl", 1, 3);

    public static Moving ShakeDryMatter { get; } = new("Shake", 3, null);

    /// <summary>
    /// The next day on which to move it, today included; null when it has ended. Days of the studio's calendar: a
    /// reminder is for a day, not for an hour.
    /// </summary>
    /// <param name="ready">A batch that was found ready is left alone.</param>
    public DateOnly? NextOn(DateOnly started, DateOnly today, bool ready)
    {
        if (ready)
        {
            return null;
        }

        var days = Math.Max(today.DayNumber - started.DayNumber, 1);
        var next = (days + EveryDays - 1) / EveryDays * EveryDays;
        return next > ForDays ? null : started.AddDays(next);
    }
}
