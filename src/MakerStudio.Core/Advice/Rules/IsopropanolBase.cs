using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Isopropanol as the base. A few per cent come as a denaturant of ethanol and are left alone.
/// </summary>
public sealed class IsopropanolBase : AdviceRule
{
    /// <summary>Share of the total by weight; own limit, above what denaturants bring.</summary>
    private const double FromShare = 0.10;

    public override string Key => "isopropanol-base";

    public override string Title => "Isopropanol as the base";

    public override string AppliesTo =>
        "A liquid of which a tenth or more is isopropanol.";

    public override string Reason =>
        "Isopropanol smells sharp of itself and lies over the scent; its vapour is stronger than that of ethanol and it burns as readily.";

    public override Citation Source => new("Sprays are made on ethanol; the tenth is our own limit", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Isopropanol 88, fragrance 12.",
        ExampleLines.Spray(ExampleLines.Oil(12m), ExampleLines.Line(ExampleLines.Material("Isopropanol", MaterialKind.Solvent, "67-63-0"), 88m)),
        [
            (AdviceKind.Warn, "88.00 % of it is isopropanol. Its own sharp smell lies over the scent, for the first minutes above all, and stays in a small room. Use ethanol, or smell it against one made with ethanol before you decide."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Form == ProductForm.Liquid && basis.Propanol >= FromShare)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{100 * basis.Propanol:0.00} % of it is isopropanol. Its own sharp smell lies over the scent, for the first minutes above all, and stays in a small room. Use ethanol, or smell it against one made with ethanol before you decide.",
                basis.Lines.Where(line => basis.ShareIn(line, Known.Propanol) > 0),
                (decimal)basis.Propanol,
                Step($"Isopropanol {100 * basis.Propanol:0.00} % by weight, limit {100 * FromShare:0} %."));
        }
    }
}
