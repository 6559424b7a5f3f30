using System.Globalization;

namespace MakerStudio.Core.Quantities;

/// <summary>Reads the digits of a typed number: which mark is the decimal one, which are thousands marks.</summary>
internal static class NumberText
{
    private const int DigitsInGroup = 3;

    // With at most 12 decimals behind them, 15 leading digits fit a decimal without rounding; of more the last may not, and is asked for.
    private const int MostWholeDigits = 15;

    internal abstract record Reading;

    internal sealed record Number(decimal Value, string? Interpretation) : Reading;

    internal sealed record NoNumber(string Why) : Reading;

    /// <summary>Where the number ends: digits and marks, and blanks or apostrophes that stand before a digit.</summary>
    internal static int EndOf(string text)
    {
        int end = 0;
        while (end < text.Length)
        {
            char c = text[end];
            bool inNumber = char.IsAsciiDigit(c) || c is '.' or ','
                || (end > 0 && c is ' ' or '\'' && end + 1 < text.Length && char.IsAsciiDigit(text[end + 1]));
            if (!inNumber)
            {
                break;
            }

            end++;
        }

        return text.AsSpan(0, end).ContainsAnyInRange('0', '9') ? end : 0;
    }

    internal static Reading Read(string text, QuantityTextOptions options)
    {
        char? mark = DecimalMarkOf(text, options.DecimalMark, out bool couldBeEither);
        string[] halves = mark is { } m ? text.Split(m) : [text];
        if (halves.Length > 2)
        {
            return new NoNumber("There is more than one decimal mark in this number.");
        }

        string decimals = halves.Length == 2 ? halves[1] : "";
        if (Ungroup(halves[0]) is not { } whole || !decimals.All(char.IsAsciiDigit))
        {
            return new NoNumber("The thousands marks do not part this number into threes. Leave them out.");
        }

        whole = whole.TrimStart('0');
        string kept = decimals.TrimEnd('0');
        if (kept.Length > options.MaxDecimals)
        {
            return new NoNumber(options.MaxDecimals == 0
                ? "Type a whole number here. Nothing is rounded for you."
                : FormattableString.Invariant($"At most {options.MaxDecimals} decimals are kept here. Nothing is rounded for you."));
        }

        if (whole.Length > MostWholeDigits)
        {
            return new NoNumber("This number is too large.");
        }

        decimal value = decimal.Parse($"0{whole}.{kept}", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return value > options.Largest ? new NoNumber("This number is too large.")
            : value.Scale < kept.Length ? new NoNumber("This number has more digits than can be kept. Nothing is rounded for you.")
            : new Number(value, couldBeEither ? Interpretation(value, mark is not null, options.DecimalMark) : null);
    }

    /// <summary>
    /// The mark that parts whole from decimals by what the number itself shows: 1,5 and 1.500,25 show the comma,
    /// 1.234.567 too, since its points part thousands. Null when it shows none, or could be read either way.
    /// </summary>
    internal static char? ClearMark(string text)
    {
        char? mark = DecimalMarkOf(text, '.', out bool couldBeEither);
        return couldBeEither ? null
            : mark ?? (text.Contains('.', StringComparison.Ordinal) ? ',' : text.Contains(',', StringComparison.Ordinal) ? '.' : null);
    }

    /// <summary>
    /// The decimal mark in use, or null when there is none. A lone mark with three digits behind it and one to three
    /// before it could be either; then the studio's own mark decides.
    /// </summary>
    private static char? DecimalMarkOf(string text, char ownMark, out bool couldBeEither)
    {
        couldBeEither = false;
        int lastPoint = text.LastIndexOf('.');
        int lastComma = text.LastIndexOf(',');
        if (lastPoint < 0 && lastComma < 0)
        {
            return null;
        }

        int last = Math.Max(lastPoint, lastComma);
        char mark = text[last];
        if (lastPoint >= 0 && lastComma >= 0)
        {
            return mark;
        }

        if (text.IndexOf(mark) != last)
        {
            return null;
        }

        string before = text[..last];
        bool threesAround = text.Length - last - 1 == DigitsInGroup
            && before.Length is >= 1 and <= DigitsInGroup && before.All(char.IsAsciiDigit) && before[0] != '0';
        couldBeEither = threesAround;
        return threesAround && mark != ownMark ? null : mark;
    }

    /// <summary>Takes out one kind of thousands mark if the groups are all of three, otherwise null.</summary>
    private static string? Ungroup(string whole)
    {
        char[] marks = whole.Where(c => !char.IsAsciiDigit(c)).Distinct().ToArray();
        if (marks.Length == 0)
        {
            return whole;
        }

        string[] groups = whole.Split(marks[0]);
        bool inThrees = marks.Length == 1
            && groups[0].Length is >= 1 and <= DigitsInGroup
            && groups.Skip(1).All(group => group.Length == DigitsInGroup);
        return inThrees ? string.Concat(groups) : null;
    }

    private static string Interpretation(decimal value, bool hasDecimals, char ownMark)
    {
        string shown = value.ToString("0.############", CultureInfo.InvariantCulture).Replace('.', ownMark);
        return hasDecimals
            ? $"Read as {shown}, the mark parting whole from decimals."
            : $"Read as {shown}, the mark parting thousands.";
    }
}
