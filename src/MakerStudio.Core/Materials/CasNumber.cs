using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace MakerStudio.Core.Materials;

/// <summary>
/// A CAS Registry Number: two to seven digits, two digits, one check digit, as in 64-17-5. The check digit is the sum
/// of the other digits, each times its place counted from the right, modulo 10 (CAS, "Check Digit Verification of CAS
/// Registry Numbers").
/// </summary>
public sealed record CasNumber
{
    private const int ShortestFirstPart = 2;
    private const int LongestFirstPart = 7;
    private const int SecondPart = 2;
    private const int LongestTyped = 40;
    private const int DigitBase = 10;

    [JsonConstructor]
    private CasNumber(string text) => Text = text;

    /// <summary>As it is written, with hyphens: at most 12 characters.</summary>
    public string Text { get; }

    /// <summary>Reads what was typed or pasted: spaces around and any kind of dash are taken.</summary>
    /// <param name="why">What is wrong with it, for the person who typed it.</param>
    public static bool TryParse(string? typed, [NotNullWhen(true)] out CasNumber? number, [NotNullWhen(false)] out string? why)
    {
        number = null;
        why = null;
        string text = typed is null || typed.Length > LongestTyped ? "" : string.Concat(typed.Trim().Select(PlainDash));
        string[] parts = text.Split('-');
        if (parts is not [var first, var second, [var check]]
            || first.Length is < ShortestFirstPart or > LongestFirstPart || second.Length != SecondPart
            || !(first + second + check).All(char.IsAsciiDigit) || first[0] == '0')
        {
            why = "A CAS number has three parts, for example 64-17-5.";
            return false;
        }

        int right = CheckDigit(first + second);
        if (check - '0' != right)
        {
            why = string.Create(CultureInfo.InvariantCulture, $"The last digit of this CAS number does not agree with the others: {first}-{second}- should end in {right}. One digit may be mistyped.");
            return false;
        }

        number = new CasNumber(text);
        return true;
    }

    /// <summary>A number known to be right, for tables in the program.</summary>
    /// <exception cref="FormatException">It is not a CAS number.</exception>
    public static CasNumber Of(string text) =>
        TryParse(text, out CasNumber? number, out string? why) ? number : throw new FormatException($"{text}: {why}");

    public override string ToString() => Text;

    private static int CheckDigit(string digits)
    {
        int sum = 0;
        for (int i = 0; i < digits.Length; i++)
        {
            sum += (digits.Length - i) * (digits[i] - '0');
        }

        return sum % DigitBase;
    }

    private static char PlainDash(char c) => c is >= '\u2010' and <= '\u2015' or '\u2212' ? '-' : c;
}
