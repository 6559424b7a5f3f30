using System.Globalization;

namespace MakerStudio.Core.Exchange;

/// <summary>In which order a studio writes a date.</summary>
public enum DateOrder
{
    DayMonthYear,
    MonthDayYear,
    YearMonthDay,
}

/// <summary>Reads a day from a file: 2026-11-25, or the studio's own order where that can mean one day only.</summary>
public static class DateText
{
    /// <summary>What to write instead, for every message.</summary>
    private const string Example = "Write it as 2026-11-14.";

    private static readonly char[] Marks = ['-', '/', '.', ' '];

    /// <summary>The order of a culture's short date.</summary>
    public static DateOrder OrderOf(CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        var pattern = culture.DateTimeFormat.ShortDatePattern;
        return pattern.StartsWith('y') ? DateOrder.YearMonthDay
            : pattern.IndexOf('M', StringComparison.Ordinal) < pattern.IndexOf('d', StringComparison.Ordinal) ? DateOrder.MonthDayYear : DateOrder.DayMonthYear;
    }

    /// <summary>The day, or a sentence that says why there is none. Years have four digits; 03/04/2026 could be two days and is not guessed.</summary>
    public static (DateOnly? Day, string? Why) Read(string text, DateOrder own)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Trim().Split(Marks, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != 3 || !parts.All(p => p.Length is >= 1 and <= 4 && p.All(char.IsAsciiDigit)))
        {
            return (null, $"“{text}” is not a day. {Example}");
        }

        var numbers = Array.ConvertAll(parts, p => int.Parse(p, CultureInfo.InvariantCulture));
        if (parts[0].Length == 4)
        {
            return Day(numbers[0], numbers[1], numbers[2]) is { } iso ? (iso, null) : (null, $"There is no day “{text}”. {Example}");
        }

        if (parts[2].Length != 4)
        {
            return (null, $"“{text}” has no year of four digits. {Example}");
        }

        var (dayFirst, monthFirst) = (Day(numbers[2], numbers[1], numbers[0]), Day(numbers[2], numbers[0], numbers[1]));
        if (dayFirst is not null && monthFirst is not null && dayFirst != monthFirst)
        {
            return (null, $"“{text}” could be two days. {Example}");
        }

        var read = own switch { DateOrder.DayMonthYear => dayFirst, DateOrder.MonthDayYear => monthFirst, _ => null };
        return read is not null ? (read, null) : (null, $"“{text}” is not a day as this studio writes it. {Example}");
    }

    private static DateOnly? Day(int year, int month, int day) =>
        year >= 1 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month) ? new DateOnly(year, month, day) : null;
}
