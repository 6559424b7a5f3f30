using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Water in alcohol throws scent out as a haze: the more scent, the stronger the alcohol has to be. What counts is the
/// strength of the alcohol and water by themselves, whatever else is in the bottle.
/// </summary>
public sealed class AlcoholTooWeak : AdviceRule
{
    /// <summary>% vol of alcohol and water by themselves; common practice, no source.</summary>
    private const double LimitPercentVolume = 95;

    /// <summary>Share of scent by weight above which haze is likely rather than possible; common practice, no source.</summary>
    private const decimal LimitLoad = 0.05m;

    public override string Key => "alcohol-too-weak";

    public override string Title => "Alcohol weak for the load";

    public override string AppliesTo =>
        "A liquid with scent in ethanol of 70 to 95 % vol, reckoned as alcohol and water by themselves, and no solubiliser.";

    public override string Reason =>
        "Water left in the alcohol throws part of the scent out as a haze, sooner in the cold; the more scent, the likelier.";

    public override Citation Source => new("Alcohol of about 190 US proof (95 % vol) for more than 5 % of scent", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Alcohol of 90 % vol 88, fragrance 12.",
        ExampleLines.Spray(ExampleLines.Oil(12m), ExampleLines.Alcohol(88m, 90m)),
        [
            (AdviceKind.Warn, "Haze is likely: 12.00 % of scent in alcohol that is 90.0 % vol by itself. From 95 % vol up it mostly stays clear; the more scent, the stronger. Use stronger alcohol or less scent, and chill a sample before you fill."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        bool applies = basis is { Form: ProductForm.Liquid, IsCarriedByWater: false, AlcoholPercentVolume: < LimitPercentVolume }
            && basis.Scent.Count > 0 && basis.ShareOf(MaterialKind.Solubiliser) == 0;
        if (!applies)
        {
            yield break;
        }

        double strength = basis.AlcoholPercentVolume!.Value;
        decimal scent = basis.Load.OfTotal;
        decimal measure = scent * (decimal)(LimitPercentVolume - strength);
        WorkingStep workings = Step($"Alcohol and water by themselves {strength:0.00} % vol, limit {LimitPercentVolume:0} % vol; scent {100 * scent:0.00} % by weight, limit {100 * LimitLoad:0} %.");
        yield return scent > LimitLoad
            ? Give(AdviceKind.Warn, $"Haze is likely: {100 * scent:0.00} % of scent in alcohol that is {strength:0.0} % vol by itself. From {LimitPercentVolume:0} % vol up it mostly stays clear; the more scent, the stronger. Use stronger alcohol or less scent, and chill a sample before you fill.", [], measure, workings)
            : Give(AdviceKind.Note, $"Haze is possible: the alcohol is {strength:0.0} % vol by itself, below {LimitPercentVolume:0}. With {100 * scent:0.00} % of scent it often stays clear all the same. Chill a sample before you fill.", [], measure, workings);
    }
}
