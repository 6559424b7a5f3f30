using System.Globalization;
using System.Text.Json;
using MakerStudio.Core.Alcoholometry;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Voc;
using MakerStudio.Core.Workings;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>
/// An assessment as JSON: docs/format/assessment.schema.json. Shares are per cent by weight; lines go by their place in
/// the file, from 1. What is not known is left out, and named under "unknown".
/// </summary>
public static class AssessmentDocument
{
    public const string Format = "makerstudio/assessment/1";

    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    public static byte[] Write(string name, Assessment assessment)
    {
        ArgumentNullException.ThrowIfNull(assessment);
        return JsonSaying.Write(json =>
        {
            json.WriteString("format", Format);
            json.WriteString("note", "A working draft by calculation. Check it against current local law with a competent person.");
            json.Object("formula", to => Formula(to, name, assessment));
            json.Object("density", to => Density(to, assessment.Density));
            json.Object("alcohol", to => Alcohol(to, assessment.Alcohol));
            json.Object("flashPoint", to => Flash(to, assessment.Flash));
            json.Objects("classes", assessment.Hazards.Findings, Finding);
            AssessmentLabels.Write(json, assessment);
            json.Object("voc", to => Voc(to, assessment.Voc));
            json.Object("fragranceLimits", to => Fragrance(to, assessment.Fragrance));
            json.Object("allergens", to =>
            {
                to.Quantity("threshold", assessment.Allergens.ThresholdPercent, "%");
                to.Objects("found", assessment.Allergens.Found, (each, share) =>
                {
                    each.WriteString("name", share.Allergen.Name);
                    each.Number("percent", share.Percent);
                    each.WriteBoolean("declared", share.IsDeclared);
                });
            });
            json.Objects("advice", assessment.Advice, (to, given) =>
            {
                to.WriteString("rule", given.Rule);
                to.WriteString("kind", FileWords.Name(given.Kind));
                to.WriteString("title", given.Title);
                to.WriteString("says", given.Says(Plain));
                to.List("lines", given.Lines, (each, line) => each.WriteNumberValue(Place(line.LineId)));
            });
            json.Objects("unknown", assessment.Unknown, Unknown);
            json.Objects("workings", assessment.Workings(), (to, opened) =>
            {
                to.WriteString("key", opened.Key);
                to.WriteString("title", opened.Title);
                to.Objects("steps", opened.Steps, Step);
            });
        });
    }

    private static int Place(Guid lineId) => FormulaDocument.IndexOf(lineId) + 1;

    private static void Formula(Utf8JsonWriter json, string name, Assessment assessment)
    {
        json.WriteString("name", name);
        json.WriteString("kind", assessment.Formula.Kind.Key);
        json.WriteString("scheme", FileWords.Schemes.First(each => each.Value.Value == assessment.Choices.Scheme).Key);
        json.WriteString("on", assessment.Choices.On.ToString("yyyy-MM-dd", Plain));
        json.Objects("lines", assessment.Formula.Lines, (to, line) =>
        {
            to.WriteNumber("line", Place(line.LineId));
            to.WriteString("material", line.Material.Name);
            to.Number("percent", 100m * line.Fraction);
        });
    }

    private static void Density(Utf8JsonWriter json, DensityResult density)
    {
        json.WriteBoolean("isKnown", density is DensityResult.Known);
        switch (density)
        {
            case DensityResult.Known known:
                json.Number("value", known.Density.GramsPerMillilitre);
                json.WriteString("unit", "g/mL");
                json.Number("atCelsius", 20m);
                json.WriteBoolean("isMeasured", known.IsMeasured);
                json.Number("estimate", known.Estimate?.GramsPerMillilitre);
                json.Texts("warnings", known.Warnings);
                break;
            case DensityResult.Unknown unknown:
                json.Texts("why", unknown.Why);
                break;
        }
    }

    private static void Alcohol(Utf8JsonWriter json, AlcoholContent alcohol)
    {
        json.Number("percentMass", alcohol.PercentMass);
        json.Number("percentVolume", alcohol.PercentVolume);
        if (alcohol.AlcoholPart is EthanolStrength part)
        {
            json.Number("alcoholPartPercentMass", part.PercentMass);
            json.Number("alcoholPartPercentVolume", part.PercentVolume);
        }

        json.Number("unknownPercent", alcohol.UnknownPercent);
    }

    private static void Flash(Utf8JsonWriter json, FlashPointResult? flash)
    {
        json.WriteString("result", flash switch
        {
            null => "not-a-liquid",
            FlashPointResult.Measured => "measured",
            FlashPointResult.Estimated => "estimated",
            FlashPointResult.NoneFound => "none-found",
            _ => "unknown",
        });
        switch (flash)
        {
            case FlashPointResult.Measured measured:
                json.Number("celsius", measured.Value.Degrees);
                Decision(json, measured.Decision);
                break;
            case FlashPointResult.Estimated estimated:
                json.Number("celsius", estimated.Value.Degrees);
                json.WriteString("model", FileWords.Name(estimated.Model));
                json.Number("largestKnownError", estimated.Error.Largest);
                json.WriteString("error", estimated.Error.Says);
                json.Number("lowestOfModels", estimated.LowestOfModels?.Degrees);
                json.Number("highestOfModels", estimated.HighestOfModels?.Degrees);
                Decision(json, estimated.Decision);
                LeftOut(json, estimated.LeftOut);
                json.Texts("warnings", estimated.Warnings);
                break;
            case FlashPointResult.NoneFound none:
                json.Number("noneUpToCelsius", none.UpTo.Degrees);
                json.WriteString("says", none.Says);
                LeftOut(json, none.LeftOut);
                break;
            case FlashPointResult.Unknown unknown:
                json.WriteString("says", unknown.Why);
                LeftOut(json, unknown.LeftOut);
                break;
        }
    }

