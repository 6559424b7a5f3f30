using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>The product identifier, and in the US the statement of identity: the scent's name and what the thing is.</summary>
public sealed class NameAndKind : LabelRule
{
    public override string Key => "name";

    public override string Title => "Name and kind";

    public override IReadOnlyList<Citation> Sources { get; } =
        [new("CLP Art. 18(3)(a)", DataStatus.Memory), new("16 CFR 500.4 (statement of identity)", DataStatus.Memory)];

    public override LabelExample Example => new("a spray with no words of its own", LabelExamples.Spray, ElementState.There, "Fig Room spray");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        string kind = string.IsNullOrWhiteSpace(facts.Wording.ProductLine) ? ProductKinds.Get(facts.ProductKind).LabelName : facts.Wording.ProductLine.Trim();
        return There(
            facts.Wording.ProductLine is null ? "formula, product kind" : "formula, your words",
            [LabelText.Of(facts.ScentName), LabelText.Of(kind, isBold: facts.IsUnitedStates)]);
    }
}
