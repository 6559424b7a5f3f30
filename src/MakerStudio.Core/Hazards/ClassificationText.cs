using System.Collections.Frozen;

namespace MakerStudio.Core.Hazards;

/// <param name="DriesSkin">EUH066 was among them.</param>
/// <param name="NotRead">The pieces that were not understood, as typed.</param>
public sealed record ClassificationReading(IReadOnlyList<HazardEntry> Entries, bool DriesSkin, IReadOnlyList<string> NotRead);

/// <summary>
/// Reads a classification as section 2 or 3 of a safety data sheet writes it: "Flam. Liq. 2 H225; Eye Irrit. 2, H319".
/// The long form, "Skin sensitization (Category 1B), H317", is taken too. Classes are apart by semicolons or lines. A hazard statement alone is taken too, as its category, and as the most
/// severe one where several share it and none is the plain "1".
/// </summary>
public static class ClassificationText
{
    private const string DrySkin = "EUH066";
    private const string AcuteToxicity = "ACUTETOX";
    private const string SingleExposure3 = "STOTSE3";
    private const string LongForm = "CATEGORY";
    private const string EyeIrritant = "EYEIRRIT2";
    private const string EyeIrritantOfUsSheets = "EYEIRRIT2A";
    private const int LongestPiece = 200;

    private static readonly char[] Separators = [';', '\n', '\r'];
    private static readonly char[] WordBreaks = [' ', ',', '(', ')', ':', '\t', '/'];

    private static readonly FrozenDictionary<string, HazardCategory> ByName = HazardCategories.All
        .ToFrozenDictionary(facts => Bare(facts.Name), facts => facts.Category);

    private static readonly FrozenDictionary<string, HazardCategory> ByCode = HazardCategories.All
        .GroupBy(facts => facts.Code, StringComparer.Ordinal)
        .ToFrozenDictionary(same => same.Key, MostFitting, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> Routes = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["ORAL"] = "ORAL", ["DERMAL"] = "DERMAL", ["INHALATION"] = "INHALATION", ["INHAL"] = "INHALATION",
        ["VAPOUR"] = "INHALATION", ["VAPOR"] = "INHALATION", ["DUST"] = "INHALATION", ["MIST"] = "INHALATION", ["GAS"] = "INHALATION",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static ClassificationReading Parse(string? text)
    {
        var entries = new List<HazardEntry>();
        var notRead = new List<string>();
        bool driesSkin = false;
        foreach (string piece in (text ?? "").Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (Bare(piece) is "NOTCLASSIFIED")
            {
                continue;
            }

            string[] words = [.. piece.Split(WordBreaks, StringSplitOptions.RemoveEmptyEntries).Select(CapitalFirst)];
            driesSkin |= words.Contains(DrySkin, StringComparer.OrdinalIgnoreCase);
            List<HazardEntry> read = piece.Length > LongestPiece ? [] : Read(words);
            entries.AddRange(read);
            if (read.Count == 0 && !words.All(word => word.Equals(DrySkin, StringComparison.OrdinalIgnoreCase)))
            {
                notRead.Add(piece);
            }
        }

        return new([.. entries.Distinct()], driesSkin, notRead);
    }

    private static List<HazardEntry> Read(string[] words)
    {
        string[] codes = [.. words.Where(IsCode)];
        string name = Bare(string.Concat(words.Where(word => !IsCode(word) && !Routes.ContainsKey(Bare(word)))));
        if (name.Length == 0)
        {
            return [.. codes.Where(code => ByCode.ContainsKey(Plain(code))).Select(code => new HazardEntry(ByCode[Plain(code)], code))];
        }

        if (name.Contains(LongForm, StringComparison.Ordinal))
        {
            return InLongForm(words, codes);
        }

        if (name.StartsWith(AcuteToxicity, StringComparison.Ordinal))
        {
            return ByRoute(name, words, codes);
        }

        if (name == SingleExposure3)
        {
            return [.. codes.Where(code => code is "H335" or "H336").Select(code => new HazardEntry(ByCode[code], code))];
        }

        name = name == EyeIrritantOfUsSheets ? EyeIrritant : name;
        return ByName.TryGetValue(name, out HazardCategory category) ? [Entry(category, codes)] : [];
    }

    /// <summary>"Skin sensitization (Category 1B), H317": the statement names the class, the number the category.</summary>
    private static List<HazardEntry> InLongForm(string[] words, string[] codes)
    {
        string? number = words.LastOrDefault(word => char.IsAsciiDigit(word[0]))?.ToUpperInvariant();
        number = number is "2A" or "2B" ? "2" : number;
        return [.. from code in codes
                   where ByCode.ContainsKey(Plain(code))
                   let numbered = HazardCategories.All.FirstOrDefault(facts => facts.Code == Plain(code) && facts.Name.Split(' ').Contains(number))
                   select new HazardEntry(numbered?.Category ?? ByCode[Plain(code)], code)];
    }

    /// <summary>A hazard statement of the sheet is kept when it is the category's own, with its letters.</summary>
    private static HazardEntry Entry(HazardCategory category, string[] codes)
    {
        string own = HazardCategories.Of(category).Code;
        return new(category, codes.FirstOrDefault(code => Plain(code) == own) ?? own);
    }

    /// <summary>The routes of acute toxicity from its statements or from words; none stated, none read.</summary>
    private static List<HazardEntry> ByRoute(string name, string[] words, string[] codes)
    {
        var routes = codes.Where(ByCode.ContainsKey)
            .Select(code => HazardCategories.ClassOf(ByCode[code]))
            .Where(each => each is HazardClass.AcuteOral or HazardClass.AcuteDermal or HazardClass.AcuteInhalation)
            .Select(each => each.ToString()["Acute".Length..].ToUpperInvariant())
            .Union(words.Where(word => Routes.ContainsKey(Bare(word))).Select(word => Routes[Bare(word)]));
        return [.. routes.Where(route => ByName.ContainsKey(name + route)).Select(route => new HazardEntry(ByName[name + route]))];
    }

    private static HazardCategory MostFitting(IEnumerable<CategoryFacts> same) => same
        .OrderByDescending(facts => facts.Name.EndsWith(" 1", StringComparison.Ordinal) && facts.Class is HazardClass.Skin or HazardClass.SkinSensitisation or HazardClass.RespiratorySensitisation)
        .ThenByDescending(facts => facts.Name.EndsWith(" 1", StringComparison.Ordinal))
        .ThenByDescending(facts => facts.Rank)
        .First().Category;

    private static bool IsCode(string word) =>
        (word.Length >= 4 && word[0] is 'H' && char.IsAsciiDigit(word[1])) || word.StartsWith("EUH", StringComparison.Ordinal);

    /// <summary>A statement typed as h317; the letters behind it mean what their case says, and stay.</summary>
    private static string CapitalFirst(string word) =>
        word.Length >= 4 && word[0] == 'h' && char.IsAsciiDigit(word[1]) ? 'H' + word[1..] : word;

    /// <summary>Without the letters that say how a statement is meant: H360Fd is H360.</summary>
    private static string Plain(string code) => code.TrimEnd('F', 'f', 'D', 'd', 'i');

    private static string Bare(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToUpperInvariant();
}
