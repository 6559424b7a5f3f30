using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>One word; Danger where both would stand.</summary>
public sealed class SignalWordSaid : LabelRule
{
    public override string Key => "signal-word";

    public override string Title => "Signal word";

    public override IReadOnlyList<Citation> Sources { get; } = [HazardLabel.SignalSource, FhsaLabel.ElementsSource];

    public override LabelExample Example => new("Flam. Liq. 2 and Eye Irrit. 2", LabelExamples.Spray, ElementState.There, "DANGER");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Hazards.Signal is { } word
            ? There("assessment", [LabelText.Of(word.ToUpperInvariant(), isBold: true)])
            : NotNeeded("assessment", "No class asks for one.");
    }
}
