using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Witch hazel water as the base: mostly water, with a little alcohol that neither dissolves scent nor keeps for long.
/// </summary>
public sealed class WitchHazelBase : AdviceRule
{
    /// <summary>Share of the total by weight; own limit.</summary>
    private const decimal FromShare = 0.10m;

    public override string Key => "witch-hazel-base";

    public override string Title => "Witch hazel as the base";

    public override string AppliesTo =>
        "A liquid of which a tenth or more is witch hazel water, known by its CAS number or its name.";

    public override string Reason =>
        "Witch hazel water is about 86 % water: scent does not dissolve in it, and its 14 to 15 % of alcohol is weak to keep it.";

    public override Citation Source => new("USP, Witch Hazel: 14 to 15 % alcohol; the tenth is our own limit", DataStatus.Memory);

    public override AdviceExample Example => new(
        "Witch hazel 97, fragrance 3.",
        ExampleLines.Of(new RoomSprayWater(), ExampleLines.Oil(3m), ExampleLines.Line(ExampleLines.Material("Witch hazel", MaterialKind.CarrierBase), 97m)),
        [
            (AdviceKind.Warn, "97.00 % of it is witch hazel, which is mostly water. It does not hold scent and its little alcohol hardly keeps it; it also smells of itself. Treat it as water: solubiliser and preservative, or use alcohol."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] lines = [.. basis.Lines.Except(basis.Scent).Where(IsWitchHazel)];
        decimal share = lines.Sum(line => line.Fraction);
        if (basis.Form == ProductForm.Liquid && share >= FromShare)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{100 * share:0.00} % of it is witch hazel, which is mostly water. It does not hold scent and its little alcohol hardly keeps it; it also smells of itself. Treat it as water: solubiliser and preservative, or use alcohol.",
                lines,
                share,
                Step($"Witch hazel {100 * share:0.00} % by weight, limit {100 * FromShare:0} %."));
        }
    }

    /// <summary>By name also where a composition is there: it seldom names the plant.</summary>
    private static bool IsWitchHazel(AssessedLine line) =>
        Known.WitchHazel.Is(line.Material.Cas) || Known.WitchHazel.IsNamedIn(line.Material.Name);
}
