using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Specific target organ toxicity after one exposure, categories 1 and 2.</summary>
public sealed class StotSingleExposure : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 3.8.3.4 and Table 3.8.3", DataStatus.Memory);

    public override string Key => "stot-single";

    public override string Title => "Organ toxicity, single exposure";

    public override string AppliesTo => "Any mixture with a STOT SE 1 or 2 ingredient; each on its own.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.StotSingle];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.StotSe1, 10m, HazardCategory.StotSe1, Table),
        new(HazardCategory.StotSe1, 1m, HazardCategory.StotSe2, Table),
        new(HazardCategory.StotSe2, 10m, HazardCategory.StotSe2, Table),
    ];

    public override WorkedExample Example => new(
        "4 % of a STOT SE 1 ingredient gives category 2", WorkedExample.Of(("A", 4m, "STOT SE 1 H370")), ["STOT SE 2"]);
}
