using System.Text.Json;
using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Label;
using MakerStudio.Core.Hazards.Rules;

namespace MakerStudio.Core.Tests.Published;

/// <summary>
/// The examples of Data/clp_worked_examples.json: five official ones (four worked by the UN GHS Sub-Committee, one by
/// the ECHA Helpdesk, read in the published text) and 53 worked out by hand from the wording of the rules. Each
/// example names its source and status.
/// </summary>
public class ClpWorkedExampleTests
{
    private const decimal SumTolerance = 1e-6m;

    public static TheoryData<string> Ids => [.. ClpExample.All.Keys];

    [Fact]
    public void Examples_AreAllThere()
    {
        Assert.Equal(58, ClpExample.All.Count);
        Assert.Equal(5, ClpExample.All.Keys.Count(id => !id.StartsWith("D-", StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Example_GivesWhatIsPublished(string id)
    {
        ClpExample example = ClpExample.All[id];
        HazardsFound found = HazardAssessment.Of(example.Mixture);
        int checkedFacts = example.Expected.EnumerateObject().Count(expected => Check(example, found, expected));
        Assert.Equal(example.Expected.EnumerateObject().Count(), checkedFacts);
    }

    /// <summary>True when the fact was compared; one that no branch knows fails the test.</summary>
    private static bool Check(ClpExample example, HazardsFound found, JsonProperty expected) => expected.Name switch
    {
        "ATEmix" or "ATEmix_exact" => Estimate(example, found, expected.Value.GetDecimal()),
        "category" => Same(NumberOf(expected.Value), Category(found.In(AcuteRanges.ClassOf(example.Route)))),
        "skin" => Same(expected.Value.GetString(), Name(found, HazardClass.Skin)),
        "eye" => Same(expected.Value.GetString(), Name(found, HazardClass.Eye)),
        "flam" => Same(expected.Value.GetString(), Name(found, HazardClass.FlammableLiquid)),
        "acute" => Same(expected.Value.GetString(), Name(found, HazardClass.AquaticAcute)),
        "chronic" => Same(expected.Value.GetString(), Name(found, HazardClass.AquaticChronic)),
        "repr" => Same(expected.Value.GetString(), Name(found, HazardClass.Reproduction)),
        "carc" => Same(expected.Value.GetString(), Name(found, HazardClass.Carcinogenicity)),
        "muta" => Same(expected.Value.GetString(), Name(found, HazardClass.Mutagenicity)),
        "asp_tox_1" => Same(expected.Value.GetBoolean(), found.In(HazardClass.Aspiration) is not null),
        "H317" => Same(expected.Value.GetBoolean(), found.In(HazardClass.SkinSensitisation) is not null),
        "H335" => Same(expected.Value.GetBoolean(), found.In(HazardClass.StotRespiratoryIrritation) is not null),
        "H336" => Same(expected.Value.GetBoolean(), found.In(HazardClass.StotNarcotic) is not null),
        "EUH208" => Names(expected.Value, found, "EUH208"),
        "additional_names_on_label" => Names(expected.Value, found, AllergensNamed.NamesOnly),
        "acute_sum" => Sum(found, HazardClass.AquaticAcute, 1, expected.Value.GetDecimal()),
        "chronic1_sum" or "chronic2_sum" or "chronic3_sum" or "chronic4_sum" =>
            Sum(found, HazardClass.AquaticChronic, expected.Name["chronic".Length] - '0', expected.Value.GetDecimal()),
        _ => CheckLabel(example, expected),
    };

    private static bool CheckLabel(ClpExample example, JsonProperty expected)
    {
        HazardLabel label = HazardLabel.For(
            [.. ClassificationText.Parse(string.Join(';', ClpExample.Strings(example.Inputs, "classification"))).Entries],
            new LabelSituation(
                ClpExample.Number(example.Inputs, "capacity_ml"),
                !example.Inputs.TryGetProperty("general_public", out JsonElement isPublic) || isPublic.GetBoolean(),
                example.Text("package")?.Contains("spray", StringComparison.Ordinal) is true));
        return expected.Name switch
        {
            "pictograms" => Same(Strings(expected.Value), label.Pictograms.Select(Pictograms.Code)),
            "signal_word" => Same(expected.Value.GetString() ?? "None", label.Signal.ToString()),
            "h_statements" => Same(Strings(expected.Value), label.HazardStatements.Select(each => each.Code)),
            "crf" => Same(expected.Value.GetBoolean(), label.ChildResistant.IsNeeded),
            "tactile" => Same(expected.Value.GetBoolean(), label.Tactile.IsNeeded),
            "ufi_needed" => Same(expected.Value.GetBoolean(), label.NeedsUfi),
            "h_statements_may_omit" => Same(Strings(expected.Value), label.SmallPack.HazardStatements),
            _ => false,
        };
    }

    private static bool Estimate(ClpExample example, HazardsFound found, decimal expected)
    {
        const decimal tolerance = 0.01m;
        RuleStep step = Judged<AcuteToxicity>(found).Steps.Single(each =>
            each.Says.Contains(AcuteRanges.InWords(example.Route), StringComparison.Ordinal));
        Assert.InRange(step.Value, expected * (1 - tolerance), expected * (1 + tolerance));
        return true;
    }

    private static bool Sum(HazardsFound found, HazardClass hazardClass, int category, decimal expected)
    {
        RuleResult result = hazardClass == HazardClass.AquaticAcute ? Judged<AquaticAcute>(found) : Judged<AquaticChronic>(found);
        decimal sum = result.Steps.SingleOrDefault(step => HazardCategories.Name(step.Becomes!.Value).EndsWith($" {category}", StringComparison.Ordinal))?.Value ?? 0;
        Assert.InRange(sum, expected - SumTolerance, expected + SumTolerance);
        return true;
    }

    private static bool Names(JsonElement expected, HazardsFound found, string code)
    {
        IEnumerable<string> names = found.Sentences.Where(sentence => sentence.Code == code).SelectMany(sentence => sentence.Names);
        return Same(Strings(expected).Order(StringComparer.Ordinal), names.Order(StringComparer.Ordinal));
    }

    private static RuleResult Judged<TRule>(HazardsFound found) =>
        found.Judgements.Single(judgement => judgement.Rule is TRule).Result;

    private static string? Name(HazardsFound found, HazardClass hazardClass) =>
        found.In(hazardClass) is { } finding ? HazardCategories.Name(finding.Category) : null;

    private static int? Category(HazardFinding? finding) => finding is null ? null : AcuteRanges.Number(finding.Category);

    private static int? NumberOf(JsonElement value) => value.ValueKind == JsonValueKind.Null ? null : value.GetInt32();

    private static string[] Strings(JsonElement array) => [.. array.EnumerateArray().Select(each => each.GetString()!)];

    private static bool Same<T>(T expected, T actual)
    {
        Assert.Equal(expected, actual);
        return true;
    }
}
