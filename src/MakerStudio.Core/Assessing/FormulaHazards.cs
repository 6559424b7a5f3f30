using MakerStudio.Core.Advice;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;

namespace MakerStudio.Core.Assessing;

/// <summary>A formula as the rules of classification and labelling see it.</summary>
internal static class FormulaHazards
{
    private const decimal Whole = 100m;

    internal static MixtureFacts FactsOf(AssessedFormula formula, AdviceBasis basis, FlashPointResult? flash, LabelScheme scheme) => new(
        [.. formula.Lines.Where(line => line.Fraction > 0).Select(LineOf)],
        basis.Form == ProductForm.Liquid ? PhysicalForm.Liquid : PhysicalForm.Solid,
        FlashForHazards.Of(flash),
        formula.Measured.BoilingPoint?.Degrees,
        formula.Measured.SustainsCombustion,
        formula.Measured.ViscosityMm2PerSecond,
        formula.Measured.Ph,
        formula.Kind.IsSprayed ? AcuteRoute.InhalationDustOrMist : AcuteRoute.InhalationVapour,
        scheme == LabelScheme.UnitedStates ? HazardScheme.UnGhs : HazardScheme.EuClp);

    internal static HazardLine LineOf(AssessedLine line) =>
        new(line.LineId, line.Material.Name, Whole * line.Fraction, PreparedMaterial.Of(line.Material).Hazards);

    internal static LabelSituation SituationOf(AssessedFormula formula, LabelScheme scheme) => new(
        formula.PackMillilitres,
        formula.Kind.IsSold,
        formula.HasSealedSpray ?? false,
        scheme == LabelScheme.GreatBritain ? LabelMarket.GreatBritain : LabelMarket.EuropeanUnion);
}
