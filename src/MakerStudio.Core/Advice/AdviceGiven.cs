using System.Globalization;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice;

/// <summary>How much a piece of advice weighs, the gravest last.</summary>
public enum AdviceKind
{
    /// <summary>Good news.</summary>
    Good,

    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Likely to go wrong.</summary>
    Warn,

    /// <summary>Do not release without a recorded reason.</summary>
    Stop,
}

/// <summary>One piece of advice on one formula.</summary>
/// <param name="Rule">Key of the rule.</param>
/// <param name="Saying">The sentences, with figures; written out in the reader's culture by <see cref="Says"/>.</param>
/// <param name="Lines">The lines it is about; empty where it is about the whole.</param>
/// <param name="Measure">The figure that decides, so told that a higher one is graver; null where there is none.</param>
/// <param name="Workings">The figures it rests on.</param>
public sealed record AdviceGiven(
    string Rule,
    AdviceKind Kind,
    string Title,
    FormattableString Saying,
    IReadOnlyList<AssessedLine> Lines,
    decimal? Measure,
    IReadOnlyList<WorkingStep> Workings)
{
    /// <summary>
    /// What it is about, to tie an override to: ids of the materials, sorted, apart by commas; empty for the whole. Of
    /// materials, because lines get new ids from version to version.
    /// </summary>
    public string Subject { get; } = string.Join(',', Lines.Select(line => line.Material.Id).Distinct().Order());

    public string Says(CultureInfo culture) => Saying.ToString(culture);

    public override string ToString() => $"{Kind}: {Title} {Says(CultureInfo.InvariantCulture)}";
}

/// <summary>Advice that somebody overrode, as it stood then. Reason, person and time are kept with it elsewhere.</summary>
/// <param name="Measure">Of the advice at that time.</param>
public sealed record OverriddenAdvice(string Rule, string Subject, AdviceKind Kind, decimal? Measure)
{
    /// <summary>Decimals at which measures are compared: a shift in the sixth is rounding.</summary>
    private const int MeasureDecimals = 4;

    public static OverriddenAdvice Of(AdviceGiven given)
    {
        ArgumentNullException.ThrowIfNull(given);
        return new(given.Rule, given.Subject, given.Kind, given.Measure);
    }

    /// <summary>
    /// Whether the override still answers a piece of advice. It lapses when the advice is about other materials (one
    /// joined or left), became graver in kind, or its deciding figure is worse than when it was overridden.
    /// </summary>
    public bool Answers(AdviceGiven given)
    {
        ArgumentNullException.ThrowIfNull(given);
        return given.Rule == Rule
            && given.Subject == Subject
            && given.Kind <= Kind
            && !(given.Measure is { } now && Measure is { } then && decimal.Round(now, MeasureDecimals) > decimal.Round(then, MeasureDecimals));
    }
}
