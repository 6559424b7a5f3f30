using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>Respiratory sensitisation, for liquids and solids.</summary>
public sealed class RespiratorySensitisation : SingleIngredientRule
{
    private static readonly Citation Table = new("CLP Annex I, 3.4.3.3 and Table 3.4.5", DataStatus.Memory);

    public override string Key => "respiratory-sensitisation";

    public override string Title => "Respiratory sensitisation";

    public override string AppliesTo => "A liquid or solid with a respiratory sensitiser; each on its own.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.RespiratorySensitisation];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.RespSens1A, 0.1m, HazardCategory.RespSens1A, Table),
        new(HazardCategory.RespSens1, 1.0m, HazardCategory.RespSens1, Table),
        new(HazardCategory.RespSens1B, 1.0m, HazardCategory.RespSens1B, Table),
    ];

    public override WorkedExample Example => new(
        "0.1 % of a Resp. Sens. 1A ingredient reaches its limit",
        WorkedExample.Of(("A", 0.1m, "Resp. Sens. 1A H334")),
        ["Resp. Sens. 1A"]);
}
