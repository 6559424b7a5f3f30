using MakerStudio.Core.Curing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>Scented dry matter: oil 2–5 % of dry weight and 5–10 % powdered root or fibre; sealed for weeks.</summary>
public sealed class Sachet : ProductKind
{
    public override string Key => "sachet";

    public override string Name => "Sachet";

    public override string CodePrefix => "SA";

    public override TimeSpan CureMin => TimeSpan.FromDays(14);

    public override TimeSpan CureIdeal => TimeSpan.FromDays(42);

    public override Moving? Moving => Moving.ShakeDryMatter;

    public override decimal FillToleranceFraction => ShortfallOfSmallPacks;

    public override decimal ExpectedLossFraction => 0.02m;

    public override LoadRange? UsualLoad => new(0.02m, 0.05m, "dry weight");

    public override AmountUnit NominalUnit => AmountUnit.Gram;

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [FragrancePlacement.Sachet];

    public override IReadOnlyList<VocForm> VocForms => [VocForm.Solid];

    public override IReadOnlyList<decimal> UsualSizes => [20m, 40m];

    public override string FillWord => "pack";

    public override string ContainerWord => "bag";

    public override IReadOnlyList<ProductCaution> Cautions { get; } =
    [
        ProductCaution.Usual("Not for eating: keep it from children and pets."),
        ProductCaution.Usual("Do not lay it on finished wood or cloth that stains."),
    ];
}
