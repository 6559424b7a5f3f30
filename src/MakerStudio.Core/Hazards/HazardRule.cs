using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards;

/// <summary>What one ingredient brings to a step.</summary>
/// <param name="Counted">What entered the sum: a share, a share over its limit, or a weighted share.</param>
/// <param name="Weight">The factor on the share: an M-factor, ten times and so on; 1 for none.</param>
/// <param name="Limit">The ingredient's own limit in per cent where it has one.</param>
public sealed record Contribution(Ingredient Ingredient, decimal Counted, decimal Weight = 1, decimal? Limit = null);

/// <summary>One comparison of a rule: a sum or a single share against its limit, reached or not.</summary>
/// <param name="Says">What is compared, in words.</param>
/// <param name="Unit">"%", or "" for a sum of shares over limits.</param>
/// <param name="Becomes">The category when it is reached; null where the step decides no category.</param>
/// <param name="LimitFrom">Source of the limit and how well it is known.</param>
public sealed record RuleStep(
    string Says,
    decimal Value,
    decimal Limit,
    string Unit,
    bool IsReached,
    HazardCategory? Becomes,
    IReadOnlyList<Contribution> From,
    Citation LimitFrom);

/// <param name="Code">The hazard statement, with the letters of the ingredient that decided.</param>
/// <param name="By">The comparison that gave it, with its ingredients and lines.</param>
/// <param name="IsAssumed">The deciding fact is unknown, and the worse case stands in for it.</param>
public sealed record HazardFinding(HazardCategory Category, string Code, RuleStep By, bool IsAssumed = false);

/// <summary>A supplemental sentence for the label.</summary>
/// <param name="Code">EUH208; or "names" for allergens that are named beside H317 or H334.</param>
public sealed record SupplementalSentence(string Code, string Text, IReadOnlyList<string> Names, RuleStep By);

/// <summary>Something nobody knows, and what that means for the result.</summary>
/// <param name="Class">The class it bears on; null for all.</param>
/// <param name="Percent">Share of the mixture it is about.</param>
public sealed record UnknownHazard(string What, string Means, HazardClass? Class, decimal? Percent);

/// <summary>What a rule said, reached or not.</summary>
public sealed record RuleResult(
    IReadOnlyList<HazardFinding> Findings,
    IReadOnlyList<RuleStep> Steps,
    IReadOnlyList<SupplementalSentence> Sentences,
    IReadOnlyList<UnknownHazard> Unknown)
{
    public static RuleResult None { get; } = new([], [], [], []);

    public static RuleResult Of(IReadOnlyList<RuleStep> steps, params IReadOnlyList<UnknownHazard> unknown) =>
        new([], steps, [], unknown);

    public static RuleResult Of(IReadOnlyList<RuleStep> steps, HazardFinding? finding, params IReadOnlyList<UnknownHazard> unknown) =>
        new(finding is null ? [] : [finding], steps, [], unknown);
}

/// <summary>A mixture whose result is known, to read beside the rule; a test works it through.</summary>
/// <param name="Says">The case in a sentence.</param>
/// <param name="Gives">Names of categories and codes of sentences that the rule finds; nothing else.</param>
public sealed record WorkedExample(string Says, MixtureFacts Mixture, IReadOnlyList<string> Gives)
{
    /// <param name="ingredients">Name, per cent by weight, classification as a sheet writes it. The rest is not classified.</param>
    public static MixtureFacts Of(params (string Name, decimal Percent, string Classification)[] ingredients)
    {
        ArgumentNullException.ThrowIfNull(ingredients);
        return new([.. ingredients.Select(each => new HazardLine(
            Guid.Empty,
            each.Name,
            each.Percent,
            MaterialHazards.Of(new ClassifiedSubstance(each.Name, null, new(ClassificationText.Parse(each.Classification).Entries)))))]);
    }
}

/// <summary>
/// One rule of classification by calculation, in a file of its own and one line in <see cref="HazardRules"/>. Rules
/// are pure and do not see each other's results, save through <see cref="Mixture"/>.
/// </summary>
public abstract class HazardRule
{
    /// <summary>Lower-case words with hyphens; never changed once released.</summary>
    public abstract string Key { get; }

    public abstract string Title { get; }

    /// <summary>When the rule applies, in a sentence.</summary>
    public abstract string AppliesTo { get; }

    public abstract IReadOnlyList<Citation> Sources { get; }

    public abstract WorkedExample Example { get; }

    /// <summary>The classes it can give; none for a rule that only adds sentences.</summary>
    public abstract IReadOnlyList<HazardClass> Classes { get; }

    public abstract RuleResult Judge(Mixture mixture);

    /// <summary>At or above the limit; sums of quotients are compared to ten decimals, so that 0.9 + 0.1 reaches 1.</summary>
    protected static bool Reaches(decimal value, decimal limit)
    {
        const int decimals = 10;
        return decimal.Round(value, decimals) >= limit;
    }

    /// <summary>The statement code of the ingredient that weighs most, so that its letters reach the label.</summary>
    protected static string CodeOf(HazardCategory category, IEnumerable<Contribution> from)
    {
        HazardClass hazardClass = HazardCategories.ClassOf(category);
        return from.Select(each => each.Ingredient.Facts.In(hazardClass))
            .FirstOrDefault(entry => entry?.Category == category)?.Code ?? HazardCategories.Of(category).Code;
    }

    /// <summary>The first step that is reached decides; the steps stand from the most severe down.</summary>
    protected static HazardFinding? FirstReached(IEnumerable<RuleStep> steps)
    {
        RuleStep? step = steps.FirstOrDefault(each => each is { IsReached: true, Becomes: not null });
        return step is null ? null : new(step.Becomes!.Value, CodeOf(step.Becomes.Value, step.From), step);
    }
}
