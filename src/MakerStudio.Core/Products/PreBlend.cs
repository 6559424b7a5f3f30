using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Products;

/// <summary>An accord or base made for use in other formulas, with its own lot and rest.</summary>
public sealed class PreBlend : ProductKind
{
    public override string Key => "pre-blend";

    public override string Name => "Pre-blend";

    public override string CodePrefix => "A";

    public override TimeSpan CureMin => TimeSpan.FromDays(7);

    public override TimeSpan CureIdeal => TimeSpan.FromDays(7);

    public override decimal ExpectedLossFraction => 0.005m;

    public override LoadRange? UsualLoad => null;

    public override AmountUnit NominalUnit => AmountUnit.Gram;

    public override IReadOnlyList<FragrancePlacement> FragranceCategories => [];

    public override IReadOnlyList<VocForm> VocForms => [];

    public override IReadOnlyList<decimal> UsualSizes => [];

    public override bool IsSold => false;
}
