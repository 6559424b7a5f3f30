using MakerStudio.Core.Curing;

namespace MakerStudio.Core.Stock;

/// <param name="First">First day.</param>
/// <param name="Last">Last day.</param>
public readonly record struct FinancialYear(DateOnly First, DateOnly Last)
{
    public int Days => Last.DayNumber - First.DayNumber + 1;
}

/// <summary>
/// The studio's financial years, which may begin on any day but 29 to 31 of a month. The day may change from a date on:
/// the year before that date is then a short one, and every year before it stays as it was.
/// </summary>
public sealed record FinancialYears
{
    /// <summary>A later day does not come in every month.</summary>
    public const int LatestStartDay = 28;

    private readonly TimeZoneInfo _zone;

    /// <summary>From which day on years begin with which month and day; by date, the first from ever.</summary>
    private readonly (DateOnly From, int Month, int Day)[] _starts;

    /// <param name="month">1 to 12.</param>
    /// <param name="day">1 to 28.</param>
    /// <param name="changes">First days of years that begin on another day than those before them; the day of each is from 1 to 28.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those.</exception>
    public FinancialYears(int month, int day, TimeZoneInfo zone, IEnumerable<DateOnly>? changes = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentOutOfRangeException.ThrowIfLessThan(month, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(month, 12);
        ArgumentOutOfRangeException.ThrowIfLessThan(day, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(day, LatestStartDay);
        var dates = changes?.Order().ToArray() ?? [];
        foreach (var change in dates)
        {
            ArgumentOutOfRangeException.ThrowIfGreaterThan(change.Day, LatestStartDay, nameof(changes));
        }

        _zone = zone;
        _starts = [(DateOnly.MinValue, month, day), .. dates.Select(d => (d, d.Month, d.Day))];
    }

    /// <summary>The year that holds a day.</summary>
    public FinancialYear Of(DateOnly day)
    {
        var at = Array.FindLastIndex(_starts, s => s.From <= day);
        var begins = new DateOnly(day.Year, _starts[at].Month, _starts[at].Day);
        var first = begins <= day ? begins : begins.AddYears(-1);
        var last = first.AddYears(1).AddDays(-1);
        var cut = at + 1 < _starts.Length ? _starts[at + 1].From.AddDays(-1) : last;
        return new FinancialYear(first, cut < last ? cut : last);
    }

    /// <summary>The first day after another with that month and day.</summary>
    /// <param name="month">1 to 12.</param>
    /// <param name="day">1 to 28.</param>
    public static DateOnly NextStart(int month, int day, DateOnly after)
    {
        var begins = new DateOnly(after.Year, month, day);
        return begins > after ? begins : begins.AddYears(1);
    }

    /// <summary>The year that holds an instant, by the studio's calendar.</summary>
    public FinancialYear Of(DateTimeOffset instant) => Of(StudioTime.Today(instant, _zone));

    public FinancialYear After(FinancialYear year) => Of(year.Last.AddDays(1));

    /// <summary>The last instant of a day on the studio's calendar: what a value "as of" that day counts up to.</summary>
    public DateTimeOffset EndOf(DateOnly day)
    {
        var midnight = day.AddDays(1).ToDateTime(TimeOnly.MinValue);
        // Some zones put their clocks forward at midnight; the day then begins when the gap is over.
        while (_zone.IsInvalidTime(midnight))
        {
            midnight = midnight.AddMinutes(1);
        }

        var offset = _zone.IsAmbiguousTime(midnight) ? _zone.GetAmbiguousTimeOffsets(midnight).Max() : _zone.GetUtcOffset(midnight);
        return new DateTimeOffset(midnight, offset).AddTicks(-1);
    }
}
