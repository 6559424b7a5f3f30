using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Voc;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Published;

/// <summary>
/// Examples and tables of VOC: Data/README.md. The examples are worked out from the wording of the rules (status D);
/// no published example with figures was found.
/// </summary>
public partial class VocExampleTests
{
    /// <summary>The reference writes steps in one cell, "30 / 25 / 20".</summary>
    private static readonly string[] Separator = [" / "];

    private static readonly Dictionary<string, JsonElement> Examples = Read();

    public static TheoryData<string> Ids => [.. Examples.Keys];

    [Fact]
    public void Examples_AreAllThere() => Assert.Equal(5, Examples.Count);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Example_GivesTheFigureAndTheVerdict(string id)
    {
        JsonElement example = Examples[id];
        JsonElement expected = example.GetProperty("expected");
        bool isSolid = example.GetProperty("form").GetString() == "solid";
        string form = isSolid ? "solid" : "liquid";
        var formula = LimitFormulas.Formula(
            isSolid ? "wax-melt" : "room-spray-alcohol",
            [.. example.GetProperty("ingredients").EnumerateArray().Select(Line)]);
        VocContent content = VocContent.Of(formula, LimitFormulas.Choices($"us-air-freshener-{form}", $"ca-air-freshener-{form}", $"md-air-freshener-{form}"));
        decimal percent = expected.GetProperty("voc_pct").GetDecimal();
        Assert.Equal([percent, percent, percent], new[] { content.Federal.Percent, content.California.Percent, content.OtherStates.Percent });
        Assert.Equal(3, content.Comparisons.Count);
        Assert.All(content.Comparisons, comparison =>
        {
            Assert.Equal(expected.GetProperty("limit").GetDecimal(), comparison.Step!.Percent);
            Assert.Equal(expected.GetProperty("complies").GetBoolean() ? VocVerdict.Complies : VocVerdict.Exceeds, comparison.Verdict);
        });
    }

    [Fact]
    public void Limits_EveryRowOfTheReference_IsInTheTable()
    {
        var steps = VocLimits.All.SelectMany(limit => limit.Steps, (limit, step) => (limit.Jurisdiction, limit.Category, step)).ToList();
        var expected = PublishedTable.Rows("voc_limits.csv", 29).SelectMany(row =>
        {
            string[] days = row["effective"].Split(Separator, StringSplitOptions.None);
            return row["limit_pct_voc_w_w"].Split(Separator, StringSplitOptions.None).Select((percent, i) => (
                Percent: decimal.Parse(percent, CultureInfo.InvariantCulture),
                From: DateOnly.TryParseExact(days[Math.Min(i, days.Length - 1)], "yyyy-MM-dd", out DateOnly day) ? day : (DateOnly?)null,
                Status: DataStatuses.Of(row["status"].Split(' ', ';')[0])));
        }).ToList();
        Assert.Equal(
            expected.Select(row => $"{row.Percent} {row.From} {row.Status}").Order(StringComparer.Ordinal),
            steps.Select(each => $"{each.step.Percent} {each.step.From} {each.step.Source.Status}").Order(StringComparer.Ordinal));
    }

    /// <summary>
    /// The class that suppliers' figures lead to, in the reference, against the rules. Where a figure lies on the border
    /// of a rule the two definitions differ, or the careful reading stands.
    /// </summary>
    [Fact]
    public void Substances_AreClassedAsInTheReference()
    {
        // 0.1 mmHg is not below 0.1 mmHg; above 216 °C California takes them out all the same.
        string[] onTheBorder = ["111-12-6", "6485-40-1"];
        Assert.All(PublishedTable.Rows("voc_classes.csv", 85), row =>
        {
            (string cas, string name) = (row["cas"], row["voc_class"]);
            VocSubstance substance = VocSubstances.Find(cas)!;
            Assert.Equal(row["name"], substance.Name);
            bool isIn = name is "VOC" or "VOC (sublimes)" or "VOC/LVP border" or "check supplier" or "mixed" or "-";
            Assert.True(isIn || name.StartsWith("LVP", StringComparison.Ordinal) || name.StartsWith("not VOC", StringComparison.Ordinal), name);
            Assert.Equal(isIn, substance.Judge(VocDefinition.California).Counts);
            Assert.Equal(isIn || onTheBorder.Contains(cas), substance.Judge(VocDefinition.UsFederal).Counts);
        });
    }

    private static (AssessedMaterial Material, decimal Percent) Line(JsonElement ingredient)
    {
        string name = ingredient[0].GetString()!;
        string how = ingredient[2].GetString()!;
        Match stated = StatedShare().Match(how);
        MaterialKind kind = name.Contains("fragrance", StringComparison.Ordinal) ? MaterialKind.FragranceOil
            : name == "water" ? MaterialKind.Water
            : name.Contains("wax", StringComparison.Ordinal) ? MaterialKind.Wax
            : MaterialKind.CarrierBase;
        return (
            LimitFormulas.Material(name, kind) with { VolatilePercent = stated.Success ? decimal.Parse(stated.Groups[1].Value, CultureInfo.InvariantCulture) : null },
            ingredient[1].GetDecimal());
    }

    private static Dictionary<string, JsonElement> Read()
    {
        using FileStream file = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "Published", "Data", "voc_worked_examples.json"));
        return JsonDocument.Parse(file).RootElement.GetProperty("examples").EnumerateArray().ToDictionary(example => example.GetProperty("id").GetString()!);
    }

    [GeneratedRegex("([0-9.]+) % of it VOC")]
    private static partial Regex StatedShare();
}
