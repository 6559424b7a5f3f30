using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Carcinogenicity.</summary>
public sealed class Carcinogenicity : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 3.6.3.1 and Table 3.6.2", DataStatus.Memory);

    public override string Key => "carcinogenicity";

    public override string Title => "Carcinogenicity";

    public override string AppliesTo => "Any mixture with a carcinogen; each on its own.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.Carcinogenicity];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.Carc1A, 0.1m, HazardCategory.Carc1A, Table),
        new(HazardCategory.Carc1B, 0.1m, HazardCategory.Carc1B, Table),
        new(HazardCategory.Carc2, 1.0m, HazardCategory.Carc2, Table),
    ];

    public override WorkedExample Example => new(
        "0.9 % of a Carc. 2 ingredient stays below 1 %", WorkedExample.Of(("A", 0.9m, "Carc. 2 H351")), []);
}