    private static void Decision(Utf8JsonWriter json, FlashDecision decision) => json.Object("decision", to =>
    {
        to.WriteString("takeAs", FileWords.Name(decision.TakeAs));
        to.WriteBoolean("isDecided", decision.IsDecided);
        to.WriteString("says", decision.Says);
    });

    private static void LeftOut(Utf8JsonWriter json, IReadOnlyList<LeftOut> parts) => json.Objects("leftOut", parts, (to, part) =>
    {
        to.WriteString("name", part.Name);
        to.Number("percent", 100 * part.Share);
        to.Number("flashPointCelsius", part.FlashPoint);
        to.WriteString("why", part.Why);
    });

    private static void Finding(Utf8JsonWriter json, HazardFinding finding)
    {
        json.WriteString("category", HazardCategories.Name(finding.Category));
        json.WriteString("code", finding.Code);
        json.WriteBoolean("isAssumed", finding.IsAssumed);
        json.Object("by", to =>
        {
            to.WriteString("says", finding.By.Says);
            to.Number("value", decimal.Round(finding.By.Value, 6));
            to.Number("limit", finding.By.Limit);
            to.WriteString("unit", finding.By.Unit);
            to.WriteString("source", finding.By.LimitFrom.Text);
            to.WriteString("status", DataStatuses.Letter(finding.By.LimitFrom.Status));
            to.Text("caution", finding.By.LimitFrom.Caution);
            to.Objects("ingredients", finding.By.From, (each, from) =>
            {
                each.WriteString("name", from.Ingredient.Name);
                each.Text("cas", from.Ingredient.Cas);
                each.Number("percent", decimal.Round(from.Ingredient.Percent, 6));
                each.List("lines", from.Ingredient.Lines.Select(share => Place(share.LineId)).Distinct(), (line, place) => line.WriteNumberValue(place));
            });
        });
    }

    private static void Voc(Utf8JsonWriter json, VocContent voc)
    {
        json.Objects("definitions", Enum.GetValues<VocDefinition>().Select(voc.In), (to, figure) =>
        {
            to.WriteString("definition", FileWords.Name(figure.Definition));
            to.Number("percent", figure.Percent);
            to.Number("cautiousPercent", figure.CautiousPercent);
            to.Number("lowestPercent", figure.LowestPercent);
            to.Number("fragranceExempted", figure.Exempted);
        });
        json.Objects("comparisons", voc.Comparisons, (to, comparison) =>
        {
            to.WriteString("limit", comparison.Limit.Key);
            to.WriteString("name", comparison.Limit.Name);
            to.Number("percent", comparison.Figure.Percent);
            to.Number("limitPercent", comparison.Step?.Percent);
            to.WriteString("verdict", FileWords.Name(comparison.Verdict));
            to.Text("source", comparison.Step?.Source.Citation);
            to.Text("status", comparison.Step is { } step ? DataStatuses.Letter(step.Source.Status) : null);
        });
    }

    private static void Fragrance(Utf8JsonWriter json, FragranceUse use)
    {
        json.WriteString("verdict", FileWords.Name(use.Verdict));
        json.Number("largestPercent", use.LargestPercent);
        json.Objects("categories", use.Categories, (to, category) =>
        {
            to.WriteString("category", category.Category);
            to.WriteString("verdict", FileWords.Name(category.Verdict));
            to.Number("sumOfRatios", decimal.Round(category.SumOfRatios, 6));
            to.Number("phototoxicSum", category.PhototoxicSum is { } sum ? decimal.Round(sum, 6) : null);
            to.Number("largestPercent", category.LargestPercent);
            to.Objects("materials", category.Materials, (each, material) =>
            {
                each.WriteString("name", material.Material.Name);
                each.Number("percent", material.Percent);
                each.Number("maximumPercent", material.MaxPercent);
                each.WriteString("verdict", FileWords.Name(material.Verdict));
            });
        });
    }

    private static void Unknown(Utf8JsonWriter json, NotKnown unknown)
    {
        json.WriteString("what", unknown.What);
        json.WriteString("means", unknown.Means);
        json.Number("percent", unknown.Percent is { } percent ? decimal.Round(percent, 6) : null);
        json.List("lines", unknown.LineIds.Select(Place), (to, place) => to.WriteNumberValue(place));
    }

    private static void Step(Utf8JsonWriter json, WorkingStep step)
    {
        json.WriteString("rule", step.Rule);
        json.WriteString("says", step.Says(Plain));
        json.WriteString("source", step.Source.Citation);
        json.WriteString("status", DataStatuses.Letter(step.Source.Status));
        json.Text("caution", step.Source.Caution);
        if (step.LineId is { } line && FormulaDocument.IndexOf(line) >= 0)
        {
            json.WriteNumber("line", Place(line));
        }
    }
}
