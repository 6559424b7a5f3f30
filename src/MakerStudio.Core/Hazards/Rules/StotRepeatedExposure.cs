using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Specific target organ toxicity after repeated exposure.</summary>
public sealed class StotRepeatedExposure : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 3.9.3.4 and Table 3.9.4", DataStatus.Memory);

    public override string Key => "stot-repeated";

    public override string Title => "Organ toxicity, repeated exposure";

    public override string AppliesTo => "Any mixture with a STOT RE ingredient; each on its own.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.StotRepeated];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.StotRe1, 10m, HazardCategory.StotRe1, Table),
        new(HazardCategory.StotRe1, 1m, HazardCategory.StotRe2, Table),
        new(HazardCategory.StotRe2, 10m, HazardCategory.StotRe2, Table),
    ];

    public override WorkedExample Example => new(
        "10 % of a STOT RE 2 ingredient reaches its limit", WorkedExample.Of(("A", 10m, "STOT RE 2 H373")), ["STOT RE 2"]);
}
