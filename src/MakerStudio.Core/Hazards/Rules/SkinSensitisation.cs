using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Skin sensitisation.</summary>
public sealed class SkinSensitisation : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 3.4.3.3 and Table 3.4.5", DataStatus.Memory);

    public override string Key => "skin-sensitisation";

    public override string Title => "Skin sensitisation";

    public override string AppliesTo => "Any mixture with a skin sensitiser; each on its own, never added to another.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.SkinSensitisation];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.SkinSens1A, 0.1m, HazardCategory.SkinSens1A, Table),
        new(HazardCategory.SkinSens1, 1.0m, HazardCategory.SkinSens1, Table),
        new(HazardCategory.SkinSens1B, 1.0m, HazardCategory.SkinSens1B, Table),
    ];

    public override WorkedExample Example => new(
        "1.0 % of limonene, Skin Sens. 1B, reaches its limit; 0.6 % of linalool does not, and is not added",
        WorkedExample.Of(("limonene", 1.0m, "Skin Sens. 1B H317"), ("linalool", 0.6m, "Skin Sens. 1B H317")),
        ["Skin Sens. 1B"]);
}
