using System.Collections.Frozen;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Label;

/// <param name="Why">Why it is not on the label.</param>
public sealed record LeftOut(string Code, string Text, string Why);

/// <param name="Chosen">At most six, in the order of their codes.</param>
public sealed record PrecautionsChosen(IReadOnlyList<LabelStatement> Chosen, IReadOnlyList<LeftOut> LeftOut);

/// <summary>
/// Chooses precautionary statements within six. Statements for workplaces, and those that ask for a measure the
/// maker would have to name, are left out for the public; one that says the same less strictly gives way. For the
/// public one statement on disposal stays. The order of preference is our own: what prevents fire and poisoning
/// first, then first aid for the gravest contact, then the rest.
/// Example: Flam. Liq. 2, Eye Irrit. 2, Skin Sens. 1 for the public: P102, P210, P280, P303+P361+P353, P305+P351+P338, P501.
/// </summary>
public static class PrecautionChoice
{
    /// <summary>Statements on a label, unless the gravity of the hazards asks for more.</summary>
    public const int AtMost = 6;

    private const string ForChildren = "P102";
    private const string Disposal = "P501";

    public static Citation Source { get; } = new("CLP Art. 28", DataStatus.Memory);

    private static readonly string[] ByPreference =
    [
        ForChildren, "P210", "P211", "P251", "P301+P310", "P301+P330+P331", "P331", "P260", "P284", "P263", "P280", "P305+P351+P338",
        "P303+P361+P353", "P302+P352", "P304+P340", "P342+P311", "P308+P311", "P308+P313", "P410+P412", "P310", "P301+P312", "P333+P313",
        "P261", "P271", "P273", "P405", "P391", "P314", "P312", "P201", "P202", "P270", "P264", "P332+P313", "P337+P313", "P233",
    ];

    private static readonly FrozenDictionary<string, int> Preference =
        ByPreference.Select((code, place) => (code, place)).ToFrozenDictionary(each => each.code, each => each.place, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> NotForThePublic = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["P272"] = "For workplaces.",
        ["P240"] = "For workplaces that pour large amounts.",
        ["P241"] = "For workplaces that pour large amounts.",
        ["P242"] = "For workplaces that pour large amounts.",
        ["P243"] = "For workplaces that pour large amounts.",
        ["P320"] = "Only where a specific treatment is named.",
        ["P321"] = "Only where a specific treatment is named.",
        ["P370+P378"] = "Only where water would make a fire worse.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly (string Stays, string Goes)[] SaysTheSame =
    [
        ("P260", "P261"), ("P333+P313", "P332+P313"), ("P301+P330+P331", "P331"), ("P301+P330+P331", "P330"),
        ("P301+P310", "P301+P312"), ("P303+P361+P353", "P302+P352"), ("P308+P311", "P308+P313"), ("P403+P233", "P233"),
        ("P403+P235", "P403"), ("P310", "P312"), ("P301+P310", "P310"),
    ];

    public static PrecautionsChosen Of(IReadOnlyCollection<HazardCategory> categories, bool forGeneralPublic)
    {
        Dictionary<string, List<HazardCategory>> asked = Asked(categories, forGeneralPublic);
        HandOver(asked);
        var leftOut = new List<LeftOut>();
        foreach (string code in asked.Keys.ToList())
        {
            if (WhyNot(code, asked, forGeneralPublic) is { } why)
            {
                leftOut.Add(new(code, PStatements.Texts[code], why));
            }
        }

        List<string> wanted = [.. asked.Keys.Except(leftOut.Select(each => each.Code))
            .OrderBy(code => code == Disposal && forGeneralPublic ? -1 : Preference.GetValueOrDefault(code, ByPreference.Length))
            .ThenBy(code => code, StringComparer.Ordinal)];
        leftOut.AddRange(wanted.Skip(AtMost).Select(code => new LeftOut(code, PStatements.Texts[code], "More than six would be on the label.")));
        return new(
            [.. wanted.Take(AtMost).Order(StringComparer.Ordinal).Select(code => new LabelStatement(code, PStatements.Texts[code], asked[code], PStatements.Source))],
            [.. leftOut.OrderBy(each => each.Code, StringComparer.Ordinal)]);
    }

    private static Dictionary<string, List<HazardCategory>> Asked(IReadOnlyCollection<HazardCategory> categories, bool forGeneralPublic)
    {
        var asked = new Dictionary<string, List<HazardCategory>>(StringComparer.Ordinal);
        foreach (HazardCategory category in categories)
        {
            CategoryFacts facts = HazardCategories.Of(category);
            string all = string.Join(' ', facts.Prevention, facts.Response, facts.Storage, facts.Disposal);
            foreach (string code in all.Split(' ', StringSplitOptions.RemoveEmptyEntries).Concat(forGeneralPublic ? [ForChildren, Disposal] : []).Distinct())
            {
                if (!asked.TryGetValue(code, out List<HazardCategory>? by))
                {
                    asked[code] = by = [];
                }

                by.Add(category);
            }
        }

        return asked;
    }

    /// <summary>A statement that says as much as another stands for the other's classes too.</summary>
    private static void HandOver(Dictionary<string, List<HazardCategory>> asked)
    {
        foreach ((string stays, string goes) in SaysTheSame)
        {
            if (asked.TryGetValue(stays, out List<HazardCategory>? own) && asked.TryGetValue(goes, out List<HazardCategory>? others))
            {
                own.AddRange(others.Except(own).ToList());
            }
        }
    }

    private static string? WhyNot(string code, Dictionary<string, List<HazardCategory>> asked, bool forGeneralPublic)
    {
        if (forGeneralPublic && NotForThePublic.TryGetValue(code, out string? why))
        {
            return why;
        }

        string? stronger = SaysTheSame.Where(pair => pair.Goes == code && asked.ContainsKey(pair.Stays)).Select(pair => pair.Stays).FirstOrDefault();
        return stronger is null ? null : $"{stronger} says as much.";
    }
}
