using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Label;

/// <summary>
/// The hazard elements of a label by EU CLP: a working draft. The studio adds supplier, name, quantity and language
/// (Art. 17).
/// </summary>
/// <param name="SubstancesToName">Those that gave the health classes; four normally suffice (Art. 18(3)(b)).</param>
/// <param name="NeedsUfi">Classed for a health or physical hazard, and sold where Annex VIII applies.</param>
/// <param name="Notices">What else the classes mean for selling it.</param>
public sealed record HazardLabel(
    SignalWord Signal,
    IReadOnlyList<Pictogram> Pictograms,
    IReadOnlyList<LabelStatement> HazardStatements,
    PrecautionsChosen Precautions,
    IReadOnlyList<SupplementalSentence> Supplemental,
    IReadOnlyList<string> SubstancesToName,
    Relief SmallPack,
    LabelSize? Size,
    PackDuty ChildResistant,
    PackDuty Tactile,
    bool NeedsUfi,
    IReadOnlyList<string> Notices)
{
    public static Citation SignalSource { get; } = new("CLP Art. 20(3)", DataStatus.Secondary);

    public static Citation UfiSource { get; } = new("CLP Art. 45 and Annex VIII", DataStatus.Secondary);

    public static Citation NamesSource { get; } = new("CLP Art. 18(3)(b)", DataStatus.Memory);

    /// <summary>H304 is not written on a pack with a sealed spray attachment.</summary>
    public static Citation SealedSpraySource { get; } = new("CLP Art. 23(c) and Annex I, 1.3.3", DataStatus.Read);

    private static readonly HashSet<HazardClass> NotHealthOrPhysical =
    [
        HazardClass.AquaticAcute, HazardClass.AquaticChronic, HazardClass.OzoneLayer, HazardClass.EndocrineEnvironment,
        HazardClass.Persistent, HazardClass.VeryPersistent, HazardClass.Mobile, HazardClass.VeryMobile,
    ];

    private static readonly HashSet<HazardCategory> NotForThePublic =
        [HazardCategory.Muta1A, HazardCategory.Muta1B, HazardCategory.Carc1A, HazardCategory.Carc1B, HazardCategory.Repr1A, HazardCategory.Repr1B];

    /// <summary>Classes whose substances are not named: physical, irritation and aquatic.</summary>
    private static readonly HashSet<HazardClass> NotNamed =
    [
        HazardClass.FlammableLiquid, HazardClass.Aerosol, HazardClass.FlammableSolid, HazardClass.CorrosiveToMetals,
        HazardClass.AquaticAcute, HazardClass.AquaticChronic, HazardClass.OzoneLayer,
    ];

    /// <summary>The label of an assessed mixture.</summary>
    public static HazardLabel For(HazardsFound found, LabelSituation situation)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(situation);
        List<HazardFinding> findings = [.. found.Findings.Where(finding => AppliesIn(situation.Market, finding.Category))];
        IReadOnlyList<string> names = [.. findings
            .Where(finding => !NotNamed.Contains(HazardCategories.ClassOf(finding.Category)) && finding.Category is not (HazardCategory.SkinIrrit2 or HazardCategory.EyeIrrit2))
            .SelectMany(finding => finding.By.From)
            .GroupBy(each => each.Ingredient.Name, StringComparer.Ordinal)
            .OrderByDescending(same => same.Count())
            .ThenByDescending(same => same.First().Ingredient.Percent)
            .ThenBy(same => same.Key, StringComparer.Ordinal)
            .Select(same => same.Key)];
        return For([.. findings.Select(finding => new HazardEntry(finding.Category, finding.Code))], situation, found.Sentences, names, found.Ingredients);
    }

    /// <summary>The label of known classes.</summary>
    public static HazardLabel For(
        IReadOnlyList<HazardEntry> entries,
        LabelSituation situation,
        IReadOnlyList<SupplementalSentence>? sentences = null,
        IReadOnlyList<string>? names = null,
        IReadOnlyList<Ingredient>? ingredients = null)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(situation);
        List<HazardCategory> classed = [.. entries.Select(entry => entry.Category).Distinct()];
        List<HazardEntry> shown = [.. entries.Where(entry => !(situation.HasSealedSpray && entry.Category == HazardCategory.AspTox1))];
        List<HazardCategory> categories = [.. shown.Select(entry => entry.Category).Distinct()];
        IReadOnlyList<LabelStatement> hazards = Label.HazardStatements.Of(shown);
        PrecautionsChosen precautions = PrecautionChoice.Of(categories, situation.ForGeneralPublic);
        return new(
            categories.Select(category => HazardCategories.Of(category).Signal).DefaultIfEmpty().Max(),
            PictogramPrecedence.Of(categories),
            hazards,
            precautions,
            sentences ?? [],
            names ?? [],
            SmallPackRelief.Of(hazards, precautions.Chosen, situation),
            situation.CapacityMillilitres is { } capacity ? LabelSizes.For(capacity) : null,
            ClosuresAndTactile.ChildResistant(classed, ingredients ?? [], situation),
            ClosuresAndTactile.Tactile(classed, situation),
            situation.Market == LabelMarket.EuropeanUnion && classed.Exists(each => !NotHealthOrPhysical.Contains(HazardCategories.ClassOf(each))),
            [.. NoticesFor(classed, situation)]);
    }

    private static bool AppliesIn(LabelMarket market, HazardCategory category) => market == LabelMarket.EuropeanUnion
        || HazardCategories.ClassOf(category) is not (HazardClass.EndocrineHuman or HazardClass.EndocrineEnvironment
            or HazardClass.Persistent or HazardClass.VeryPersistent or HazardClass.Mobile or HazardClass.VeryMobile);

    private static IEnumerable<string> NoticesFor(List<HazardCategory> classed, LabelSituation situation)
    {
        foreach (HazardCategory category in classed.Where(each => situation.ForGeneralPublic && NotForThePublic.Contains(each)))
        {
            yield return $"{HazardCategories.Name(category)}: may not be sold to the general public (REACH Annex XVII, entries 28 to 30; from memory of the text).";
        }

        if (situation.HasSealedSpray && classed.Contains(HazardCategory.AspTox1))
        {
            yield return "Asp. Tox. 1 stays in the classification; H304 is not written on a pack with a sealed spray attachment.";
        }
    }
}
