using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Labels.Rules;

/// <summary>How to use the kind of product without harm. The words stand with the kind in Core/Products.</summary>
public sealed class CautionsOfKind : LabelRule
{
    public override string Key => "cautions";

    public override string Title => "Cautions of the kind";

    public override IReadOnlyList<Citation> Sources { get; } =
        [.. ProductKinds.All.SelectMany(kind => kind.Cautions).Select(caution => caution.From).Distinct()];

    public override LabelExample Example => new(
        "a candle", LabelExamples.Candle, ElementState.There,
        "Never leave it burning alone. Burn it away from anything that can catch fire. Keep it from children and pets. Trim the wick to 5 mm before you light it. Stop when 10 mm of wax is left.");

    public override LabelElement Judge(LabelFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ProductKind kind = ProductKinds.Get(facts.ProductKind);
        return kind.Cautions.Count == 0
            ? NotNeeded("product kind", "This kind is not sold as it is.")
            : There("product kind", [new LabelText([.. Opening(facts, kind), new(string.Join(' ', kind.Cautions.Select(caution => caution.Text)))])])
                with { HasSafetyAlert = Opening(facts, kind).Any() };
    }

    /// <summary>ASTM F2058: the safety alert and the word WARNING before the three rules of a candle.</summary>
    private static IEnumerable<LabelRun> Opening(LabelFacts facts, ProductKind kind) =>
        facts.IsUnitedStates && kind.Cautions.Any(caution => caution.IsFireSafety) ? [new("WARNING", true), new(" ")] : [];
}
