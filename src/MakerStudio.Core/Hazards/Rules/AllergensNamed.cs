using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Rules;

/// <summary>
/// Sensitisers below the limit of the class but at or above the one that can set off an allergy: EUH208 names them
/// where the mixture is not classed as sensitising; where it is, they are named beside it. The limit is 0.1 %, 0.01 %
/// for sub-category 1A, and a tenth of a specific limit below 0.1 %.
/// </summary>
public sealed class AllergensNamed : HazardRule
{
    /// <summary>Code of the sentence that only adds names beside H317 or H334.</summary>
    public const string NamesOnly = "names";

    private const decimal UsualPercent = 0.1m;
    private const decimal StrongPercent = 0.01m;
    private const decimal PartOfSpecific = 10m;

    private static readonly Citation Limits = new("CLP Annex I, Table 3.4.6 with Note 1; Annex II, 2.8", DataStatus.Memory);
    private static readonly Citation Text = new("CLP Annex II, 2.8 (wording of EUH208)", DataStatus.Read);
    private static readonly SkinSensitisation OfSkin = new();
    private static readonly RespiratorySensitisation OfLungs = new();

    public override string Key => "allergens-named";

    public override string Title => "Allergens to name (EUH208)";

    public override string AppliesTo => "Any mixture with a sensitiser from its elicitation limit.";

    public override IReadOnlyList<Citation> Sources => [Limits, Text];

    public override IReadOnlyList<HazardClass> Classes => [];

    public override WorkedExample Example => new(
        "0.6 % of limonene and 0.09 % of citral, both 1B: only the first is named",
        WorkedExample.Of(("limonene", 0.6m, "Skin Sens. 1B H317"), ("citral", 0.09m, "Skin Sens. 1B H317")),
        ["EUH208"]);

    public override RuleResult Judge(Mixture mixture)
    {
        HashSet<string> deciding = [.. OfSkin.Judge(mixture).Findings.Concat(OfLungs.Judge(mixture).Findings)
            .SelectMany(finding => finding.By.From)
            .Select(each => each.Ingredient.Name)];
        List<Contribution> named = [.. Eliciting(mixture, HazardClass.SkinSensitisation)
            .Concat(Eliciting(mixture, HazardClass.RespiratorySensitisation))
            .Where(each => !deciding.Contains(each.Ingredient.Name))
            .GroupBy(each => each.Ingredient.Name, StringComparer.Ordinal)
            .Select(same => same.OrderBy(each => each.Limit).First())
            .OrderByDescending(each => each.Counted)
            .ThenBy(each => each.Ingredient.Name, StringComparer.Ordinal)];
        if (named.Count == 0)
        {
            return RuleResult.None;
        }

        var step = new RuleStep("each sensitiser at or above its elicitation limit", named[0].Counted, named[0].Limit!.Value, "%", true, null, named, Limits);
        IReadOnlyList<string> names = [.. named.Select(each => each.Ingredient.Name)];
        string list = string.Join(", ", names);
        SupplementalSentence sentence = deciding.Count == 0
            ? new("EUH208", $"Contains {list}. May produce an allergic reaction.", names, step)
            : new(NamesOnly, $"Contains {list}.", names, step);
        return new([], [step], [sentence], [.. named.Where(each => each.Ingredient.IsWhole).Select(NotBroken)]);
    }

    private static IEnumerable<Contribution> Eliciting(Mixture mixture, HazardClass hazardClass) =>
        from each in mixture.Singly(hazardClass)
        let entry = each.Facts.In(hazardClass)
        where entry is not null
        let limit = LimitOf(entry.Category, each.Facts.LimitIn(hazardClass))
        where each.Percent >= limit
        select new Contribution(each, each.Percent, 1, limit);

    private static decimal LimitOf(HazardCategory category, decimal? specific) => specific < UsualPercent
        ? specific.Value / PartOfSpecific
        : category is HazardCategory.SkinSens1A or HazardCategory.RespSens1A ? StrongPercent : UsualPercent;

    private static UnknownHazard NotBroken(Contribution each) => new(
        $"{each.Ingredient.Name} sensitises as a whole, and no listed substance accounts for it.",
        "It is named itself; the label should name the substance. Ask the supplier.",
        HazardClass.SkinSensitisation,
        each.Ingredient.Percent);
}
