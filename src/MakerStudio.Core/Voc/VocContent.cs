using MakerStudio.Core.Assessing;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Voc;

/// <summary>
/// Volatile organic compounds of a product, per cent by weight of the net contents, under the United States
/// definitions, against the limits the studio chose. See docs/science/voc.md.
/// </summary>
/// <param name="Federal">As an air freshener.</param>
/// <param name="California">As an air freshener.</param>
/// <param name="OtherStates">As an air freshener.</param>
/// <param name="Comparisons">In the order of the keys chosen.</param>
/// <param name="Unknown">What was taken as VOC because nobody knows, and keys that no limit has.</param>
public sealed record VocContent(
    VocFigure Federal,
    VocFigure California,
    VocFigure OtherStates,
    IReadOnlyList<VocComparison> Comparisons,
    IReadOnlyList<NotKnown> Unknown,
    IReadOnlyList<WorkingStep> Workings)
{
    /// <summary>Sums are kept to this, so that the order of lines changes no digit of them.</summary>
    private const int SumDigits = 12;

    private static readonly Source Method = new("100 × (VOC − low-vapour-pressure − exempt − fragrance exempted) ÷ net contents", DataStatus.Derived);
    private static readonly Source AllFragrance = new("40 CFR 59.201(c); 17 CCR 94510", DataStatus.Memory);

    public VocFigure In(VocDefinition definition) => definition switch
    {
        VocDefinition.UsFederal => Federal,
        VocDefinition.California => California,
        _ => OtherStates,
    };

    /// <param name="choices">Its day decides which exemption and which step of a limit holds.</param>
    public static VocContent Of(AssessedFormula formula, MarketChoices choices)
    {
        ArgumentNullException.ThrowIfNull(formula);
        ArgumentNullException.ThrowIfNull(choices);
        List<VocLine> federal = Lines(formula, VocDefinition.UsFederal);
        List<VocLine> california = Lines(formula, VocDefinition.California);
        VocFigure Figure(VocDefinition definition, bool isAirFreshener) => Sum(
            definition,
            definition == VocDefinition.UsFederal ? federal : california,
            FragranceExemption.Of(definition, isAirFreshener, choices.On));

        VocFigure[] figures = [.. Enum.GetValues<VocDefinition>().Select(definition => Figure(definition, true))];
        VocLimit?[] limits = [.. choices.VocLimits.Select(VocLimits.Find)];
        VocComparison[] comparisons = [.. limits.OfType<VocLimit>().Select(limit => new VocComparison(
            limit, limit.On(choices.On), Figure(limit.Definition, limit.IsForAirFresheners)))];
        return new(
            figures[0],
            figures[1],
            figures[2],
            comparisons,
            [.. UnknownLines(federal, california), .. UnknownKeys(choices, limits)],
            [
                .. Steps(federal, VocDefinition.UsFederal),
                .. Steps(california, VocDefinition.California),
                .. figures.SelectMany(Steps),
                .. comparisons.SelectMany(comparison => Steps(comparison, choices.On)),
            ]);
    }

    private static List<VocLine> Lines(AssessedFormula formula, VocDefinition definition) =>
        [.. formula.Lines.Where(line => line.Fraction > 0).Select(line => new VocLine(line, VocShare.Of(line.Material, definition)))];

    private static VocFigure Sum(VocDefinition definition, List<VocLine> lines, FragranceExemption exemption)
    {
        decimal Sum(Func<VocLine, decimal> part) => decimal.Round(lines.Sum(part), SumDigits);
        return new(
            definition,
            Sum(line => line.Percent - line.FragrancePercent),
            Sum(line => line.FragrancePercent),
            Sum(line => line.FragranceWhole),
            Sum(line => line.Unknown - line.FragranceUnknown),
            Sum(line => line.FragranceUnknown),
            exemption);
    }

    /// <summary>A line once, by the definition under which more of it is unknown.</summary>
    private static IEnumerable<NotKnown> UnknownLines(List<VocLine> federal, List<VocLine> california) =>
        from pair in federal.Zip(california)
        let worse = pair.First.Unknown > pair.Second.Unknown ? pair.First : pair.Second
        where worse.Unknown > 0
        select new NotKnown(
            $"{worse.Line.Material.Name}: {worse.Share.WhatIsUnknown}.",
            "It is taken as VOC, so the figure may be too high. Ask the supplier for the share of VOC without low-vapour-pressure materials.",
            worse.Unknown,
            [worse.Line.LineId]);

    private static IEnumerable<NotKnown> UnknownKeys(MarketChoices choices, VocLimit?[] limits) =>
        from pair in choices.VocLimits.Zip(limits)
        where pair.Second is null
        select new NotKnown($"No VOC limit is called \"{pair.First}\".", "Nothing is compared for it. Choose a row of the table.", null, []);

    private static IEnumerable<WorkingStep> Steps(List<VocLine> lines, VocDefinition definition)
    {
        string rule = $"VOC, {VocDefinitions.Name(definition)}";
        foreach (VocLine line in lines)
        {
            foreach (VocFinding finding in line.Share.Findings)
            {
                yield return new(rule, finding.Saying, finding.Source, line.Line.LineId);
            }

            yield return new(rule, $"{line.Line.Material.Name}: {100 * line.Line.Fraction:0.00##} % of the product × {line.Share.Percent:0.##} % = {line.Percent:0.00##} %.", Method, line.Line.LineId);
        }
    }

    private static IEnumerable<WorkingStep> Steps(VocFigure figure)
    {
        string rule = $"VOC, {VocDefinitions.Name(figure.Definition)}";
        yield return new(rule, $"Fragrance brings {figure.FragranceVocPercent:0.00##} %; up to {figure.Exemption.Percent:0.##} % of the product is exempt, so {figure.Exempted:0.00##} % comes off.", figure.Exemption.Source);
        yield return new(rule, $"{figure.OtherPercent:0.00##} + {figure.FragranceVocPercent:0.00##} − {figure.Exempted:0.00##} = {figure.Percent:0.00##} % VOC by weight.", Method);
        if (figure.CautiousPercent > figure.Percent)
        {
            yield return new(rule, $"Read more strictly, the {figure.Exemption.Percent:0.##} % come off the whole fragrance: {figure.CautiousPercent:0.00##} %.", Method);
        }
    }

    private static IEnumerable<WorkingStep> Steps(VocComparison comparison, DateOnly on)
    {
        string rule = $"VOC limit, {comparison.Limit.Name}";
        VocFigure figure = comparison.Figure;
        if (comparison.Step is not { } step)
        {
            yield return new(rule, $"No limit is in force for what is made on {on:yyyy-MM-dd}.", comparison.Limit.Steps[0].Source);
            yield break;
        }

        yield return comparison.Verdict == VocVerdict.Complies
            ? new(rule, $"{figure.Percent:0.00##} % is not above {step.Percent:0.##} %: complies.", step.Source)
            : new(rule, $"{figure.Percent:0.00##} % is above {step.Percent:0.##} %: exceeds.", step.Source);
        if (comparison.IsDecidedByUnknown)
        {
            yield return new(rule, $"Without what is not known it would be {figure.LowestPercent:0.00##} %, which is not above the limit.", Method);
        }

        if (comparison.Limit.IsForAirFresheners && figure.IsAllFromFragrance)
        {
            yield return new(rule, $"All VOC here is from fragrance. The rule may leave such an air freshener out.", AllFragrance);
        }
    }
}
