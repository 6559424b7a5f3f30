namespace MakerStudio.Core.Labels;

/// <summary>What a label says, element by element.</summary>
public sealed record LabelContent(LabelFacts Facts, IReadOnlyList<LabelElement> Elements)
{
    public static LabelContent Of(LabelFacts facts) => new(facts, [.. LabelRules.All.Select(rule => rule.Judge(facts))]);

    public IReadOnlyList<LabelElement> Missing => [.. Elements.Where(element => element.State == ElementState.Missing)];

    /// <exception cref="InvalidOperationException">No rule has the key.</exception>
    public LabelElement this[string key] => Elements.First(element => element.Key == key);

    /// <summary>The texts of an element; empty unless it is there.</summary>
    public IReadOnlyList<LabelText> TextsOf(string key) => this[key].Texts;
}
