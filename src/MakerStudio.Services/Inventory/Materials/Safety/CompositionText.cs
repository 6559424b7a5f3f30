using System.Globalization;
using System.Text.RegularExpressions;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Materials;

namespace MakerStudio.Services.Inventory;

/// <summary>A line that did not become a row.</summary>
/// <param name="Number">Counted from 1, empty lines included.</param>
public sealed record LineNotRead(int Number, string Text, string Why);

/// <summary>What was read of a pasted composition.</summary>
public sealed record CompositionReading(IReadOnlyList<SubstanceLine> Rows, IReadOnlyList<LineNotRead> NotRead);

/// <summary>
/// Reads a composition pasted from section 3 of a sheet, a line a substance: "name; CAS; low–high; classes". Fields may
/// also be apart by tabs, as a table is copied. CAS and classes may be missing; an EC number is passed over. Ranges as
/// sheets write them: "1–5", "1 - 5 %", "≥ 1 - &lt; 5", "&lt; 1", "2.5".
/// </summary>
public static partial class CompositionText
{
    private const int LongestLine = 2000;

    public static CompositionReading Read(string? text)
    {
        var rows = new List<SubstanceLine>();
        var notRead = new List<LineNotRead>();
        var lines = (text ?? "").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim();
            if (line.Length == 0)
            {
                continue;
            }

            var (row, why) = line.Length > LongestLine ? (null, "This line is too long for one substance.") : ReadLine(line);
            if (row is not null)
            {
                rows.Add(row);
            }
            else
            {
                notRead.Add(new(i + 1, line, why));
            }
        }

        return new(rows, notRead);
    }

    private static (SubstanceLine? Row, string Why) ReadLine(string line)
    {
        var separator = line.Contains('\t', StringComparison.Ordinal) ? '\t' : ';';
        var fields = line.Split(separator, StringSplitOptions.TrimEntries);
        string? cas = null;
        (decimal Low, decimal High)? range = null;
        var classes = new List<string>();
        foreach (var field in fields.Skip(1).Where(f => f.Length > 0))
        {
            if (range is null && Number().Match(field) is { Success: true } number)
            {
                // Three digits in the middle make it an EC number, which is passed over.
                cas ??= number.Groups["middle"].Length == 2 ? number.Groups["number"].Value : null;
            }
            else if (range is null && ReadRange(field) is { } read)
            {
                range = read;
            }
            else
            {
                classes.Add(field);
            }
        }

        if (fields[0].Length == 0 || range is not { } percent)
        {
            return (null, fields[0].Length == 0 ? "The name is missing." : "No range in per cent was found. Write: name; CAS; low–high; classes.");
        }

        if (cas is not null && !CasNumber.TryParse(cas, out _, out var why))
        {
            return (null, why);
        }

        var stated = string.Join("; ", classes);
        return ClassificationText.Parse(stated).NotRead is { Count: > 0 } odd
            ? (null, $"Not read: “{string.Join("”, “", odd)}”.")
            : (new SubstanceLine
            {
                Name = fields[0], Cas = cas, LowPercent = percent.Low, HighPercent = percent.High,
                Hazards = new HazardLines { Classes = stated.Length == 0 ? null : stated },
            }, "");
    }

    private static (decimal Low, decimal High)? ReadRange(string field)
    {
        if (Range().Match(field) is { Success: true } range)
        {
            return Ordered(Value(range, "low"), Value(range, "high"));
        }

        return One().Match(field) is not { Success: true } one ? null
            : one.Groups["below"].Success ? Ordered(0, Value(one, "value"))
            : one.Groups["above"].Success ? Ordered(Value(one, "value"), 100)
            : Ordered(Value(one, "value"), Value(one, "value"));
    }

    private static (decimal, decimal)? Ordered(decimal low, decimal high) => low <= high && high <= 100 ? (low, high) : null;

    private static decimal Value(Match match, string group) =>
        decimal.Parse(match.Groups[group].Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?:CAS|EC|EINECS)?[\s:.\-]*(?:No\.?)?[\s:.]*(?<number>\d{2,7}[-‐–](?<middle>\d{2,3})[-‐–]\d)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Number();

    [GeneratedRegex(@"^(?:≥|>=|>)?\s*(?<low>\d{1,3}(?:[.,]\d{1,6})?)\s*%?\s*(?:[-‐–—−]|to)\s*(?:≤|<=|<)?\s*(?<high>\d{1,3}(?:[.,]\d{1,6})?)\s*%?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Range();

    [GeneratedRegex(@"^(?:(?<below>≤|<=|<)|(?<above>≥|>=|>))?\s*(?<value>\d{1,3}(?:[.,]\d{1,6})?)\s*%?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex One();
}
