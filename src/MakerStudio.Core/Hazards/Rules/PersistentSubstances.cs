using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Persistent, bioaccumulative, mobile and toxic substances, classes of Delegated Regulation (EU) 2023/707; dates as
/// for <see cref="EndocrineDisruption"/>.
/// </summary>
public sealed class PersistentSubstances : SingleIngredientRule
{
    private static readonly Citation Accumulating = new("CLP Annex I, 4.3, by Reg. (EU) 2023/707", DataStatus.Memory);
    private static readonly Citation Mobile = new("CLP Annex I, 4.4, by Reg. (EU) 2023/707", DataStatus.Memory);

    public override string Key => "persistent-substances";

    public override string Title => "PBT, vPvB, PMT and vPvM";

    public override string AppliesTo => "Any mixture with such a substance; each on its own. EU only.";

    public override IReadOnlyList<HazardClass> Classes =>
        [HazardClass.Persistent, HazardClass.VeryPersistent, HazardClass.Mobile, HazardClass.VeryMobile];

    public override IReadOnlyList<SingleLimit> Limits { get; } =
    [
        new(HazardCategory.Pbt, 0.1m, HazardCategory.Pbt, Accumulating),
        new(HazardCategory.Vpvb, 0.1m, HazardCategory.Vpvb, Accumulating),
        new(HazardCategory.Pmt, 0.1m, HazardCategory.Pmt, Mobile),
        new(HazardCategory.Vpvm, 0.1m, HazardCategory.Vpvm, Mobile),
    ];

    public override WorkedExample Example => new(
        "0.1 % of a vPvB substance reaches its limit", WorkedExample.Of(("A", 0.1m, "vPvB EUH441")), ["vPvB"]);
}
