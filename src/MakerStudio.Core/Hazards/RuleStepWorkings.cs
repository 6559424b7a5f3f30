using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards;

/// <summary>The comparisons of the hazard rules as steps that a page opens, figures in the reader's culture.</summary>
public static class RuleStepWorkings
{
    /// <summary>Every comparison, reached or not, each followed by what its ingredients brought to it.</summary>
    public static IReadOnlyList<WorkingStep> Workings(this HazardsFound found)
    {
        ArgumentNullException.ThrowIfNull(found);
        return [.. found.Judgements.SelectMany(judgement => judgement.Result.Steps.SelectMany(step => step.Workings(judgement.Rule.Title)))];
    }

    /// <param name="rule">The rule's title.</param>
    public static IEnumerable<WorkingStep> Workings(this RuleStep step, string rule)
    {
        ArgumentNullException.ThrowIfNull(step);
        var source = new Source(step.LimitFrom.Text, step.LimitFrom.Status);
        string becomes = step.Becomes is { } category ? $": {HazardCategories.Name(category)}" : "";
        string unit = step.Unit.Length == 0 ? "" : " " + step.Unit;
        yield return step.IsReached
            ? new(rule, $"{step.Says}: {step.Value:0.####}{unit} against {step.Limit:0.####}{unit}, reached{becomes}.", source)
            : new(rule, $"{step.Says}: {step.Value:0.####}{unit} against {step.Limit:0.####}{unit}, not reached.", source);
        foreach (Contribution from in step.From)
        {
            yield return Of(rule, from, source);
        }
    }

    private static WorkingStep Of(string rule, Contribution from, Source source)
    {
        Ingredient ingredient = from.Ingredient;
        Guid? line = ingredient.Lines is [var only] ? only.LineId : null;
        string lines = string.Join(", ", ingredient.Lines.Select(each => each.LineName).Distinct(StringComparer.Ordinal));
        string by = lines == ingredient.Name ? "" : $" from {lines}";
        return from switch
        {
            { Limit: { } limit } => new(rule, $"{ingredient.Name}{by}: {ingredient.Percent:0.####} % against its own {limit:0.####}, counts {from.Counted:0.######}.", source, line),
            { Weight: not 1 } => new(rule, $"{ingredient.Name}{by}: {ingredient.Percent:0.####} % × {from.Weight:0.##} counts {from.Counted:0.####}.", source, line),
            _ => new(rule, $"{ingredient.Name}{by}: {ingredient.Percent:0.####} %.", source, line),
        };
    }
}
