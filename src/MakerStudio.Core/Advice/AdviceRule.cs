using MakerStudio.Core.Assessing;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice;

/// <summary>A formula whose advice is known, to read beside the rule; a test works it through.</summary>
/// <param name="Says">The case in a sentence.</param>
/// <param name="Gives">The kind and the words of each piece of advice, in the invariant culture; nothing else.</param>
public sealed record AdviceExample(
    string Says, AssessedFormula Formula, IReadOnlyList<(AdviceKind Kind, string Says)> Gives, bool IsBeingReleased = false);

/// <summary>
/// One rule of advice, in a file of its own and one line in <see cref="AdviceRules"/>. Rules are pure and do not see
/// each other's advice.
/// </summary>
public abstract class AdviceRule
{
    private Source? _source;

    /// <summary>Lower-case words with hyphens; never changed once released, since overrides are kept under it.</summary>
    public abstract string Key { get; }

    public abstract string Title { get; }

    /// <summary>When the rule speaks, in a sentence.</summary>
    public abstract string AppliesTo { get; }

    /// <summary>Why it matters, in a sentence.</summary>
    public abstract string Reason { get; }

    /// <summary>Where the rule is from; <see cref="DataStatus.CommonPractice"/> where nothing published stands behind it.</summary>
    public abstract Citation Source { get; }

    public abstract AdviceExample Example { get; }

    /// <summary>Nothing where the rule is satisfied or does not apply.</summary>
    public abstract IEnumerable<AdviceGiven> Judge(AdviceBasis basis);

    /// <param name="about">Lines; none for the whole.</param>
    protected AdviceGiven Give(
        AdviceKind kind, FormattableString says, IEnumerable<AssessedLine> about, decimal? measure = null, params IReadOnlyList<WorkingStep> workings) =>
        new(Key, kind, Title, says, [.. about], measure, workings);

    /// <summary>The rule's source also stands behind its workings.</summary>
    protected WorkingStep Step(FormattableString says, AssessedLine? line = null) =>
        new(Title, says, _source ??= new(Source.Text, Source.Status), line?.LineId);

    /// <summary>Names to stand in a sentence: "Fig oil, Cedar oil and 3 more".</summary>
    protected static string Names(IReadOnlyList<AssessedLine> lines)
    {
        const int named = 3;
        ArgumentNullException.ThrowIfNull(lines);
        string[] names = [.. lines.Select(line => line.Material.Name).Distinct(StringComparer.Ordinal)];
        return names.Length switch
        {
            <= 1 => string.Concat(names),
            <= named + 1 => $"{string.Join(", ", names[..^1])} and {names[^1]}",
            _ => FormattableString.Invariant($"{string.Join(", ", names[..named])} and {names.Length - named} more"),
        };
    }

    /// <summary>"Fig oil has" or "Fig oil and Cedar oil have".</summary>
    protected static string Verb(IReadOnlyList<AssessedLine> lines, string one, string several)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return lines.Select(line => line.Material.Name).Distinct(StringComparer.Ordinal).Skip(1).Any() ? several : one;
    }
}
