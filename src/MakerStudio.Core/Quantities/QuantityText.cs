namespace MakerStudio.Core.Quantities;

/// <summary>
/// Reads a quantity as people type it: "1.5", "1,5 kg", "3 320", "480 g", "2 oz". Knows no culture: the decimal
/// mark is handed in. Nothing is rounded and nothing throws for any text.
/// </summary>
public static class QuantityText
{
    /// <summary>Longest text looked at. A quantity with its unit is far shorter.</summary>
    public const int LongestText = 64;

    private const int LargestMaxDecimals = 28; // as many as a decimal holds
    private const string NotANumber = "This is not a number. Type digits, such as 12.5, and a unit after them if you like.";

    public static QuantityReading Parse(string? text, QuantityTextOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (options.DecimalMark is not ('.' or ',') || options.MaxDecimals is < 0 or > LargestMaxDecimals)
        {
            throw new ArgumentException("The decimal mark is '.' or ',' and decimals run from 0 to 28.", nameof(options));
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            return new QuantityReading.Unreadable("Nothing is typed here yet.");
        }

        if (text.Length > LongestText)
        {
            return new QuantityReading.Unreadable("This is too long for a quantity. Type a number and a unit.");
        }

        string plain = Plain(text).Trim();
        bool negative = plain.StartsWith('-');
        string unsigned = negative || plain.StartsWith('+') ? plain[1..].TrimStart() : plain;
        int end = NumberText.EndOf(unsigned);
        string unit = string.Join(' ', unsigned[end..].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (WhyNotNumber(unsigned, end, unit) is { } why)
        {
            return new QuantityReading.Unreadable(why);
        }

        return NumberText.Read(unsigned[..end], options) switch
        {
            NumberText.Number number => WithUnit(number, negative, unit, options),
            NumberText.NoNumber no => new QuantityReading.Unreadable(no.Why),
            _ => throw new InvalidOperationException("A number is read or it is not."),
        };
    }

    /// <summary>
    /// The decimal mark a number shows by itself, '.' or ','; null when it has none, could be read either way (1,234) or
    /// is no number. A table of numbers is written with one mark, so the clear ones speak for the others.
    /// </summary>
    public static char? ClearMark(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string unsigned = Plain(text).Trim().TrimStart('-', '+');
        int end = text.Length > LongestText ? 0 : NumberText.EndOf(unsigned);
        return end == 0 ? null : NumberText.ClearMark(unsigned[..end]);
    }

    /// <summary>Full-width forms become plain ones, every kind of space a blank, every minus and apostrophe one kind.</summary>
    private static string Plain(string text) => string.Create(text.Length, text, static (span, source) =>
    {
        for (int i = 0; i < source.Length; i++)
        {
            span[i] = source[i] switch
            {
                >= '\uFF01' and <= '\uFF5E' => (char)(source[i] - 0xFEE0),
                '\u2212' => '-',
                '\u2019' => '\'',
                char c when char.IsWhiteSpace(c) => ' ',
                char c => c,
            };
        }
    });

    private static string? WhyNotNumber(string text, int end, string unit)
    {
        if (end == 0)
        {
            return text.Length > 0 && char.IsDigit(text[0])
                ? "Type the number with the digits 0 to 9."
                : NotANumber;
        }

        bool exponent = unit.Length > 1 && unit[0] is 'e' or 'E' && (char.IsAsciiDigit(unit[1]) || unit[1] is '+' or '-');
        if (exponent)
        {
            return "Write the number out in full, without an exponent.";
        }

        return unit.Any(char.IsDigit) ? NotANumber : null;
    }

    private static QuantityReading WithUnit(NumberText.Number number, bool negative, string unit, QuantityTextOptions options)
    {
        if (negative && !options.AllowNegative)
        {
            return new QuantityReading.Unreadable("A quantity here cannot be below zero.");
        }

        if (number.Value == 0 && !options.AllowZero)
        {
            return new QuantityReading.Unreadable("A quantity here must be above zero.");
        }

        decimal value = negative && number.Value != 0 ? -number.Value : number.Value;
        if (unit.Length == 0)
        {
            return new QuantityReading.Read(value, null, number.Interpretation);
        }

        if (UnitWords.Find(unit) is { } known)
        {
            return new QuantityReading.Read(value, known, number.Interpretation);
        }

        if (UnitWords.IsAnsweredBy(unit, options.ShownUnit))
        {
            return new QuantityReading.Read(value, options.ShownUnit, number.Interpretation);
        }

        return UnitWords.Question(unit) is { } question
            ? new QuantityReading.Asks(question.Question, question.Choices, value)
            : new QuantityReading.Unreadable("The unit behind the number is not known here. Use kg, g, mg, L, mL, lb, oz (weight), fl oz (US), fl oz (imp) or each.");
    }
}
