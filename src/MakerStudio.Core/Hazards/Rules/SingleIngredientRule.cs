using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <param name="Is">Category of the ingredient.</param>
/// <param name="Percent">Generic limit by weight; a specific limit of the ingredient stands in for it.</param>
/// <param name="Becomes">Category of the mixture.</param>
public sealed record SingleLimit(HazardCategory Is, decimal Percent, HazardCategory Becomes, Citation From);

/// <summary>Classes where shares are never added: one ingredient at or above its limit decides.</summary>
public abstract class SingleIngredientRule : HazardRule
{
    /// <summary>From the most severe outcome down.</summary>
    public abstract IReadOnlyList<SingleLimit> Limits { get; }

    public override IReadOnlyList<Citation> Sources => [.. Limits.Select(limit => limit.From).Distinct()];

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var steps = new List<RuleStep>();
        var findings = new List<HazardFinding>();
        foreach (HazardClass hazardClass in Classes)
        {
            List<RuleStep> own = [.. StepsOf(hazardClass, mixture.Singly(hazardClass))];
            steps.AddRange(own);
            if (FirstReached(own) is { } finding)
            {
                findings.Add(finding);
            }
        }

        return new(findings, steps, [], []);
    }

    private IEnumerable<RuleStep> StepsOf(HazardClass hazardClass, IReadOnlyList<Ingredient> ingredients)
    {
        List<Ingredient> having = [.. ingredients.Where(each => each.Facts.In(hazardClass) is not null)];
        foreach (var outcome in Limits.Where(limit => HazardCategories.ClassOf(limit.Becomes) == hazardClass).GroupBy(limit => limit.Becomes))
        {
            List<(Contribution Counted, SingleLimit By)> near = [.. outcome
                .SelectMany(limit => having.Where(each => each.Facts.In(hazardClass)!.Category == limit.Is).Select(each => (Counted(each, limit), limit)))
                .OrderByDescending(each => each.Item1.Counted / each.Item1.Limit)
                .ThenBy(each => each.Item1.Ingredient.Name, StringComparer.Ordinal)];
            if (near.Count > 0)
            {
                yield return Step(outcome.Key, near);
            }
        }
    }

    private static RuleStep Step(HazardCategory becomes, List<(Contribution Counted, SingleLimit By)> near)
    {
        (Contribution decisive, SingleLimit by) = near[0];
        bool isReached = decisive.Counted >= decisive.Limit;
        return new(
            $"each {HazardCategories.Name(by.Is)} ingredient on its own",
            decisive.Counted,
            decisive.Limit!.Value,
            "%",
            isReached,
            becomes,
            [.. near.Select(each => each.Counted).Where(each => !isReached || each.Counted >= each.Limit)],
            by.From);
    }

    private static Contribution Counted(Ingredient ingredient, SingleLimit limit) =>
        new(ingredient, ingredient.Percent, 1, SpecificLimit(ingredient.Facts, limit) ?? limit.Percent);

    /// <summary>
    /// Of the outcome itself; else of the ingredient's own category, where it has only one outcome; a limit stated
    /// for another sub-category of a sensitiser counts as its own.
    /// </summary>
    private static decimal? SpecificLimit(HazardFacts facts, SingleLimit limit) => facts.LimitFor(limit.Becomes) ?? (
        HazardCategories.ClassOf(limit.Becomes) is HazardClass.SkinSensitisation or HazardClass.RespiratorySensitisation
            ? facts.LimitIn(HazardCategories.ClassOf(limit.Becomes))
            : null);
}
