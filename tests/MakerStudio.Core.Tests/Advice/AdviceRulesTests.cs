using System.Globalization;
using MakerStudio.Core.Advice;

namespace MakerStudio.Core.Tests.Advice;

/// <summary>Every rule of advice is listed, cited and shown with an example that comes out as it says.</summary>
public class AdviceRulesTests
{
    public static TheoryData<string> Keys => [.. AdviceRules.All.Select(rule => rule.Key)];

    [Fact]
    public void Rules_EveryTypeInTheAssembly_IsListedOnce()
    {
        var types = typeof(AdviceRule).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(AdviceRule)) && !type.IsAbstract);
        Assert.Equal(types.Select(type => type.Name).Order(), AdviceRules.All.Select(rule => rule.GetType().Name).Order());
        Assert.Equal(AdviceRules.All.Count, AdviceRules.All.Select(rule => rule.Key).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Rule_IsCitedAndSaysWhenAndWhy(string key)
    {
        AdviceRule rule = AdviceRules.Get(key);
        Assert.Matches("^[a-z0-9-]+$", rule.Key);
        Assert.NotEmpty(rule.Title);
        Assert.EndsWith(".", rule.AppliesTo, StringComparison.Ordinal);
        Assert.EndsWith(".", rule.Reason, StringComparison.Ordinal);
        Assert.True(rule.Source.Text.Length > 5);
        Assert.EndsWith(".", rule.Example.Says, StringComparison.Ordinal);
        Assert.Equal(1m, rule.Example.Formula.Lines.Sum(line => line.Fraction));
        Assert.NotEmpty(rule.Example.Gives);
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Rule_Example_ComesOutAsItSays(string key)
    {
        AdviceRule rule = AdviceRules.Get(key);
        AdviceGiven[] given = [.. rule.Judge(AdviceBasis.Of(rule.Example.Formula, rule.Example.IsBeingReleased))];
        Assert.Equal(rule.Example.Gives, given.Select(each => (each.Kind, each.Says(CultureInfo.InvariantCulture))));
        Assert.All(given, each =>
        {
            Assert.Equal(rule.Key, each.Rule);
            Assert.NotEmpty(each.Workings);
            Assert.All(each.Workings, step => Assert.NotEmpty(step.Says(CultureInfo.InvariantCulture)));
        });
    }

    [Fact]
    public void Page_NamesEveryRule()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "MakerStudio.sln")))
        {
            folder = folder.Parent;
        }

        string page = File.ReadAllText(Path.Combine(folder!.FullName, "docs", "science", "advice.md"));
        Assert.All(AdviceRules.All, rule => Assert.Contains($"| `{rule.Key}` |", page, StringComparison.Ordinal));
    }
}
