using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;

namespace MakerStudio.Core.Tests.Advice;

/// <summary>What one rule, or all, says of a formula.</summary>
internal static class AdviceCase
{
    public static AdviceKind[] Kinds(string key, AssessedFormula formula, bool isBeingReleased = false) =>
        [.. Given(key, formula, isBeingReleased).Select(given => given.Kind)];

    public static AdviceGiven[] Given(string key, AssessedFormula formula, bool isBeingReleased = false) =>
        [.. AdviceRules.Get(key).Judge(AdviceBasis.Of(formula, isBeingReleased))];

    public static IReadOnlyList<AdviceGiven> All(AssessedFormula formula, bool isBeingReleased = false) =>
        AdviceRules.Judge(AdviceBasis.Of(formula, isBeingReleased));

    /// <summary>One kind of advice by name, or "" for none.</summary>
    public static string Text(AdviceKind[] kinds) => string.Join(' ', kinds);
}
