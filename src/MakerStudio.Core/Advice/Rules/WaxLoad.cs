using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// What a wax cannot hold sweats out, pools on top and burns badly. The maker's sheet has the figure; this is the usual one.
/// </summary>
public sealed class WaxLoad : AdviceRule
{
    /// <summary>Share of the wax by weight; common practice, no source.</summary>
    private const decimal MostWaxesHold = 0.12m;

    public override string Key => "wax-load";

    public override string Title => "More scent than most waxes hold";

    public override string AppliesTo =>
        "A candle or melt with more than 12 % of scent on the wax.";

    public override string Reason =>
        "Scent the wax cannot hold sweats out, gathers on top, clogs the wick and can catch fire.";

    public override Citation Source => new("Most waxes hold 10 to 12 %; the wax maker's sheet decides", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Candle with 13 parts of fragrance to 100 of wax.",
        ExampleLines.Of(new ContainerCandle(), ExampleLines.Oil(13m), ExampleLines.Wax(87m)),
        [
            (AdviceKind.Warn, "Scent is 14.94 % of the wax, and most waxes hold no more than 12 %. The rest sweats out and can catch fire on the pool. Look at the wax maker's sheet, then use less."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Form == ProductForm.Wax && basis.Load.IsAbove(MostWaxesHold))
        {
            yield return Give(
                AdviceKind.Warn,
                $"Scent is {100 * basis.Load.OfBasis:0.00} % of the wax, and most waxes hold no more than {100 * MostWaxesHold:0} %. The rest sweats out and can catch fire on the pool. Look at the wax maker's sheet, then use less.",
                [.. basis.Scent, .. basis.OfKind(MaterialKind.Wax)],
                basis.Load.OfBasis,
                Step($"Scent {100 * basis.Load.OfTotal:0.00} % of the total, {100 * basis.Load.OfBasis:0.00} % of the wax; limit {100 * MostWaxesHold:0} %."));
        }
    }
}
