using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Vanillin does not burn well: it crusts on the wick.
/// </summary>
public sealed class VanillinWick : AdviceRule
{
    // Vanillin's share of the scent by weight; own limits.
    private const double NoteFrom = 0.01;
    private const double WarnFrom = 0.05;

    public override string Key => "vanillin-wick";

    public override string Title => "Vanillin and the wick";

    public override string AppliesTo =>
        "A container candle whose scent holds 1 % of vanillin or more.";

    public override string Reason =>
        "Vanillin melts high and burns badly; it crusts on the wick, which then starves, smokes or mushrooms.";

    public override Citation Source => new("Candle makers go up a wick size for vanillin scents", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Candle, fragrance oil with 6 % of vanillin.",
        ExampleLines.Of(new ContainerCandle(), ExampleLines.Line(ExampleLines.OilMaterial with { VanillinPercent = 6m }, 8m), ExampleLines.Wax(92m)),
        [
            (AdviceKind.Warn, "The scent holds 6.00 % of vanillin, which crusts on wicks. Test three sizes, the next larger among them, burnt to the end."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        double share = Math.Round(basis.VanillinOfScent, AdviceBasis.ShareDecimals);
        if (basis.Formula.Kind is ContainerCandle && share >= NoteFrom)
        {
            yield return Give(
                share < WarnFrom ? AdviceKind.Note : AdviceKind.Warn,
                $"The scent holds {100 * share:0.00} % of vanillin, which crusts on wicks. Test three sizes, the next larger among them, burnt to the end.",
                basis.Lines.Where(line => basis.VanillinIn(line) > 0),
                (decimal)share,
                Step($"Vanillin {100 * share:0.00} % of the scent; a note from {100 * NoteFrom:0} %, a warning from {100 * WarnFrom:0} %."));
        }
    }
}
