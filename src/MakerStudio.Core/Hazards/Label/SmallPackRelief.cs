using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Label;

/// <param name="HazardStatements">Codes of hazard statements that may be left out.</param>
/// <param name="Precautions">Codes of chosen precautionary statements that may be left out: every class that asks for them is relieved.</param>
public sealed record Relief(bool IsSmallPack, IReadOnlyList<string> HazardStatements, IReadOnlyList<string> Precautions);

/// <summary>
/// What a pack of up to 125 mL may leave out. Pictograms, signal word, names and supplier stay, as do H317 and EUH208.
/// Example: Flam. Liq. 2, Eye Irrit. 2 and Skin Sens. 1 in 100 mL may leave out H225 and H319; at 126 mL nothing.
/// </summary>
public static class SmallPackRelief
{
    /// <summary>Millilitres, included.</summary>
    public const decimal UpToMillilitres = 125m;

    public static Citation Source { get; } = new("CLP Annex I, 1.5.2.1.1", DataStatus.Read);

    public static Citation PrecautionsOnlySource { get; } = new("CLP Annex I, 1.5.2.1.2", DataStatus.Memory);

    private static readonly HashSet<HazardCategory> BothForAll =
    [
        HazardCategory.FlamLiq2, HazardCategory.FlamLiq3, HazardCategory.FlamSol1, HazardCategory.FlamSol2, HazardCategory.SkinIrrit2,
        HazardCategory.EyeIrrit2, HazardCategory.AquaticAcute1, HazardCategory.AquaticChronic1, HazardCategory.AquaticChronic2, HazardCategory.MetCorr1,
    ];

    /// <summary>Only where the pack is not for the general public.</summary>
    private static readonly HashSet<HazardCategory> BothForTrade =
    [
        HazardCategory.AcuteTox4Oral, HazardCategory.AcuteTox4Dermal, HazardCategory.AcuteTox4Inhalation, HazardCategory.StotSe2,
        HazardCategory.StotSe3Respiratory, HazardCategory.StotSe3Narcotic, HazardCategory.StotRe2,
    ];

    private static readonly HashSet<HazardCategory> PrecautionsOnly =
        [HazardCategory.Lact, HazardCategory.AquaticChronic3, HazardCategory.AquaticChronic4];

    public static Relief Of(IReadOnlyList<LabelStatement> hazards, IReadOnlyList<LabelStatement> precautions, LabelSituation situation)
    {
        ArgumentNullException.ThrowIfNull(situation);
        if (situation.CapacityMillilitres is not <= UpToMillilitres)
        {
            return new(false, [], []);
        }

        bool Both(HazardCategory category) => BothForAll.Contains(category) || (!situation.ForGeneralPublic && BothForTrade.Contains(category));
        return new(
            true,
            [.. hazards.Where(each => each.For.All(Both)).Select(each => each.Code)],
            [.. precautions.Where(each => each.For.All(category => Both(category) || PrecautionsOnly.Contains(category))).Select(each => each.Code)]);
    }
}
