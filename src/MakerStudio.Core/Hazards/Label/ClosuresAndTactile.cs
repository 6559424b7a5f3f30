using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Label;

/// <param name="IsNeeded">For packs sold to the general public.</param>
/// <param name="Because">The categories or substances that ask for it.</param>
public sealed record PackDuty(bool IsNeeded, IReadOnlyList<string> Because);

/// <summary>
/// When a pack for the general public needs a child-resistant closure (EN ISO 8317) and a tactile warning (EN ISO
/// 11683). Example: an ethanol spray, Flam. Liq. 2, has the triangle and no child-resistant closure; Flam. Liq. 3,
/// Eye Dam. 1 and H317 ask for neither. A sealed spray attachment lifts the closure for H304, not the triangle: the
/// tactile rule goes by the class and names no such exception.
/// </summary>
public static class ClosuresAndTactile
{
    public static Citation Source { get; } = new("CLP Annex II, 3.1.1 and 3.2.1", DataStatus.Read);

    private const string Methanol = "67-56-1";
    private const decimal MethanolFromPercent = 3m;
    private const string Dichloromethane = "75-09-2";
    private const decimal DichloromethaneFromPercent = 1m;

    private static readonly HashSet<HazardCategory> ChildResistantFor =
    [
        HazardCategory.AcuteTox1Oral, HazardCategory.AcuteTox2Oral, HazardCategory.AcuteTox3Oral,
        HazardCategory.AcuteTox1Dermal, HazardCategory.AcuteTox2Dermal, HazardCategory.AcuteTox3Dermal,
        HazardCategory.AcuteTox1Inhalation, HazardCategory.AcuteTox2Inhalation, HazardCategory.AcuteTox3Inhalation,
        HazardCategory.StotSe1, HazardCategory.StotRe1,
        HazardCategory.SkinCorr1A, HazardCategory.SkinCorr1, HazardCategory.SkinCorr1B, HazardCategory.SkinCorr1C,
    ];

    private static readonly HashSet<HazardCategory> AlsoTactileFor =
    [
        HazardCategory.AcuteTox4Oral, HazardCategory.AcuteTox4Dermal, HazardCategory.AcuteTox4Inhalation,
        HazardCategory.StotSe2, HazardCategory.StotRe2, HazardCategory.AspTox1,
        HazardCategory.RespSens1A, HazardCategory.RespSens1, HazardCategory.RespSens1B,
        HazardCategory.Muta2, HazardCategory.Carc2, HazardCategory.Repr2,
        HazardCategory.FlamLiq1, HazardCategory.FlamLiq2, HazardCategory.FlamSol1, HazardCategory.FlamSol2,
    ];

    /// <param name="ingredients">For the two substances that ask for a closure by share; may be empty.</param>
    public static PackDuty ChildResistant(IReadOnlyCollection<HazardCategory> categories, IReadOnlyCollection<Ingredient> ingredients, LabelSituation situation)
    {
        ArgumentNullException.ThrowIfNull(situation);
        List<string> because =
        [
            .. categories.Where(each => ChildResistantFor.Contains(each) || (each == HazardCategory.AspTox1 && !situation.HasSealedSpray)).Select(HazardCategories.Name),
            .. ingredients.Where(AsksForClosure).Select(each => each.Name),
        ];
        return new(situation.ForGeneralPublic && because.Count > 0, because);
    }

    public static PackDuty Tactile(IReadOnlyCollection<HazardCategory> categories, LabelSituation situation)
    {
        ArgumentNullException.ThrowIfNull(situation);
        List<string> because = [.. categories.Where(each => ChildResistantFor.Contains(each) || AlsoTactileFor.Contains(each)).Select(HazardCategories.Name)];
        return new(situation.ForGeneralPublic && because.Count > 0, because);
    }

    private static bool AsksForClosure(Ingredient ingredient) => ingredient switch
    {
        { Cas: Methanol } => ingredient.Percent >= MethanolFromPercent,
        { Cas: Dichloromethane } => ingredient.Percent >= DichloromethaneFromPercent,
        _ => false,
    };
}
