using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>The UFI, where a mixture of a health or physical class is sold in the EEA or Northern Ireland.</summary>
public sealed class PoisonCentreCode : LabelRule
{
    public override string Key => "ufi";

    public override string Title => "Poison-centre code (UFI)";

    public override IReadOnlyList<Citation> Sources { get; } = [HazardLabel.UfiSource];

    public override LabelExample Example => new("a spray with a code", LabelExamples.Spray, ElementState.There, "UFI:\u00a0N1QV-R02N-J00M-WQD5");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts switch
        {
            { Ufi: { Length: > 0 } code } => There("label's words", [new LabelText([new("UFI:\u00a0", true), new(code, true)])]),
            { Wording.NeedsNoUfi: true } => NotNeeded("your words", "You marked it as not needed where you sell."),
            { Hazards.NeedsUfi: true } => Missing("needed in the EEA and Northern Ireland", "Enter it in the label's words, or mark it there as not needed where you sell."),
            _ => NotNeeded("assessment", facts.IsUnitedStates || facts.Scheme == Assessing.LabelScheme.GreatBritain ? "This market has none." : "No health or physical class asks for one."),
        };
    }
}
