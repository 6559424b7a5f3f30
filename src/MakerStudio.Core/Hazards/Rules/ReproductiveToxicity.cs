using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Toxicity to reproduction, and effects on or by lactation.</summary>
public sealed class ReproductiveToxicity : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 3.7.3.1 and Table 3.7.2", DataStatus.Secondary);

    public override string Key => "reproductive-toxicity";

    public override string Title => "Toxicity to reproduction";

    public override string AppliesTo => "Any mixture with a substance toxic to reproduction or with effects by lactation; each on its own.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.Reproduction, HazardClass.Lactation];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.Repr1A, 0.3m, HazardCategory.Repr1A, Table),
        new(HazardCategory.Repr1B, 0.3m, HazardCategory.Repr1B, Table),
        new(HazardCategory.Repr2, 3.0m, HazardCategory.Repr2, Table),
        new(HazardCategory.Lact, 0.3m, HazardCategory.Lact, Table),
    ];

    public override WorkedExample Example => new(
        "0.3 % of butylphenyl methylpropional, Repr. 1B, reaches its limit",
        WorkedExample.Of(("butylphenyl methylpropional", 0.3m, "Repr. 1B H360Fd")),
        ["Repr. 1B"]);
}
