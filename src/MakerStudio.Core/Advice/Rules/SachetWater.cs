using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Dry matter keeps because it is dry.
/// </summary>
public sealed class SachetWater : AdviceRule
{
    public override string Key => "sachet-water";

    public override string Title => "Water in dry matter";

    public override string AppliesTo =>
        "A sachet with more than a trace of water.";

    public override string Reason =>
        "Damp petals grow mould inside a sealed bag within days.";

    public override Citation Source => new("Potpourri is made dry; the trace is our own limit", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Petals 94, fragrance 4, water 2.",
        ExampleLines.Of(new Sachet(), ExampleLines.Oil(4m), ExampleLines.Water(2m), ExampleLines.Petals(94m)),
        [
            (AdviceKind.Stop, "2.00 % of it is water: dry matter grows mould with it. Leave it out, or dry it through before it is packed and record that."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Form == ProductForm.Dry && basis.Water > AdviceBasis.TraceShare)
        {
            yield return Give(
                AdviceKind.Stop,
                $"{100 * basis.Water:0.00} % of it is water: dry matter grows mould with it. Leave it out, or dry it through before it is packed and record that.",
                basis.Lines.Where(basis.HoldsWaterOrAlcohol),
                (decimal)basis.Water,
                Step($"Water {100 * basis.Water:0.00} % by weight; a trace is {100 * AdviceBasis.TraceShare:0.0} %."));
        }
    }
}
