using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>Black symbol on white in a red square set on its point; which ones stay is ruled by precedence.</summary>
public sealed class PictogramsShown : LabelRule
{
    public override string Key => "pictograms";

    public override string Title => "Pictograms";

    public override IReadOnlyList<Citation> Sources { get; } = [PictogramPrecedence.Source, new("CLP Annex I 1.2.1 and Annex V", DataStatus.Read)];

    public override LabelExample Example => new("flame and exclamation mark: pictures, no words", LabelExamples.Spray, ElementState.There, "");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        IReadOnlyList<Pictogram> shown = facts.Hazards.Pictograms;
        return shown.Count == 0
            ? NotNeeded("assessment", facts.IsUnitedStates ? "The Acts ask for the skull alone, on what is highly toxic." : "No class asks for one.")
            : There("assessment", [], string.Join(", ", shown.Select(each => $"{Pictograms.Code(each)} {Pictograms.Name(each)}"))) with { Pictograms = shown };
    }
}
