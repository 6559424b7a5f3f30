using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>EUH sentences: allergens below the limit of the class, and what dries skin.</summary>
public sealed class SupplementalSaid : LabelRule
{
    public override string Key => "supplemental";

    public override string Title => "EUH statements, allergen text";

    public override IReadOnlyList<Citation> Sources { get; } = [new("CLP Art. 25 and Annex II, 1.2 and 2.8", DataStatus.Memory)];

    public override LabelExample Example => new(
        "two sensitisers below their class", LabelExamples.Spray, ElementState.There, "EUH208 Contains linalool, citral. May produce an allergic reaction.");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Hazards.Supplemental.Count == 0
            ? NotNeeded("assessment", "Nothing asks for one.")
            : There(
                string.Join(", ", facts.Hazards.Supplemental.Select(each => each.Code)),
                [CodedParagraph.Of(facts.Hazards.Supplemental)]);
    }
}
