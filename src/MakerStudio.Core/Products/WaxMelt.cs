using MakerStudio.Core.Blending;
using MakerStudio.Core.Curing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>Scented wax without a wick in cubes of 5–15 g: 8–12 % of wax, within what the wax holds.</summary>
public sealed class WaxMelt : ProductKind
{
    public override string Key => "wax-melt";

    public override string Name => "Wax melt";

    public override string CodePrefix => "WM";

    public override TimeSpan CureMin => TimeSpan.FromDays(3);

    public override TimeSpan CureIdeal => TimeSpan.FromDays(14);

    public override string ClockStartsAt => Pour;

    public override Moving? Moving => null;

    public override decimal FillToleranceFraction => ShortfallOfSmallPacks;

    public override decimal ExpectedLossFraction => 0.02m;

    public override LineBasis DefaultBasis => LineBasis.PercentOfWax;

    public override LoadRange? UsualLoad => new(0.08m, 0.12m, "wax");

    public override AmountUnit NominalUnit => AmountUnit.Gram;

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [FragrancePlacement.WaxMelt];

    public override IReadOnlyList<VocForm> VocForms => [VocForm.Solid];

    public override IReadOnlyList<decimal> UsualSizes => [15m, 40m];

    public override string FillWord => "pour";

    public override string AfterRestWord => "pack";

    public override string ContainerWord => "bag";

    public override IReadOnlyList<ProductCaution> Cautions { get; } =
    [
        ProductCaution.Usual("Melt it only in a warmer made for wax, never alone."),
        ProductCaution.Usual("Hot wax burns: keep it from children and pets."),
        ProductCaution.Usual("Never pour water on burning wax."),
    ];
}
