using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>Substances that gave the health classes, by name, of which four normally suffice; and allergens named beside H317.</summary>
public sealed class SubstancesNamed : LabelRule
{
    public override string Key => "substances";

    public override string Title => "Substances named";

    public override IReadOnlyList<Citation> Sources { get; } = [HazardLabel.NamesSource];

    public override LabelExample Example => new("a candle that sensitises", LabelExamples.Candle, ElementState.There, "Contains coumarin, cinnamal.");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Hazards.Names.Count == 0
            ? NotNeeded("assessment", "No class asks for a name.")
            : There("assessment", $"Contains {string.Join(", ", facts.Hazards.Names)}.");
    }
}
