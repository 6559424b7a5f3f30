using System.Buffers;
using System.Collections.Frozen;
using System.Text;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Materials;

/// <summary>
/// The CAS number that goes with a name, over every built-in table: a data sheet may give a name only. Whole names,
/// whatever their case; "limonene oil" is not "limonene".
/// </summary>
public static class SubstanceNames
{
    private static readonly string[] TablesWithNames = ["voc_substances.csv", "fragrance_allergens.csv", "fragrance_limits.csv"];

    private static readonly SearchValues<char> InNumbers = SearchValues.Create("0123456789-");

    private static readonly Lazy<FrozenDictionary<string, string>> Numbers = new(Read);

    /// <summary>Null where no table has the name.</summary>
    public static string? CasOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Numbers.Value.GetValueOrDefault(Plain(name));
    }

    /// <summary>What two entries of one substance have in common: its number, else its name in capitals.</summary>
    internal static string Identity(string name, string? cas) =>
        string.IsNullOrWhiteSpace(cas) ? CasOf(name) ?? Plain(name).ToUpperInvariant() : PlainCas(cas);

    /// <summary>Spaces around it and other dashes do not make another number.</summary>
    private static string PlainCas(string cas) => !cas.AsSpan().ContainsAnyExcept(InNumbers) ? cas
        : CasNumber.TryParse(cas, out CasNumber? number, out _) ? number.Text
        : cas.Trim();

    /// <summary>One space between words, and Greek letters written out.</summary>
    private static string Plain(string name)
    {
        string written = !Ascii.IsValid(name)
            ? name.Replace("α", "alpha", StringComparison.Ordinal).Replace("β", "beta", StringComparison.Ordinal)
                .Replace("γ", "gamma", StringComparison.Ordinal).Replace("δ", "delta", StringComparison.Ordinal)
            : name;
        string trimmed = written.Trim();
        return trimmed.Contains("  ", StringComparison.Ordinal)
            ? string.Join(' ', trimmed.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            : trimmed;
    }

    private static FrozenDictionary<string, string> Read()
    {
        var numbers = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach ((string name, string cas) in Pairs())
        {
            numbers.TryAdd(Plain(name), cas);
        }

        return numbers.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);
    }

    private static IEnumerable<(string Name, string Cas)> Pairs()
    {
        foreach (DataRow row in TablesWithNames.SelectMany(DataTable.Read))
        {
            string cas = row.Texts("cas")[0];
            yield return (row.Text("name"), cas);
            foreach (string also in row.Texts("also"))
            {
                yield return (also, cas);
            }
        }

        foreach (Substance substance in Substances.All)
        {
            yield return (substance.Name, substance.Cas.Text);
            int bracket = substance.Name.IndexOf(" (", StringComparison.Ordinal);
            if (bracket > 0)
            {
                yield return (substance.Name[..bracket], substance.Cas.Text);
            }
        }

        foreach (SubstanceRow row in SubstanceTable.Rows)
        {
            yield return (row.Name, row.Cas);
        }
    }
}
