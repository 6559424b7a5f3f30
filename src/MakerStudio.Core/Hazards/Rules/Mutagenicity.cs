using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Germ cell mutagenicity.</summary>
public sealed class Mutagenicity : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 3.5.3.1 and Table 3.5.2", DataStatus.Memory);

    public override string Key => "mutagenicity";

    public override string Title => "Germ cell mutagenicity";

    public override string AppliesTo => "Any mixture with a germ cell mutagen; each on its own.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.Mutagenicity];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.Muta1A, 0.1m, HazardCategory.Muta1A, Table),
        new(HazardCategory.Muta1B, 0.1m, HazardCategory.Muta1B, Table),
        new(HazardCategory.Muta2, 1.0m, HazardCategory.Muta2, Table),
    ];

    public override WorkedExample Example => new(
        "1.0 % of a Muta. 2 ingredient reaches its limit", WorkedExample.Of(("A", 1.0m, "Muta. 2 H341")), ["Muta. 2"]);
}
