using System.Globalization;

namespace MakerStudio.Web.Shell.Drawings;

/// <summary>One tick of a rule of days.</summary>
/// <param name="Label">Null for a short one.</param>
public readonly record struct DayTick(DateOnly On, string? Label);

/// <summary>A rule of days from <paramref name="From"/> to <paramref name="To"/>: weeks while they fit, then months, then years.</summary>
public sealed record DayRule(DateOnly From, DateOnly To)
{
    private const int DaysOfWeeks = 56, DaysOfFortnights = 112, MonthsOfMonths = 60, MostLabels = 7;

    /// <summary>A single day stands in the middle of so many.</summary>
    private const int LeastDays = 28;

    private static readonly int[] MonthSteps = [1, 2, 3, 6, 12, 24, 60, 120];

    /// <summary>A rule that holds the days with a little room on both sides.</summary>
    public static DayRule Around(DateOnly first, DateOnly last)
    {
        var days = last.DayNumber - first.DayNumber;
        var room = Math.Max(2, days / 20);
        var missing = Math.Max(0, LeastDays - days - (2 * room));
        return new DayRule(first.AddDays(-room - ((missing + 1) / 2)), last.AddDays(room + (missing / 2)));
    }

    private int Days => Math.Max(1, To.DayNumber - From.DayNumber);

    /// <summary>Where a day lies as a css or svg length; days outside lie on its ends.</summary>
    public string Percent(DateOnly day) => Rule.Css(100m * Math.Clamp((decimal)(day.DayNumber - From.DayNumber) / Days, 0m, 1m)) + "%";

    /// <summary>So near the end that words about it stand at its left.</summary>
    public bool IsLate(DateOnly day) => (To.DayNumber - day.DayNumber) * 10 < Days;

    public IEnumerable<DayTick> Ticks() => Days <= DaysOfFortnights ? Weeks() : Months();

    private IEnumerable<DayTick> Weeks()
    {
        var every = Days <= DaysOfWeeks ? 7 : 14;
        var monday = From.AddDays((7 - (((int)From.DayOfWeek + 6) % 7)) % 7);
        for (var day = monday; day <= To; day = day.AddDays(7))
        {
            var labelled = (day.DayNumber - monday.DayNumber) % every == 0;
            yield return new DayTick(day, labelled ? day.ToString("d MMM", CultureInfo.CurrentCulture) : null);
        }
    }

    private IEnumerable<DayTick> Months()
    {
        var months = ((To.Year - From.Year) * 12) + To.Month - From.Month;
        var every = MonthSteps.FirstOrDefault(s => months / s < MostLabels, MonthSteps[^1]);
        var tick = months <= MonthsOfMonths ? 1 : 12;
        for (var n = ((From.Year * 12) + From.Month) / tick * tick; n <= (To.Year * 12) + To.Month - 1; n += tick)
        {
            var day = new DateOnly(n / 12, (n % 12) + 1, 1);
            if (day >= From)
            {
                yield return new DayTick(day, n % every == 0 ? day.ToString("MMM yyyy", CultureInfo.CurrentCulture) : null);
            }
        }
    }
}
