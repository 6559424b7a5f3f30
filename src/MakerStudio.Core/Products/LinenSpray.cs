using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>A light spray for cloth: 1–3 %, no heavy fixatives, spot-tested on white cotton for 24 h.</summary>
public sealed class LinenSpray : ProductKind
{
    public override string Key => "linen-spray";

    public override string Name => "Linen spray";

    public override string CodePrefix => "LN";

    public override TimeSpan CureMin => TimeSpan.FromHours(24);

    public override TimeSpan CureIdeal => TimeSpan.FromHours(48);

    public override decimal ExpectedLossFraction => 0.015m;

    public override LoadRange? UsualLoad => new(0.01m, 0.03m, "the total");

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [FragrancePlacement.Textile, FragrancePlacement.Spray];

    public override IReadOnlyList<VocForm> VocForms => [VocForm.Liquid, VocForm.FabricSpray, VocForm.OdorRemover];

    public override IReadOnlyList<decimal> UsualSizes => [100m, 250m];

    public override IReadOnlyList<ProductCaution> Cautions { get; } =
    [
        ProductCaution.Usual("Try it on a hidden spot and let it dry first."),
        ProductCaution.Usual("Not on silk, leather or skin."),
        ProductCaution.Usual("Keep from children and pets."),
    ];

    public override bool IsSprayed => true;
}
