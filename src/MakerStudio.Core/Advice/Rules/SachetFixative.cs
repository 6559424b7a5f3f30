using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Dry matter lets go of scent within days unless a powdered root or fibre holds it.
/// </summary>
public sealed class SachetFixative : AdviceRule
{
    // Share of the dry weight; common practice, no source.
    private const decimal Least = 0.05m;
    private const decimal Most = 0.10m;

    public override string Key => "sachet-fixative";

    public override string Title => "Scent on dry matter wants a fixative";

    public override string AppliesTo =>
        "A sachet with scent and less than 5 % of fixative on the dry weight.";

    public override string Reason =>
        "Petals and leaves let go of scent within days; powdered root or fibre holds it.";

    public override Citation Source => new("5 to 10 % of powdered root or fibre on the dry weight", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Petals 96, fragrance 4, no fixative.",
        ExampleLines.Of(new Sachet(), ExampleLines.Oil(4m), ExampleLines.Petals(96m)),
        [
            (AdviceKind.Warn, "0.00 % of fixative on the dry weight, where 5 to 10 % is usual: the scent will be gone in days. Add powdered root or fibre, and drip the scent on that first."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        decimal dry = basis.ShareOf(MaterialKind.DryBotanical);
        if (basis.Form != ProductForm.Dry || basis.Scent.Count == 0 || dry == 0)
        {
            yield break;
        }

        decimal share = decimal.Round(basis.ShareOf(MaterialKind.Fixative) / dry, AdviceBasis.ShareDecimals);
        if (share < Least)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{100 * share:0.00} % of fixative on the dry weight, where {100 * Least:0} to {100 * Most:0} % is usual: the scent will be gone in days. Add powdered root or fibre, and drip the scent on that first.",
                [],
                Least - share,
                Step($"Fixative {100 * share:0.00} % of the dry botanicals by weight; usual from {100 * Least:0} %. Root filed as a dry botanical does not count."));
        }
    }
}
