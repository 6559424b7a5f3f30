using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Hazardous to the ozone layer.</summary>
public sealed class OzoneLayer : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 5.1.3 and Table 5.1", DataStatus.Memory);

    public override string Key => "ozone-layer";

    public override string Title => "Hazardous to the ozone layer";

    public override string AppliesTo => "Any mixture with an Ozone 1 ingredient; each on its own.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.OzoneLayer];

    public override IReadOnlyList<SingleLimit> Limits { get; } = [new(HazardCategory.Ozone1, 0.1m, HazardCategory.Ozone1, Table)];

    public override WorkedExample Example => new(
        "0.1 % of an Ozone 1 ingredient reaches its limit", WorkedExample.Of(("A", 0.1m, "Ozone 1 H420")), ["Ozone 1"]);
}
