using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Water and alcohol do not mix with wax: they sputter in hot wax and flare at a flame.
/// </summary>
public sealed class WetWax : AdviceRule
{
    public override string Key => "wet-wax";

    public override string Title => "Water or alcohol in wax";

    public override string AppliesTo =>
        "A candle or melt with more than a trace of water, ethanol or isopropanol.";

    public override string Reason =>
        "They do not mix with wax; in hot wax they boil and spit, and at a flame they flare.";

    public override Citation Source => new("Wax takes oil-soluble additions only; the trace is our own limit", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Candle with 2 % of water.",
        ExampleLines.Of(new ContainerCandle(), ExampleLines.Oil(8m), ExampleLines.Water(2m), ExampleLines.Wax(90m)),
        [
            (AdviceKind.Stop, "2.00 % of it is water or alcohol, which does not mix with wax: it spits in hot wax and flares when lit. Leave it out; use colours and scents made for wax."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        double wet = basis.Water + basis.Ethanol + basis.Propanol;
        if (basis.Form == ProductForm.Wax && wet > AdviceBasis.TraceShare)
        {
            yield return Give(
                AdviceKind.Stop,
                $"{100 * wet:0.00} % of it is water or alcohol, which does not mix with wax: it spits in hot wax and flares when lit. Leave it out; use colours and scents made for wax.",
                basis.Lines.Where(basis.HoldsWaterOrAlcohol),
                (decimal)wet,
                Step($"Water {100 * basis.Water:0.00} %, ethanol {100 * basis.Ethanol:0.00} %, isopropanol {100 * basis.Propanol:0.00} % by weight; a trace is {100 * AdviceBasis.TraceShare:0.0} %."));
        }
    }
}
