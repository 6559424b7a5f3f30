using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Vanillin browns in light and air. The bands are those fragrance suppliers print beside the vanillin content of an
/// oil; they are of the scent and not of the finished product.
/// </summary>
public sealed class VanillinBrowning : AdviceRule
{
    // Vanillin's share of the scent by weight; common practice, no source.
    private const double TanFrom = 0.01;
    private const double BrownFrom = 0.05;
    private const double DarkFrom = 0.10;

    public override string Key => "vanillin-browning";

    public override string Title => "Vanillin browns";

    public override string AppliesTo =>
        "Any product whose scent holds vanillin or ethyl vanillin.";

    public override string Reason =>
        "Vanillin turns yellow to dark brown over weeks, faster in light, whatever the product.";

    public override Citation Source => new("Suppliers' bands of vanillin in the oil: below 1 % slight, to 5 % tan, to 10 % brown, above that dark brown", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "A fragrance oil with 6 % of vanillin.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.OilMaterial with { VanillinPercent = 6m }, 12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Warn, "The scent holds 6.00 % of vanillin: expect it to turn brown, sooner in light. Use an amber or opaque pack, or say on the label that it darkens."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Vanillin <= 0)
        {
            yield break;
        }

        double share = Math.Round(basis.VanillinOfScent, AdviceBasis.ShareDecimals);
        string colour = share < TanFrom ? "slightly yellow" : share < BrownFrom ? "tan" : share < DarkFrom ? "brown" : "dark brown";
        WorkingStep workings = Step($"Vanillin {100 * basis.Vanillin:0.###} % of the total ÷ scent {100 * basis.Load.OfTotal:0.00} % = {100 * share:0.00} % of the scent; tan from {100 * TanFrom:0} %, brown from {100 * BrownFrom:0} %, dark brown from {100 * DarkFrom:0} %.");
        yield return Give(
            share < BrownFrom ? AdviceKind.Note : AdviceKind.Warn,
            $"The scent holds {100 * share:0.00} % of vanillin: expect it to turn {colour}, sooner in light. Use an amber or opaque pack, or say on the label that it darkens.",
            basis.Lines.Where(line => basis.VanillinIn(line) > 0),
            (decimal)share,
            workings);
    }
}
