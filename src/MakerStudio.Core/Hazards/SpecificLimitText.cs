using System.Globalization;
using System.Text.RegularExpressions;

namespace MakerStudio.Core.Hazards;

/// <param name="NotRead">The pieces that were not understood, as typed.</param>
public sealed record SpecificLimitReading(IReadOnlyList<SpecificLimit> Limits, IReadOnlyList<string> NotRead);

/// <summary>
/// Reads specific concentration limits in per cent as section 3 of a sheet writes them: "Skin Sens. 1A 0.01",
/// "Skin Sens. 1A H317: C ≥ 0.01 %", "Eye Irrit. 2: 10 % ≤ C &lt; 25 %" (of a range the low end). Apart by semicolons or lines.
/// </summary>
public static partial class SpecificLimitText
{
    private const int LongestPiece = 200;
    private const decimal Whole = 100m;
    private static readonly char[] Separators = [';', '\n', '\r'];

    public static SpecificLimitReading Parse(string? text)
    {
        var limits = new List<SpecificLimit>();
        var notRead = new List<string>();
        foreach (string piece in (text ?? "").Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (Read(piece) is { Count: > 0 } read)
            {
                limits.AddRange(read);
            }
            else
            {
                notRead.Add(piece);
            }
        }

        return new(limits, notRead);
    }

    private static List<SpecificLimit> Read(string piece)
    {
        Match match = piece.Length > LongestPiece ? Match.Empty : Range().Match(piece) is { Success: true } range ? range : From().Match(piece);
        if (!match.Success
            || !decimal.TryParse(match.Groups["from"].Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal from)
            || from is <= 0 or > Whole)
        {
            return [];
        }

        ClassificationReading classes = ClassificationText.Parse(match.Groups["class"].Value);
        return classes.NotRead.Count > 0 ? [] : [.. classes.Entries.Select(entry => new SpecificLimit(entry.Category, from))];
    }

    [GeneratedRegex(@"^(?<class>.+?)[\s:,]+(?<from>\d+(?:[.,]\d+)?)\s*%?\s*(?:≤|<=|<)\s*C\b.*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Range();

    [GeneratedRegex(@"^(?<class>.+?)[\s:,]+(?:C\s*)?(?:≥|>=|>|from)?\s*(?<from>\d+(?:[.,]\d+)?)\s*%?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex From();
}
