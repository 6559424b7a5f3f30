using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Reeds swell with water and stop drawing; oil and water part in the open bottle.
/// </summary>
public sealed class DiffuserWater : AdviceRule
{
    public override string Key => "diffuser-water";

    public override string Title => "Water in a diffuser";

    public override string AppliesTo =>
        "A reed diffuser with water added.";

    public override string Reason =>
        "Reeds swell with water and stop drawing; the scent parts from it, and an open bottle of water grows mould.";

    public override Citation Source => new("Diffusers are made without water", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Reed diffuser, water 10, DPM 65, fragrance 25.",
        ExampleLines.Of(new ReedDiffuser(), ExampleLines.Oil(25m), ExampleLines.Dpm(65m), ExampleLines.Water(10m)),
        [
            (AdviceKind.Warn, "10.00 % of it is water. Reeds swell and stop drawing, the scent parts from the water, and it grows mould in an open bottle. Leave the water out."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Formula.Kind is ReedDiffuser && basis.AddedWater > AdviceBasis.TraceShare)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{100 * basis.AddedWater:0.00} % of it is water. Reeds swell and stop drawing, the scent parts from the water, and it grows mould in an open bottle. Leave the water out.",
                [],
                (decimal)basis.AddedWater,
                Step($"Water added {100 * basis.AddedWater:0.00} % by weight; a trace is {100 * AdviceBasis.TraceShare:0.0} %."));
        }
    }
}
