using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>Scent in a slow carrier drawn up by reeds: 20–30 % is usual.</summary>
public sealed class ReedDiffuser : ProductKind
{
    public override string Key => "reed-diffuser";

    public override string Name => "Reed diffuser";

    public override string CodePrefix => "RD";

    public override TimeSpan CureMin => TimeSpan.FromHours(24);

    public override TimeSpan CureIdeal => TimeSpan.FromHours(72);

    public override decimal ExpectedLossFraction => 0.015m;

    public override LoadRange? UsualLoad => new(0.20m, 0.30m, "the total");

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [FragrancePlacement.ReedDiffuser];

    public override IReadOnlyList<VocForm> VocForms => [VocForm.Liquid];

    public override IReadOnlyList<decimal> UsualSizes => [100m, 200m];

    public override IReadOnlyList<ProductCaution> Cautions { get; } =
    [
        ProductCaution.Usual("Stand it upright on a tray; wipe up drops at once, they mark wood and paint."),
        ProductCaution.Usual("Keep away from flames."),
        ProductCaution.Usual("Keep from children and pets. Not for drinking."),
    ];
}
