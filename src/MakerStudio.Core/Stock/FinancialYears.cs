using MakerStudio.Core.Curing;

namespace MakerStudio.Core.Stock;

/// <param name="First">First day.</param>
/// <param name="Last">Last day.</param>
public readonly record struct FinancialYear(DateOnly First, DateOnly Last);

/// <summary>The studio's financial years, which may begin on any day but 29 to 31 of a month.</summary>
public sealed record FinancialYears
{
    /// <summary>A later day does not come in every month.</summary>
    public const int LatestStartDay = 28;

    private readonly TimeZoneInfo _zone;
    private readonly int _month;
    private readonly int _day;

    /// <param name="month">1 to 12.</param>
    /// <param name="day">1 to 28.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those.</exception>
    public FinancialYears(int month, int day, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentOutOfRangeException.ThrowIfLessThan(month, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(month, 12);
        ArgumentOutOfRangeException.ThrowIfLessThan(day, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(day, LatestStartDay);
        (_month, _day, _zone) = (month, day, zone);
    }

    /// <summary>The year that holds a day.</summary>
    public FinancialYear Of(DateOnly day)
    {
        var begins = new DateOnly(day.Year, _month, _day);
        var first = begins <= day ? begins : begins.AddYears(-1);
        return new FinancialYear(first, first.AddYears(1).AddDays(-1));
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
