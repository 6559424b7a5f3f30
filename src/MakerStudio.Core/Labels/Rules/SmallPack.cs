namespace MakerStudio.Core.Labels.Rules;

/// <summary>What a pack of up to 125 mL leaves out where the maker uses the relief.</summary>
internal static class SmallPack
{
    public static bool LeavesOut(LabelFacts facts, string code) => facts.Wording.UsesSmallPackRelief && facts.Hazards.MayLeaveOut.Contains(code);

    /// <summary>Null where nothing is left out.</summary>
    public static string? Note(LabelFacts facts, IEnumerable<CodedText> statements)
    {
        List<string> left = [.. statements.Where(each => LeavesOut(facts, each.Code)).Select(each => each.Code)];
        return left.Count == 0 ? null : $"{string.Join(", ", left)} left out, as a pack of up to 125 mL may.";
    }
}
