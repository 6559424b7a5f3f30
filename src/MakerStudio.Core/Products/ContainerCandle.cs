using MakerStudio.Core.Blending;
using MakerStudio.Core.Curing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>Scented wax in a jar: 6–10 % of wax. The rest is that of soy wax; paraffin needs about 3 days.</summary>
public sealed class ContainerCandle : ProductKind
{
    public override string Key => "container-candle";

    public override string Name => "Container candle";

    public override string CodePrefix => "CN";

    public override TimeSpan CureMin => TimeSpan.FromDays(14);

    public override TimeSpan CureIdeal => TimeSpan.FromDays(14);

    public override string ClockStartsAt => Pour;

    public override Moving? Moving => null;

    public override decimal ExpectedLossFraction => 0.01m;

    public override LineBasis DefaultBasis => LineBasis.PercentOfWax;

    public override LoadRange? UsualLoad => new(0.06m, 0.10m, "wax");

    public override AmountUnit NominalUnit => AmountUnit.Gram;

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [FragrancePlacement.Candle];

    public override IReadOnlyList<VocForm> VocForms => [VocForm.Solid];

    public override IReadOnlyList<decimal> UsualSizes => [180m, 220m];

    public override string FillWord => "pour";

    public override string AfterRestWord => "pack";

    public override string ContainerWord => "jar";

    public override IReadOnlyList<ProductCaution> Cautions { get; } =
    [
        ProductCaution.OfCandles("Never leave it burning alone."),
        ProductCaution.OfCandles("Burn it away from anything that can catch fire."),
        ProductCaution.OfCandles("Keep it from children and pets."),
        ProductCaution.Usual("Trim the wick to 5 mm before you light it. Stop when 10 mm of wax is left."),
    ];
}
