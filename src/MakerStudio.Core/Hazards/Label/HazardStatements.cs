using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Label;

/// <summary>A statement on the label.</summary>
/// <param name="For">The categories that ask for it.</param>
public sealed record LabelStatement(string Code, string Text, IReadOnlyList<HazardCategory> For, Citation From);

/// <summary>
/// The hazard statements of a label: all, less evident repetition. H314 covers H318, H410 covers H400; H411 to H413
/// do not cover H400. Example: Skin Corr. 1B with Eye Dam. 1 says H314 alone.
/// </summary>
public static class HazardStatements
{
    public static Citation Source { get; } = new("CLP Art. 27 and Annex III", DataStatus.Secondary);

    private static readonly Citation Letters = new("CLP Annex III, Table 1.1 and Annex VI 1.1.2.1.2 (letters of H350, H360, H361)", DataStatus.Memory);

    /// <summary>H360 and H361 with the letters that say which effect is proven (capital) or suspected (small).</summary>
    private static readonly Dictionary<string, string> WithLetters = new(StringComparer.Ordinal)
    {
        ["H350i"] = "May cause cancer by inhalation",
        ["H360F"] = "May damage fertility",
        ["H360D"] = "May damage the unborn child",
        ["H360FD"] = "May damage fertility. May damage the unborn child",
        ["H360Fd"] = "May damage fertility. Suspected of damaging the unborn child",
        ["H360Df"] = "May damage the unborn child. Suspected of damaging fertility",
        ["H361f"] = "Suspected of damaging fertility",
        ["H361d"] = "Suspected of damaging the unborn child",
        ["H361fd"] = "Suspected of damaging fertility. Suspected of damaging the unborn child",
    };

    /// <summary>By code.</summary>
    public static IReadOnlyList<LabelStatement> Of(IReadOnlyCollection<HazardEntry> entries)
    {
        bool corrosive = entries.Any(entry => entry.Code == "H314");
        bool chronic1 = entries.Any(entry => entry.Code == "H410");
        return [.. entries
            .Where(entry => !(corrosive && entry.Code == "H318") && !(chronic1 && entry.Code == "H400"))
            .SelectMany(Parts)
            .GroupBy(part => part.Code, StringComparer.Ordinal)
            .OrderBy(same => same.Key, StringComparer.Ordinal)
            .Select(same => new LabelStatement(same.Key, same.First().Text, [.. same.Select(part => part.Category)], same.First().From))];
    }

    /// <summary>An aerosol has two statements in one row: "H222+H229".</summary>
    private static IEnumerable<(string Code, string Text, HazardCategory Category, Citation From)> Parts(HazardEntry entry)
    {
        CategoryFacts facts = HazardCategories.Of(entry.Category);
        string[] codes = entry.Code.Split('+');
        if (codes.Length == 1)
        {
            return [WithLetters.TryGetValue(entry.Code, out string? text)
                ? (entry.Code, text + ".", entry.Category, Letters)
                : (entry.Code, facts.Statement + ".", entry.Category, facts.From)];
        }

        string[] texts = facts.Statement.Split(". ");
        return codes.Zip(texts, (code, each) => (code, each + ".", entry.Category, facts.From));
    }
}
