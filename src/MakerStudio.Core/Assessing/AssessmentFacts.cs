using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Us;
using MakerStudio.Core.Voc;

namespace MakerStudio.Core.Assessing;

/// <summary>Every result of an assessment as a list of lines, each with a key of its own.</summary>
public static class AssessmentFacts
{
    public static IReadOnlyList<AssessmentFact> Of(Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        IEnumerable<AssessmentFact> all =
        [
            .. Physics(assessment),
            .. Classes(assessment.Hazards),
            .. assessment.Label is { } label ? Clp(label) : [],
            .. assessment.UsLabel is { } words ? Us(words) : [],
            .. Volatile(assessment.Voc),
            .. Fragrance(assessment.Fragrance),
            .. Allergens(assessment),
            .. assessment.Advice.Select(given => new AssessmentFact($"advice {given.Rule} {given.Subject}", given.Title, given.Saying)),
            .. assessment.Unknown.Select(unknown => new AssessmentFact($"unknown {unknown.What}", "Not known", $"{unknown.What}")),
        ];
        return [.. all.DistinctBy(fact => fact.Key)];
    }

    private static IEnumerable<AssessmentFact> Physics(Assessment assessment)
    {
        yield return new("density", "Density at 20 °C", assessment.Density switch
        {
            DensityResult.Known { IsMeasured: true } known => $"{known.Density.GramsPerMillilitre:0.0000} g/mL, measured",
            DensityResult.Known known => $"{known.Density.GramsPerMillilitre:0.0000} g/mL",
            _ => $"not known",
        });
        yield return new("alcohol by weight", "Ethanol by weight", $"{assessment.Alcohol.PercentMass:0.00} %");
        if (assessment.Alcohol.PercentVolume is { } byVolume)
        {
            yield return new("alcohol by volume", "Ethanol by volume", $"{byVolume:0.00} % vol");
        }

        if (assessment.Alcohol.AlcoholPart is EthanolStrength part)
        {
            yield return new("alcohol part", "Alcohol and water by themselves", $"{part.PercentVolume:0.0} % vol");
        }

        if (assessment.Flash is { } flash)
        {
            yield return new("flash point", "Flash point", flash switch
            {
                FlashPointResult.Measured measured => $"{measured.Value.Degrees:0.0} °C, measured",
                FlashPointResult.Estimated estimated => $"{estimated.Value.Degrees:0.0} °C, an estimate",
                FlashPointResult.NoneFound none => $"none up to {none.UpTo.Degrees:0} °C",
                _ => $"not known",
            });
        }
    }

    private static IEnumerable<AssessmentFact> Classes(HazardsFound hazards) =>
        from judgement in hazards.Judgements
        from hazardClass in judgement.Rule.Classes
        let finding = hazards.In(hazardClass)
        where finding is not null
        select new AssessmentFact($"class {hazardClass}", judgement.Rule.Title, finding.IsAssumed switch
        {
            true => $"{HazardCategories.Name(finding.Category)} {finding.Code}, assumed",
            false => $"{HazardCategories.Name(finding.Category)} {finding.Code}",
        });

    private static IEnumerable<AssessmentFact> Clp(HazardLabel label)
    {
        string signal = label.Signal == SignalWord.None ? "none" : label.Signal.ToString();
        yield return new("signal word", "Signal word", $"{signal}");
        yield return new("pictograms", "Pictograms", $"{Listed(label.Pictograms.Select(Pictograms.Code))}");
        foreach (LabelStatement statement in label.HazardStatements)
        {
            yield return new($"statement {statement.Code}", statement.Code, $"{statement.Text}");
        }

        foreach (LabelStatement statement in label.Precautions.Chosen)
        {
            yield return new($"precaution {statement.Code}", statement.Code, $"{statement.Text}");
        }

        foreach (SupplementalSentence sentence in label.Supplemental)
        {
            yield return new($"supplemental {sentence.Code}", sentence.Code == "names" ? "Named beside the statement" : sentence.Code, $"{sentence.Text}");
        }

        yield return new("names", "Substances to name", $"{Listed(label.SubstancesToName)}");
        yield return new("closure", "Child-resistant closure", $"{Needed(label.ChildResistant)}");
        yield return new("tactile", "Tactile warning", $"{Needed(label.Tactile)}");
        yield return new("ufi", "UFI", $"{(label.NeedsUfi ? "needed" : "not needed")}");
    }

    private static IEnumerable<AssessmentFact> Us(FhsaLabel label)
    {
        yield return new("us signal word", "Signal word", $"{label.Signal ?? "none"}");
        yield return new("us statements", "Principal hazards", $"{Listed(label.Statements.Select(each => each.Text))}");
    }

    private static IEnumerable<AssessmentFact> Volatile(VocContent voc)
    {
        foreach (VocDefinition definition in Enum.GetValues<VocDefinition>())
        {
            yield return new($"voc {definition}", $"VOC, {VocDefinitions.Name(definition)}", $"{voc.In(definition).Percent:0.00} % by weight");
        }

        foreach (VocComparison comparison in voc.Comparisons)
        {
            yield return new($"voc limit {comparison.Limit.Key}", $"VOC limit, {comparison.Limit.Name}", comparison.Verdict switch
            {
                VocVerdict.NotInForce => $"none in force",
                VocVerdict.Complies => $"complies, {comparison.Figure.Percent:0.00} % of {comparison.Step!.Percent:0.##} %",
                _ => $"exceeds, {comparison.Figure.Percent:0.00} % of {comparison.Step!.Percent:0.##} %",
            });
        }
    }

    private static IEnumerable<AssessmentFact> Fragrance(FragranceUse use)
    {
        foreach (FragranceCategoryUse category in use.Categories)
        {
            yield return new($"fragrance {category.Category}", $"Fragrance limits, category {category.Category}", category.Verdict switch
            {
                FragranceVerdict.Above => $"above",
                FragranceVerdict.Within => $"within",
                _ => $"not shown",
            });
            if (category.LargestPercent is { } largest)
            {
                yield return new($"fragrance {category.Category} largest", $"Most fragrance, category {category.Category}", $"{largest:0.00} % of the product");
            }
        }
    }

    private static IEnumerable<AssessmentFact> Allergens(Assessment assessment) =>
        assessment.Allergens.Found.Select(share => new AssessmentFact(
            $"allergen {share.Allergen.Name}",
            $"Allergen, {share.Allergen.Name}",
            share.IsDeclared switch
            {
                true => $"{share.Percent:0.####} %, declared",
                false => $"{share.Percent:0.####} %",
            }));

    private static string Needed(PackDuty duty) => duty.IsNeeded ? $"needed: {Listed(duty.Because)}" : "not needed";

    private static string Listed(IEnumerable<string> all) => string.Join(", ", all) is { Length: > 0 } text ? text : "none";
}
