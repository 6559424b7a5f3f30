using MakerStudio.Core.Labels;
using MakerStudio.Core.Products;

namespace MakerStudio.Core.Tests.Labels;

/// <summary>Every rule is listed, cited and shown with an example that comes out as it says.</summary>
public class LabelRulesTests
{
    public static TheoryData<string> Keys => [.. LabelRules.All.Select(rule => rule.Key)];

    [Fact]
    public void Rules_EveryTypeInTheAssembly_IsListedOnce()
    {
        var types = typeof(LabelRule).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(LabelRule)) && !type.IsAbstract);
        Assert.Equal(types.OrderBy(type => type.Name), LabelRules.All.Select(rule => rule.GetType()).OrderBy(type => type.Name));
        Assert.Equal(LabelRules.All.Count, LabelRules.All.Select(rule => rule.Key).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Rule_IsCitedAndItsExampleComesOutAsItSays(string key)
    {
        LabelRule rule = LabelRules.All.Single(each => each.Key == key);
        Assert.Matches("^[a-z0-9-]+$", rule.Key);
        Assert.NotEmpty(rule.Title);
        Assert.NotEmpty(rule.Sources);
        Assert.All(rule.Sources, source => Assert.True(source.Text.Length > 5));
        Assert.NotEmpty(rule.Example.Says);

        LabelElement element = rule.Judge(rule.Example.Facts);
        Assert.Equal(rule.Key, element.Key);
        Assert.Equal(rule.Example.State, element.State);
        Assert.Equal(rule.Example.Gives, element.Says);
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Rule_WhatIsNotThere_SaysWhyOrWhatToDoAndPutsNothingOnTheLabel(string key)
    {
        LabelFacts bare = LabelExamples.Bare with { Hazards = LabelExamples.Spray.Hazards, Wording = LabelWording.Usual with { Disposal = " " } };
        foreach (LabelFacts facts in (LabelFacts[])[LabelExamples.Bare, bare, bare with { ProductKind = "pre-blend" }])
        {
            LabelElement element = LabelRules.All.Single(each => each.Key == key).Judge(facts);
            Assert.True(element.State == ElementState.There || (element.Texts.Count == 0 && element.Note is { Length: > 5 }), element.ToString());
        }
    }

    [Fact]
    public void ProductKinds_WhatIsSold_HasCautions() => Assert.All(
        ProductKinds.All,
        kind =>
        {
            Assert.Equal(kind.IsSold, kind.Cautions.Count > 0);
            Assert.All(kind.Cautions, caution => Assert.EndsWith(".", caution.Text, StringComparison.Ordinal));
            Assert.DoesNotContain(',', kind.LabelName);
        });
}
