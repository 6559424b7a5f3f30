using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Water spoils. Enough alcohol keeps it: 20 % is the usual figure, said of weight by some and of volume by others. By
/// weight is asked for here, the stricter of the two.
/// </summary>
public sealed class WaterWithoutPreservative : AdviceRule
{
    /// <summary>Share of alcohol by weight that keeps it; common practice, no source.</summary>
    private const double KeepsFromShare = 0.20;

    public override string Key => "water-without-preservative";

    public override string Title => "Water and no preservative";

    public override string AppliesTo =>
        "A liquid with water added to it, or with alcohol below 70 % vol, and no preservative.";

    public override string Reason =>
        "Bacteria and mould grow in water within weeks, seen or unseen, and feed on solubilisers and scent.";

    public override Citation Source => new("About 20 % of alcohol keeps a product; counted by weight here", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Water 85, solubiliser 12, fragrance 3.",
        ExampleLines.Of(new RoomSprayWater(), ExampleLines.Oil(3m), ExampleLines.Solubiliser(12m), ExampleLines.Water(85m)),
        [
            (AdviceKind.Warn, "It will spoil: 85.00 % of it is water, there is no preservative, and 0.00 % of alcohol by weight does not keep it. Add a preservative at its maker's share and pH, or bring the alcohol to 20 % by weight."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        bool applies = basis.Form == ProductForm.Liquid && (basis.AddedWater > AdviceBasis.TraceShare || basis.IsCarriedByWater)
            && basis.ShareOf(MaterialKind.Preservative) == 0;
        if (!applies)
        {
            yield break;
        }

        double alcohol = Math.Round(basis.Ethanol + basis.Propanol, AdviceBasis.ShareDecimals);
        decimal measure = (decimal)(KeepsFromShare - alcohol);
        WorkingStep workings = Step($"Water {100 * basis.Water:0.00} %, ethanol and isopropanol {100 * alcohol:0.00} % by weight, limit {100 * KeepsFromShare:0} %.");
        yield return alcohol < KeepsFromShare
            ? Give(AdviceKind.Warn, $"It will spoil: {100 * basis.Water:0.00} % of it is water, there is no preservative, and {100 * alcohol:0.00} % of alcohol by weight does not keep it. Add a preservative at its maker's share and pH, or bring the alcohol to {100 * KeepsFromShare:0} % by weight.", [], measure, workings)
            : Give(AdviceKind.Note, $"The alcohol keeps it: {100 * alcohol:0.00} % by weight, and from about {100 * KeepsFromShare:0} % no preservative is usual.", [], measure, workings);
    }
}
