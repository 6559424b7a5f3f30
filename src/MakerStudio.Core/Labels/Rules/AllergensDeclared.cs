using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>
/// Fragrance allergens from the threshold the studio chose. No law read here asks for the list on home fragrance; it
/// never stands in for H317 or EUH208. What those name already is not said twice.
/// </summary>
public sealed class AllergensDeclared : LabelRule
{
    public override string Key => "allergens";

    public override string Title => "Allergens declared";

    public override IReadOnlyList<Citation> Sources { get; } = [new("The studio's own threshold; lists of Reg. (EC) 1223/2009 and (EC) 648/2004 do not reach home fragrance", DataStatus.Secondary)];

    public override LabelExample Example => new(
        "geraniol beside an EUH208 that names linalool", LabelExamples.Spray with { Allergens = ["Linalool", "Geraniol"] }, ElementState.There,
        "Fragrance allergens: geraniol.");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        string said = string.Join(' ', facts.Hazards.Names.Concat(facts.Hazards.Supplemental.Select(each => each.Text)));
        List<string> more = [.. facts.Allergens.Where(each => !said.Contains(each, StringComparison.OrdinalIgnoreCase))];
        return more.Count > 0
            ? There("assessment, your threshold", $"Fragrance allergens: {string.Join(", ", more.Select(Lowered))}.")
            : NotNeeded("assessment, your threshold", facts.Allergens.Count > 0 ? "The hazard elements name them already." : "None reaches your threshold, or you set none.");
    }

    /// <summary>Within a sentence: "Benzyl Benzoate" as "benzyl benzoate", "d-Limonene" as it is.</summary>
    private static string Lowered(string name) => string.Join(' ', name.Split(' ').Select(word =>
        word.Length > 1 && char.IsUpper(word[0]) && char.IsLower(word[1]) ? char.ToLowerInvariant(word[0]) + word[1..] : word));
}
