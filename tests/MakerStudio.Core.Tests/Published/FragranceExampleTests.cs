using System.Text.Json;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Examples (D) and limits (V and M, by row) of the fragrance standards: Data/README.md.</summary>
public class FragranceExampleTests
{
    private static readonly Dictionary<string, JsonElement> Examples = Read();

    [Fact]
    public void Examples_AreAllChecked() =>
        Assert.Equal(["IFRA-1", "IFRA-2", "IFRA-3", "IFRA-4", "IFRA-5", "IFRA-6"], Examples.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("IFRA-1")]
    [InlineData("IFRA-2")]
    [InlineData("IFRA-3")]
    public void MaximumUse_OfAMixture(string id)
    {
        JsonElement example = Examples[id];
        string category = example.GetProperty("category").GetString()!;
        StatedSubstance[] composition = [.. example.GetProperty("fragrance").EnumerateArray()
            .Select(part => LimitFormulas.Exactly(part[0].GetString()!, part[1].GetDecimal()))];
        JsonElement expected = example.GetProperty("expected");

        // With the built-in limits, and with the same limits entered by the studio.
        Assert.All(
            new[] { MaximumUse.Of(composition, category, []), MaximumUse.Of(composition, category, Limits(example, category, false)) },
            maximum =>
            {
                Assert.Equal(expected.GetProperty("max_use_pct").GetDecimal(), maximum.Percent);
                if (expected.TryGetProperty("limiting", out JsonElement limiting))
                {
                    Assert.Equal(limiting.GetString(), maximum.Limiting, ignoreCase: true);
                }
            });
    }

    [Fact]
    public void Certificate_AgainstPlannedUse()
    {
        JsonElement example = Examples["IFRA-4"];
        (string, decimal)[] maxima = [.. example.GetProperty("certificate").EnumerateObject().Select(each => (each.Name, each.Value.GetDecimal()))];
        decimal use = example.GetProperty("planned").GetProperty("use_pct").GetDecimal();
        Assert.Equal("10B", example.GetProperty("planned").GetProperty("category").GetString());
        FragranceCategoryUse found = Assert.Single(Use("room-spray-alcohol", [], (LimitFormulas.Oil("Fig").Certified(maxima), use)).Categories);
        Assert.Equal(example.GetProperty("expected").GetProperty("complies").GetBoolean(), found.Verdict == FragranceVerdict.Within);
        Assert.Equal(example.GetProperty("expected").GetProperty("headroom_factor").GetDecimal(), Assert.Single(found.Materials).Headroom);
        Assert.Equal(32.72m, found.LargestPercent);
    }

    [Fact]
    public void TwoFragrances_OfUnknownComposition()
    {
        JsonElement example = Examples["IFRA-5"];
        string category = example.GetProperty("category").GetString()!;
        FragranceCategoryUse found = Assert.Single(Use("reed-diffuser", [], [.. example.GetProperty("oils").EnumerateArray().Select((oil, i) =>
            (LimitFormulas.Oil($"Oil {i}").Certified((category, oil.GetProperty("cert_max").GetDecimal())), oil.GetProperty("use").GetDecimal()))]).Categories);
        Assert.Equal(category, found.Category);
        Assert.True(found.SumDecides);
        Assert.Equal(example.GetProperty("expected").GetProperty("sum_of_ratios").GetDecimal(), decimal.Round(found.SumOfRatios, 4));
        Assert.Equal(example.GetProperty("expected").GetProperty("complies").GetBoolean(), found.Verdict == FragranceVerdict.Within);
    }

    /// <summary>With the built-in limits, which are from memory, and with the same limits entered by the studio.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void PhototoxicOils_Together(bool areOwn)
    {
        JsonElement example = Examples["IFRA-6"];
        SubstanceLimit[] own = areOwn ? Limits(example, "10B", true) : [];
        StatedSubstance[] parts = [.. example.GetProperty("finished").EnumerateArray()
            .Select(part => LimitFormulas.Exactly(part[0].GetString()!, part[1].GetDecimal() * 10))];
        FragranceCategoryUse found = Assert.Single(Use("room-spray-water", own, (LimitFormulas.Oil("Citrus", parts).Certified(("10B", 100)), 10m)).Categories);
        Assert.Equal(example.GetProperty("expected").GetProperty("sum_of_ratios").GetDecimal(), found.PhototoxicSum);
        Assert.Equal(FragranceVerdict.Within, found.Verdict);
        Assert.Equal(10m, found.LargestPercent);
        Assert.Equal(areOwn ? DataStatus.Read : DataStatus.Memory, found.Substances[0].Source.Status);
    }

    [Fact]
    public void Limits_EveryRowOfTheReference_IsInTheTable() => Assert.All(PublishedTable.Rows("ifra_limits.csv", 27), row =>
    {
        RestrictedSubstance found = Assert.Single(RestrictedSubstances.All, each => each.Limit.Name == row["substance"]);
        Assert.Contains(row["cas"], found.Limit.Cas);
        Assert.Equal(row["type"] == "phototoxicity", found.Limit.IsPhototoxic);
        foreach ((string category, string column) in new[] { ("10A", "cat_10A_pct"), ("10B", "cat_10B_pct"), ("12", "cat_12_pct") })
        {
            string text = row[column].Replace(" (M)", "", StringComparison.Ordinal);
            bool has = text.Length > 0 && !text.StartsWith("no restriction", StringComparison.Ordinal);
            Assert.Equal(has, found.Limit.MaxPercent.TryGetValue(category, out decimal limit));
            Assert.True(!has || limit == decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture), row.ToString());
            Assert.True(!row[column].EndsWith("(M)", StringComparison.Ordinal) || found.Source.Status == DataStatus.Memory);
        }
    });

    private static FragranceUse Use(string kind, SubstanceLimit[] own, params (AssessedMaterial Material, decimal Percent)[] lines) => FragranceUse.Of(
        LimitFormulas.Formula(kind, [.. lines, (LimitFormulas.Material("water", MaterialKind.Water), 100 - lines.Sum(line => line.Percent))]),
        LimitFormulas.Choices() with { SubstanceLimits = own });

    private static SubstanceLimit[] Limits(JsonElement example, string category, bool arePhototoxic) => [.. example.GetProperty("limits").EnumerateObject()
        .Select(limit => new SubstanceLimit(limit.Name, [], "49", new Dictionary<string, decimal> { [category] = limit.Value.GetDecimal() }, arePhototoxic))];

    private static Dictionary<string, JsonElement> Read()
    {
        using FileStream file = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "Published", "Data", "ifra_worked_examples.json"));
        return JsonDocument.Parse(file).RootElement.GetProperty("examples").EnumerateArray().ToDictionary(example => example.GetProperty("id").GetString()!);
    }
}
