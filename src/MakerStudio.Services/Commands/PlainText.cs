using System.Globalization;
using System.Text;
using FluentValidation;

namespace MakerStudio.Services;

/// <summary>What typed text may hold. Everything readable is kept as it is; escaping is the page's business.</summary>
public static class PlainText
{
    /// <summary>Marks that may sit on one letter. The most stacked living scripts use three or four; own bound.</summary>
    private const int MostMarksInARow = 4;

    /// <summary>Letters of a search that are looked at; own bound.</summary>
    private const int LongestSearch = 200;

    /// <summary>A name or another text on one line.</summary>
    /// <param name="what">Begins the message: "The name".</param>
    public static IRuleBuilderOptions<T, string?> OneLine<T>(this IRuleBuilderInitial<T, string?> rule, string what, int longest) =>
        rule.Within(what, longest, severalLines: false);

    /// <summary>A note or a method, on as many lines as it needs.</summary>
    public static IRuleBuilderOptions<T, string?> SeveralLines<T>(this IRuleBuilderInitial<T, string?> rule, string what, int longest) =>
        rule.Within(what, longest, severalLines: true);

    /// <summary>Why a text cannot be kept, or null. Length is not looked at.</summary>
    public static string? WhyNot(string? text, bool severalLines)
    {
        var marks = 0;
        foreach (var rune in (text ?? "").EnumerateRunes())
        {
            marks = Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark ? marks + 1 : 0;
            if (marks > MostMarksInARow)
            {
                return "has more marks stacked on one letter than can be read";
            }

            if (WhyNot(rune, severalLines) is { } why)
            {
                return why;
            }
        }

        return null;
    }

    /// <summary>A pattern for ILIKE that finds the text itself: its %, _ and \ are letters. Unreadable characters are left out.</summary>
    public static string ContainsPattern(string? text) => $"%{SamePattern(text)}%";

    /// <summary>A pattern for ILIKE that finds the text without regard to capitals.</summary>
    public static string SamePattern(string? text)
    {
        var pattern = new StringBuilder();
        foreach (var rune in (text ?? "").Trim().EnumerateRunes().Where(r => r != Rune.ReplacementChar && !Rune.IsControl(r)).Take(LongestSearch))
        {
            _ = rune.Value is '%' or '_' or '\\' ? pattern.Append('\\') : pattern;
            pattern.Append(rune.ToString());
        }

        return pattern.ToString();
    }

    private static IRuleBuilderOptions<T, string?> Within<T>(this IRuleBuilderInitial<T, string?> rule, string what, int longest, bool severalLines) =>
        rule.Cascade(CascadeMode.Stop)
            .Must(text => (text?.Length ?? 0) <= longest).WithMessage($"{what} has at most {longest.ToString("N0", CultureInfo.CurrentCulture)} characters.")
            .Must(text => WhyNot(text, severalLines) is null).WithMessage((_, text) => $"{what} {WhyNot(text, severalLines)}.");

    private static string? WhyNot(Rune rune, bool severalLines)
    {
        if (rune == Rune.ReplacementChar)
        {
            return "holds a broken character; type it once more";
        }

        if (rune.Value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069))
        {
            return "holds a hidden character that turns the reading direction; type it without";
        }

        return Rune.IsControl(rune) && !(severalLines && rune.Value is '\n' or '\r' or '\t')
            ? "holds a character that cannot be seen; type it without"
            : null;
    }
}
