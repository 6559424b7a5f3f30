using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Reeds draw thin, fast-drying liquids quickly: strong at first, empty in days, and flammable by the open bottle.
/// </summary>
public sealed class DiffuserAlcohol : AdviceRule
{
    /// <summary>Share of the total by weight; own limit.</summary>
    private const double FromShare = 0.20;

    public override string Key => "diffuser-alcohol";

    public override string Title => "Alcohol climbs reeds too fast";

    public override string AppliesTo =>
        "A reed diffuser of which a fifth or more is ethanol or isopropanol.";

    public override string Reason =>
        "Alcohol climbs and dries fast: strong for days and then gone, the heavy part of the scent left behind, its vapour flammable.";

    public override Citation Source => new("Diffusers are made on slow carriers; the fifth is our own limit", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Reed diffuser, alcohol 75, fragrance 25.",
        ExampleLines.Of(new ReedDiffuser(), ExampleLines.Oil(25m), ExampleLines.Alcohol(75m)),
        [
            (AdviceKind.Warn, "70.38 % of it is alcohol. It climbs the reeds too fast: strong for days, then gone, and an open bottle of flammable liquid in a room. Use a slow carrier such as DPM, or weigh it daily and see."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        double alcohol = Math.Round(basis.Ethanol + basis.Propanol, AdviceBasis.ShareDecimals);
        if (basis.Formula.Kind is ReedDiffuser && alcohol >= FromShare)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{100 * alcohol:0.00} % of it is alcohol. It climbs the reeds too fast: strong for days, then gone, and an open bottle of flammable liquid in a room. Use a slow carrier such as DPM, or weigh it daily and see.",
                [],
                (decimal)alcohol,
                Step($"Ethanol {100 * basis.Ethanol:0.00} %, isopropanol {100 * basis.Propanol:0.00} % by weight; limit {100 * FromShare:0} %."));
        }
    }
}
