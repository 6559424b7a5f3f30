using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>Fragrance carried in water by a solubiliser: 1–3 % is usual.</summary>
public sealed class RoomSprayWater : ProductKind
{
    public override string Key => "room-spray-water";

    public override string Name => "Room spray, water";

    public override string CodePrefix => "RS";

    public override TimeSpan CureMin => TimeSpan.FromHours(24);

    public override TimeSpan CureIdeal => TimeSpan.FromHours(48);

    public override decimal ExpectedLossFraction => 0.015m;

    public override LoadRange? UsualLoad => new(0.01m, 0.03m, "the total");

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [FragrancePlacement.RoomSpray];

    public override IReadOnlyList<VocForm> VocForms => [VocForm.Liquid];

    public override IReadOnlyList<decimal> UsualSizes => [50m, 100m];

    public override IReadOnlyList<ProductCaution> Cautions { get; } =
    [
        ProductCaution.Usual("Spray into the air."),
        ProductCaution.Usual("Not on skin, finished wood, screens or food."),
        ProductCaution.Usual("Keep from children and pets."),
    ];

    public override bool IsSprayed => true;
}
