using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;

namespace MakerStudio.Core.Tests.Hazards;

/// <summary>Every rule is listed, cited and shown with an example that comes out as it says.</summary>
public class HazardRulesTests
{
    public static TheoryData<string> Keys => [.. HazardRules.All.Select(rule => rule.Key)];

    [Fact]
    public void Rules_EveryTypeInTheAssembly_IsListedOnce()
    {
        var types = typeof(HazardRule).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(HazardRule)) && !type.IsAbstract);
        Assert.Equal(types.OrderBy(type => type.Name), HazardRules.All.Select(rule => rule.GetType()).OrderBy(type => type.Name));
        Assert.Equal(HazardRules.All.Count, HazardRules.All.Select(rule => rule.Key).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Rule_IsCitedAndSaysWhenItApplies(string key)
    {
        HazardRule rule = HazardRules.All.Single(each => each.Key == key);
        Assert.Matches("^[a-z0-9-]+$", rule.Key);
        Assert.NotEmpty(rule.Title);
        Assert.EndsWith(".", rule.AppliesTo, StringComparison.Ordinal);
        Assert.NotEmpty(rule.Sources);
        Assert.All(rule.Sources, source => Assert.True(source.Text.Length > 5));
        Assert.NotEmpty(rule.Example.Says);
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Rule_Example_ComesOutAsItSays(string key)
    {
        HazardRule rule = HazardRules.All.Single(each => each.Key == key);
        RuleResult result = rule.Judge(new Mixture(rule.Example.Mixture));
        Assert.Equal(
            rule.Example.Gives.Order(StringComparer.Ordinal),
            result.Findings.Select(finding => HazardCategories.Name(finding.Category))
                .Concat(result.Sentences.Select(sentence => sentence.Code))
                .Order(StringComparer.Ordinal));
        Assert.NotEmpty(result.Steps);
        Assert.All(result.Findings, finding => Assert.Contains(HazardCategories.ClassOf(finding.Category), rule.Classes));
    }

    [Fact]
    public void Categories_StandInTheTableOnceAndInOrder() =>
        Assert.Equal(Enum.GetValues<HazardCategory>(), HazardCategories.All.Select(facts => facts.Category));

    [Fact]
    public void Categories_EveryPrecaution_HasAText() => Assert.All(
        HazardCategories.All.SelectMany(facts => $"{facts.Prevention} {facts.Response} {facts.Storage} {facts.Disposal}".Split(' ', StringSplitOptions.RemoveEmptyEntries)),
        code => Assert.Contains(code, PStatements.Texts.Keys));

    [Fact]
    public void Categories_OfOneClass_HaveRanksApart() => Assert.All(
        HazardCategories.All.GroupBy(facts => facts.Class),
        same => Assert.Equal(same.Count(), same.Select(facts => facts.Rank).Distinct().Count()));
}
