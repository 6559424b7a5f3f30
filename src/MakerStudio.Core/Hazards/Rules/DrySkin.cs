using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// EUH066, "Repeated exposure may cause skin dryness or cracking". The Regulation asks for evidence and names no
/// share; suppliers of solvents usually start between 15 and 20 %. The lower end is used.
/// </summary>
public sealed class DrySkin : HazardRule
{
    private const decimal UsualFromPercent = 15m;

    private static readonly Citation Text = new("CLP Annex II, 1.2.4", DataStatus.Memory);
    private static readonly Citation Usual = new("Share of EUH066 ingredients from which suppliers carry it on", DataStatus.CommonPractice);
    private static readonly SkinCorrosionAndIrritation Skin = new();

    public override string Key => "dry-skin";

    public override string Title => "Skin dryness (EUH066)";

    public override string AppliesTo => "A mixture that is not classed as a skin irritant, with EUH066 ingredients.";

    public override IReadOnlyList<Citation> Sources => [Text, Usual];

    public override IReadOnlyList<HazardClass> Classes => [];

    public override WorkedExample Example => new(
        "60 % of isoparaffin with EUH066",
        new([new(Guid.Empty, "isoparaffin", 60m, MaterialHazards.Of(new ClassifiedSubstance("isoparaffin", null, new([], driesSkin: true))))]),
        ["EUH066"]);

    public override RuleResult Judge(Mixture mixture)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        List<Contribution> from = [.. mixture.All.Where(each => each.Facts.DriesSkin).Select(each => new Contribution(each, each.Percent))];
        if (from.Count == 0)
        {
            return RuleResult.None;
        }

        decimal sum = from.Sum(each => each.Counted);
        bool isReached = sum >= UsualFromPercent && Skin.Judge(mixture).Findings.Count == 0;
        var step = new RuleStep("Σ EUH066 ingredients, skin not classed", sum, UsualFromPercent, "%", isReached, null, from, Usual);
        return new([], [step], isReached ? [new("EUH066", "Repeated exposure may cause skin dryness or cracking.", [], step)] : [], []);
    }
}
