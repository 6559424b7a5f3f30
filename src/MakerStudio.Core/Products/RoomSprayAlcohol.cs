using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>Fragrance in ethanol: 3–15 % is usual; 48 h of rest at least, a fortnight better.</summary>
public sealed class RoomSprayAlcohol : ProductKind
{
    public override string Key => "room-spray-alcohol";

    public override string Name => "Room spray, alcohol";

    public override string CodePrefix => "RS";

    public override TimeSpan CureMin => TimeSpan.FromHours(48);

    public override TimeSpan CureIdeal => TimeSpan.FromDays(14);

    public override decimal ExpectedLossFraction => 0.015m;

    public override LoadRange? UsualLoad => new(0.03m, 0.15m, "the total");

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [FragrancePlacement.RoomSpray];

    public override IReadOnlyList<VocForm> VocForms => [VocForm.Liquid];

    public override IReadOnlyList<decimal> UsualSizes => [50m, 100m];

    public override IReadOnlyList<ProductCaution> Cautions { get; } =
    [
        ProductCaution.Usual("Spray into the air, never at a flame or a hot surface."),
        ProductCaution.Usual("Not on skin, finished wood or food."),
        ProductCaution.Usual("Keep from children and pets."),
    ];

    public override bool IsSprayed => true;
}
