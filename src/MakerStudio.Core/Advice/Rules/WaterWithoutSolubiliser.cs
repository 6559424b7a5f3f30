using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Oil does not stay in water by itself. Strong alcohol holds some water and oil together, as colognes of 70 % vol and
/// more show; below that it does not.
/// </summary>
public sealed class WaterWithoutSolubiliser : AdviceRule
{
    public override string Key => "water-without-solubiliser";

    public override string Title => "Water and scent, no solubiliser";

    public override string AppliesTo =>
        "A liquid with scent and no solubiliser, with water added to it, or carried by weak alcohol. It will separate where water is the larger carrier and alcohol and water by themselves are below 70 % vol; else it may.";

    public override string Reason => "Scent oils do not dissolve in water. Without a solubiliser or strong alcohol they gather in drops and rise or sink.";

    public override Citation Source => new("Oil needs a solubiliser in water; colognes stay clear from about 70 % vol", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Water 80, alcohol of 96 % vol 17, fragrance 3.",
        ExampleLines.Spray(ExampleLines.Water(80m), ExampleLines.Alcohol(17m), ExampleLines.Oil(3m)),
        [(AdviceKind.Stop, "It will separate: 81.05 % of it is water, and nothing holds the 3.00 % of scent in it. Add a solubiliser, stirred into the oil first, or leave the water out.")]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        bool applies = basis.Form == ProductForm.Liquid && basis.Scent.Count > 0 && basis.ShareOf(MaterialKind.Solubiliser) == 0
            && (basis.AddedWater > AdviceBasis.TraceShare || basis.IsCarriedByWater);
        if (!applies)
        {
            yield break;
        }

        double water = 100 * basis.Water;
        decimal scent = 100 * basis.Load.OfTotal;
        WorkingStep[] workings = [Step($"Water {water:0.00} % by weight, of it {100 * basis.AddedWater:0.00} % added as such; alcohol and water by themselves {basis.AlcoholPercentVolume ?? 0:0.0} % vol; scent {scent:0.00} %.")];
        yield return basis.IsCarriedByWater
            ? Give(AdviceKind.Stop, $"It will separate: {water:0.00} % of it is water, and nothing holds the {scent:0.00} % of scent in it. Add a solubiliser, stirred into the oil first, or leave the water out.", [], (decimal)basis.Water, workings)
            : Give(AdviceKind.Warn, $"It may separate: {water:0.00} % of it is water and there is no solubiliser. The other carriers may hold the {scent:0.00} % of scent, or may not. Leave the water out, or make 50 g, chill it and look.", [], (decimal)basis.Water, workings);
    }
}
