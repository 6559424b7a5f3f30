using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// How much solubiliser to how much scent. The figures differ from maker to maker: 1:1 to 4:1 for light scents, 3:1 to
/// 5:1 for most, up to 8:1 for citrus and resins.
/// </summary>
public sealed class SolubiliserRatio : AdviceRule
{
    // Parts by weight of solubiliser to one of scent; common practice, no source.
    private const decimal Least = 1m;
    private const decimal Usual = 3m;
    private const decimal Most = 5m;
    private const decimal MostForCitrus = 8m;
    private const int RatioDecimals = 4;

    public override string Key => "solubiliser-ratio";

    public override string Title => "Solubiliser to scent";

    public override string AppliesTo =>
        "A liquid that water carries, with scent and a solubiliser.";

    public override string Reason =>
        "Too little leaves it cloudy or lets oil rise; too much is sticky, foams and costs.";

    public override Citation Source => new("3:1 to 5:1 is usual, 1:1 the least, 8:1 for citrus and resins", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Water 94, solubiliser 3, fragrance 3, no preservative yet.",
        ExampleLines.Of(new RoomSprayWater(), ExampleLines.Oil(3m), ExampleLines.Solubiliser(3m), ExampleLines.Water(94m)),
        [
            (AdviceKind.Note, "1.00 parts of solubiliser to 1 of scent: enough for light scents only, where 3 to 5 is usual. Mix 10 g and look after a day in the cold."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        decimal solubiliser = basis.ShareOf(MaterialKind.Solubiliser);
        decimal scent = basis.Load.OfTotal;
        if (basis.Form != ProductForm.Liquid || !basis.IsCarriedByWater || solubiliser == 0 || scent == 0)
        {
            yield break;
        }

        decimal ratio = decimal.Round(solubiliser / scent, RatioDecimals);
        decimal most = basis.Citrus.Count > 0 ? MostForCitrus : Most;
        WorkingStep workings = Step($"Solubiliser {100 * solubiliser:0.00} % ÷ scent {100 * scent:0.00} % = {ratio:0.00}; usual {Usual:0} to {most:0}, least {Least:0}.");
        AssessedLine[] lines = [.. basis.OfKind(MaterialKind.Solubiliser)];
        if (ratio < Least)
        {
            yield return Give(AdviceKind.Warn, $"It will likely stay cloudy or separate: {ratio:0.00} parts of solubiliser to 1 of scent, where {Usual:0} to {Most:0} is usual and citrus and resins take up to {MostForCitrus:0}.", lines, -ratio, workings);
        }
        else if (ratio < Usual)
        {
            yield return Give(AdviceKind.Note, $"{ratio:0.00} parts of solubiliser to 1 of scent: enough for light scents only, where {Usual:0} to {Most:0} is usual. Mix 10 g and look after a day in the cold.", lines, -ratio, workings);
        }
        else if (ratio > most)
        {
            yield return Give(AdviceKind.Note, $"{ratio:0.00} parts of solubiliser to 1 of scent, where {most:0} is the most that is usual: it will feel sticky, may foam and costs. Try less.", lines, ratio, workings);
        }
    }
}
