using System.Globalization;

namespace MakerStudio.Core.Assessing;

/// <summary>One result of an assessment in a line, to stand beside the same of another.</summary>
/// <param name="Key">Names the result; the same in every assessment.</param>
/// <param name="What">The result in words.</param>
/// <param name="Saying">Its value with its unit; written out in the reader's culture by <see cref="Says"/>.</param>
public sealed record AssessmentFact(string Key, string What, FormattableString Saying)
{
    public string Says(CultureInfo culture) => Saying.ToString(culture);

    public override string ToString() => $"{What}: {Says(CultureInfo.InvariantCulture)}";
}

/// <summary>A result that two assessments do not share.</summary>
/// <param name="Before">Null where the first does not have it.</param>
/// <param name="After">Null where the second does not have it.</param>
public sealed record AssessmentDifference(string Key, string What, AssessmentFact? Before, AssessmentFact? After)
{
    /// <summary>
    /// Every result that is not the same in both, as shown: a difference in a decimal that nobody shows is none. In the
    /// order of the first, then what only the second has.
    /// </summary>
    public static IReadOnlyList<AssessmentDifference> Between(Assessment before, Assessment after)
    {
        IReadOnlyList<AssessmentFact> first = AssessmentFacts.Of(before);
        IReadOnlyList<AssessmentFact> second = AssessmentFacts.Of(after);
        Dictionary<string, AssessmentFact> inSecond = second.ToDictionary(fact => fact.Key, StringComparer.Ordinal);
        HashSet<string> inFirst = [.. first.Select(fact => fact.Key)];
        return
        [
            .. from fact in first
               let other = inSecond.GetValueOrDefault(fact.Key)
               where other is null || other.Says(CultureInfo.InvariantCulture) != fact.Says(CultureInfo.InvariantCulture)
               select new AssessmentDifference(fact.Key, fact.What, fact, other),
            .. from fact in second
               where !inFirst.Contains(fact.Key)
               select new AssessmentDifference(fact.Key, fact.What, null, fact),
        ];
    }

    public override string ToString() =>
        $"{What}: {Before?.Says(CultureInfo.InvariantCulture) ?? "–"} → {After?.Says(CultureInfo.InvariantCulture) ?? "–"}";
}
