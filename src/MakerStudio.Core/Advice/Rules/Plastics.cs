using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// What the pack is made of is not in a formula, so this is a reminder and never a finding.
/// </summary>
public sealed class Plastics : AdviceRule
{
    public override string Key => "plastics";

    public override string Title => "Use glass, or test the pump";

    public override string AppliesTo =>
        "Every liquid with scent or alcohol.";

    public override string Reason =>
        "Alcohol, scent oils and terpenes soften and craze polystyrene, ABS and acrylic; caps crack and pumps seize.";

    public override Citation Source => new("Glass, HDPE or PET after a leak test of four weeks, upright and upside down", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Alcohol room spray.",
        ExampleLines.Spray(ExampleLines.Oil(12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Note, "Alcohol and scent can craze polystyrene, ABS and acrylic. Use glass, or HDPE or PET that held for 4 weeks, upright and upside down."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        bool hasAlcohol = basis.Ethanol + basis.Propanol > AdviceBasis.TraceShare;
        if (basis.Form != ProductForm.Liquid || (basis.Scent.Count == 0 && !hasAlcohol))
        {
            yield break;
        }

        string what = (hasAlcohol, basis.Scent.Count > 0, basis.Citrus.Count > 0) switch
        {
            (true, true, true) => "Alcohol, scent and citrus terpenes",
            (true, true, false) => "Alcohol and scent",
            (true, false, _) => "Alcohol",
            (false, _, true) => "Scent and citrus terpenes",
            _ => "Scent oils",
        };
        yield return Give(
            AdviceKind.Note,
            $"{what} can craze polystyrene, ABS and acrylic. Use glass, or HDPE or PET that held for 4 weeks, upright and upside down.",
            [],
            null,
            Step($"Scent {100 * basis.Load.OfTotal:0.00} %, ethanol and isopropanol {100 * (basis.Ethanol + basis.Propanol):0.00} % by weight."));
    }
}
