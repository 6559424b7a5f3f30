using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Endocrine disruption for people and for the environment, classes of Delegated Regulation (EU) 2023/707: for
/// mixtures placed on the market from 1 May 2026, for all by 1 May 2028 (dates from memory). Not in Great Britain.
/// </summary>
public sealed class EndocrineDisruption : SingleIngredientRule
{
    private static readonly Citation Human = new("CLP Annex I, 3.11, by Reg. (EU) 2023/707", DataStatus.Memory);
    private static readonly Citation Environment = new("CLP Annex I, 4.2, by Reg. (EU) 2023/707", DataStatus.Memory);

    public override string Key => "endocrine-disruption";

    public override string Title => "Endocrine disruption";

    public override string AppliesTo => "Any mixture with an endocrine disruptor; each on its own. EU only.";

    public override IReadOnlyList<HazardClass> Classes => [HazardClass.EndocrineHuman, HazardClass.EndocrineEnvironment];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.EdHuman1, 0.1m, HazardCategory.EdHuman1, Human),
        new(HazardCategory.EdHuman2, 1.0m, HazardCategory.EdHuman2, Human),
        new(HazardCategory.EdEnvironment1, 0.1m, HazardCategory.EdEnvironment1, Environment),
        new(HazardCategory.EdEnvironment2, 1.0m, HazardCategory.EdEnvironment2, Environment),
    ];

    public override WorkedExample Example => new(
        "0.1 % of an ED HH 1 ingredient reaches its limit", WorkedExample.Of(("A", 0.1m, "ED HH 1 EUH380")), ["ED HH 1"]);
}
