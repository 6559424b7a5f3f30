using MakerStudio.Core.Hazards;

namespace MakerStudio.Core.Assessing;

/// <summary>What a sheet's wording came to.</summary>
/// <param name="NotRead">What was not understood, each as a sentence with the words as typed. What was understood is in the facts.</param>
public sealed record StatedReading(HazardFacts Facts, IReadOnlyList<string> NotRead);

/// <summary>
/// Reads <see cref="StatedHazards"/>. What the sheet states overrules; what it leaves out comes from the defaults, where
/// there are any; what neither has is not known.
/// </summary>
public static class StatedHazardsReading
{
    private static readonly HazardClass[] AllClasses = Enum.GetValues<HazardClass>();

    /// <param name="defaults">The built-in table's facts of the substance; null where there are none.</param>
    public static StatedReading Read(this StatedHazards stated, HazardFacts? defaults = null)
    {
        ArgumentNullException.ThrowIfNull(stated);
        var notRead = new List<string>();
        ClassificationReading? classes = Classes(stated.Classes, notRead);
        List<SpecificLimit> limits = [.. Limits(stated.Limits, notRead)];
        List<AcuteEstimate> estimates = [.. Estimates(stated, notRead)];
        IReadOnlyList<HazardEntry> entries = classes?.Entries ?? defaults?.Entries ?? [];
        HashSet<HazardClass> entered = [.. entries.Select(entry => HazardCategories.ClassOf(entry.Category))];
        if (defaults is not null)
        {
            // Of the table only what goes with a class the sheet has: a limit for another class would say nothing.
            HashSet<HazardClass> limited = [.. limits.Select(limit => HazardCategories.ClassOf(limit.Category))];
            limits.AddRange(defaults.Limits.Where(limit =>
                HazardCategories.ClassOf(limit.Category) is var each && entered.Contains(each) && !limited.Contains(each)));
            HashSet<AcuteRoute> estimated = [.. estimates.Select(estimate => estimate.Route)];
            estimates.AddRange(defaults.Estimates.Where(estimate =>
                entered.Contains(AcuteRanges.ClassOf(estimate.Route)) && !estimated.Contains(estimate.Route)));
        }

        HashSet<HazardClass> byEstimate = [.. estimates.Select(estimate => AcuteRanges.ClassOf(estimate.Route))];
        return new(
            new(
                entries,
                limits,
                estimates,
                Factor(stated.AcuteM, "acute", notRead) ?? defaults?.AcuteM,
                Factor(stated.ChronicM, "chronic", notRead) ?? defaults?.ChronicM,
                driesSkin: classes?.DriesSkin ?? defaults?.DriesSkin ?? false,
                notKnown: classes is null ? (defaults?.NotKnown ?? AllClasses).Where(each => !byEstimate.Contains(each)) : [],
                from: classes is null ? defaults?.From : null),
            notRead);
    }

    /// <summary>Null where the sheet states no classes, or nothing of what it states was understood.</summary>
    private static ClassificationReading? Classes(string? text, List<string> notRead)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        ClassificationReading reading = ClassificationText.Parse(text);
        notRead.AddRange(reading.NotRead.Select(piece =>
            $"\"{Short(piece)}\" is not a class of a safety data sheet. Write it as \"Skin Sens. 1B H317\"."));
        return reading.Entries.Count == 0 && reading.NotRead.Count > 0 ? null : reading;
    }

    private static IReadOnlyList<SpecificLimit> Limits(string? text, List<string> notRead)
    {
        SpecificLimitReading reading = SpecificLimitText.Parse(text);
        notRead.AddRange(reading.NotRead.Select(piece =>
            $"\"{Short(piece)}\" is not a specific limit. Write the class and the per cent, as \"Skin Sens. 1A 0.01\"."));
        return reading.Limits;
    }

    private static IEnumerable<AcuteEstimate> Estimates(StatedHazards stated, List<string> notRead)
    {
        (AcuteRoute Route, decimal? Value)[] all =
        [
            (AcuteRoute.Oral, stated.OralMgPerKg), (AcuteRoute.Dermal, stated.DermalMgPerKg),
            (AcuteRoute.InhalationVapour, stated.VapourMgPerLitre), (AcuteRoute.InhalationDustOrMist, stated.MistMgPerLitre),
        ];
        foreach ((AcuteRoute route, decimal? value) in all)
        {
            if (value > 0)
            {
                yield return new(route, value.Value);
            }
            else if (value is not null)
            {
                notRead.Add($"An acute toxicity estimate ({AcuteRanges.InWords(route)}) is above 0.");
            }
        }
    }

    private static int? Factor(int? stated, string which, List<string> notRead)
    {
        if (stated < 1)
        {
            notRead.Add($"The {which} M-factor is 1 or more.");
        }

        return stated >= 1 ? stated : null;
    }

    private static string Short(string piece)
    {
        const int longest = 60;
        return piece.Length <= longest ? piece : piece[..longest] + "…";
    }
}
