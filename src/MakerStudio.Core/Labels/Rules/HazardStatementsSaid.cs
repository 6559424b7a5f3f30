using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>All hazard statements, less what a small pack may leave out; in the US the principal hazards in capitals.</summary>
public sealed class HazardStatementsSaid : LabelRule
{
    public override string Key => "hazard-statements";

    public override string Title => "Hazard statements";

    public override IReadOnlyList<Citation> Sources { get; } = [HazardStatements.Source, SmallPackRelief.Source, FhsaLabel.ElementsSource];

    public override LabelExample Example => new(
        "a candle that sensitises", LabelExamples.Candle, ElementState.There,
        "H317 May cause an allergic skin reaction. H412 Harmful to aquatic life with long lasting effects.");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.Hazards.Statements.Count == 0)
        {
            return NotNeeded("assessment", "No class asks for one.");
        }

        if (facts.IsUnitedStates)
        {
            return There("assessment", [LabelText.Of(string.Join(' ', facts.Hazards.Statements.Select(each => $"{each.Text}.")), isBold: true)]);
        }

        List<CodedText> said = [.. facts.Hazards.Statements.Where(each => !SmallPack.LeavesOut(facts, each.Code))];
        return said.Count == 0
            ? NotNeeded("assessment", SmallPack.Note(facts, facts.Hazards.Statements)!)
            : There("assessment", [CodedParagraph.Of(said)], SmallPack.Note(facts, facts.Hazards.Statements));
    }
}
