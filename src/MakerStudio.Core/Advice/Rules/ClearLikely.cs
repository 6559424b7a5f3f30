using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// The opposite of haze, said as plainly.
/// </summary>
public sealed class ClearLikely : AdviceRule
{
    /// <summary>Of alcohol and water by themselves, % vol; common practice, no source.</summary>
    private const double FromPercentVolume = 95;

    /// <summary>Ethanol's share of the total by weight from which it is what dissolves; own limit.</summary>
    private const double FromShare = 0.5;

    public override string Key => "clear-likely";

    public override string Title => "Clear without filtering is likely";

    public override string AppliesTo =>
        "A liquid that is half ethanol or more, of 95 % vol or more by itself, with no water added and scent within the usual range.";

    public override string Reason =>
        "Strong alcohol dissolves nearly every scent wholly.";

    public override Citation Source => new("Alcohol of about 190 US proof (95 % vol) stays clear", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Alcohol of 96 % vol 88, fragrance 12.",
        ExampleLines.Spray(ExampleLines.Oil(12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Good, "The alcohol is 96.0 % vol and no water is added. Chill a sample anyway."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        bool applies = basis is { Form: ProductForm.Liquid, Ethanol: >= FromShare, AlcoholPercentVolume: >= FromPercentVolume }
            && basis.Scent.Count > 0
            && basis.AddedWater <= AdviceBasis.TraceShare
            && !(basis.Formula.Kind.UsualLoad is { } usual && basis.Load.IsAbove(usual.Highest));
        if (applies)
        {
            yield return Give(
                AdviceKind.Good,
                $"The alcohol is {basis.AlcoholPercentVolume:0.0} % vol and no water is added. Chill a sample anyway.",
                [],
                null,
                Step($"Ethanol {100 * basis.Ethanol:0.00} % by weight, limit {100 * FromShare:0} %; {basis.AlcoholPercentVolume:0.00} % vol by itself, limit {FromPercentVolume:0} % vol; water added {100 * basis.AddedWater:0.00} %."));
        }
    }
}
