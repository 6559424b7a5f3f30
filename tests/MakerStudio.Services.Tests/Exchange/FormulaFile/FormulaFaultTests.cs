using System.Text;
using System.Text.Json.Nodes;
using MakerStudio.Core.Assessing;
using MakerStudio.Services.Exchange.FormulaFile;

namespace MakerStudio.Services.Tests.Exchange.FormulaFile;

/// <summary>Bad files: each fault with its place, and nothing that makes the reader fall over.</summary>
public class FormulaFaultTests
{
    private static readonly string[] Hostile =
    [
        "null", "true", "[]", "{}", "\"\"", "\" \"", "-1", "1e999", "-1e999", "99999999999999999999999999999999", "1e-999", "0.00000000000000000000000000001",
        "\"NaN\"", "\"\\ud800\"", "\"\\u0000\"", "[[[[[[]]]]]]", "{\"value\":null,\"unit\":\"%\"}", "{\"value\":5}", "\"2026-02-30\"", "\"64-17-6\"",
        "{\"\\udc00\":1}", "{\"value\":1,\"value\":2,\"unit\":\"%\"}", "\"eu\"", "\"%\"", "0", "100", "\"a\"", "2147483648",
    ];

    [Theory]
    [InlineData("")]
    [InlineData("  \n")]
    [InlineData("{")]
    [InlineData("nonsense")]
    [InlineData("{\"format\": NaN}")]
    [InlineData("{ // comment\n \"format\": \"makerstudio/formula/1\" }")]
    [InlineData("{\"format\": \"makerstudio/formula/1\",}")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("1e999")]
    [InlineData("{\"format\": \"makerstudio/formula/2\"}")]
    [InlineData("{\"format\": \"makerstudio/formula/1\"}")]
    public void Read_NoFormula_IsFaultsAtTheirPlace(string text)
    {
        FormulaReading reading = FormulaDocumentReader.Read(Encoding.UTF8.GetBytes(text));
        Assert.Null(reading.Document);
        Assert.NotEmpty(reading.Faults);
        Assert.All(reading.Faults, fault =>
        {
            Assert.StartsWith("$", fault.Path, StringComparison.Ordinal);
            Assert.EndsWith(".", fault.Says, StringComparison.Ordinal);
            Assert.DoesNotContain('\n', fault.ToString());
        });
    }

    [Fact]
    public void Read_TenThousandBrackets_IsAFault() =>
        Assert.Contains("not JSON", Assert.Single(FormulaDocumentReader.Read(Encoding.ASCII.GetBytes(new string('[', 10_000))).Faults).Says, StringComparison.Ordinal);

    [Fact]
    public void Read_BytesThatAreNoUnicode_IsAFault() => Assert.NotEmpty(FormulaDocumentReader.Read(new byte[] { (byte)'"', 0xFF, 0xFE, (byte)'"' }).Faults);

    [Fact]
    public void Read_TooManyBytes_IsAFault() => Assert.Single(FormulaDocumentReader.Read(new byte[FormulaDocumentReader.MostBytes + 1]).Faults);

    [Fact]
    public void Read_ManyFaults_AreCutShortAndSaidSo()
    {
        JsonNode file = FormatFiles.FigNode();
        file["formula"]!["lines"] = new JsonArray([.. Enumerable.Range(0, 150).Select(_ => (JsonNode)new JsonObject { ["material"] = "none" })]);
        FormulaReading reading = FormulaDocumentReader.Read(FormatFiles.Bytes(file));
        Assert.Equal(101, reading.Faults.Count);
        Assert.Contains("more faults", reading.Faults[^1].Says, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("formula.lines.0.amount.unit", "\"oz\"", "$.formula.lines[0].amount.unit")]
    [InlineData("formula.lines.0.amount.value", "-3", "$.formula.lines[0].amount.value")]
    [InlineData("formula.lines.0.amount.value", "1e999", "$.formula.lines[0].amount.value")]
    [InlineData("formula.lines.0.material", "\"nobody\"", "$.formula.lines[0].material")]
    [InlineData("formula.kind", "\"perfume\"", "$.formula.kind")]
    [InlineData("formula.name", "\"\"", "$.formula.name")]
    [InlineData("materials.0.density.value", "98", "$.materials[0].density.value")]
    [InlineData("materials.1.cas", "\"25265-71-9\"", "$.materials[1].cas")]
    [InlineData("materials.0.id", "\"Fig Oil\"", "$.materials[0].id")]
    [InlineData("materials.0.hazards.classes", "\"Skin Sens. 1 H317; nice smell\"", "$.materials[0].hazards.classes")]
    [InlineData("materials.0.composition.0.share", "{\"low\":10,\"high\":5,\"unit\":\"%\"}", "$.materials[0].composition[0].share")]
    [InlineData("materials.0.fragranceCertificate.issuedOn", "\"10.1.2026\"", "$.materials[0].fragranceCertificate.issuedOn")]
    [InlineData("materials.2.alcoholStrength.value", "196", "$.materials[2].alcoholStrength.value")]
    [InlineData("materials.0.colour", "\"green\"", "$.materials[0].colour")]
    [InlineData("market.scheme", "\"mars\"", "$.market.scheme")]
    [InlineData("market.vocLimits", "[\"none\"]", "$.market.vocLimits[0]")]
    public void Read_OneThingWrong_NamesItsPlace(string where, string value, string path)
    {
        FormulaReading reading = FormulaDocumentReader.Read(Changed(where.Split('.'), value));
        Assert.Null(reading.Document);
        Assert.Contains(reading.Faults, fault => fault.Path == path);
    }

    [Fact]
    public void Read_FieldTwice_IsAFault()
    {
        string text = Encoding.UTF8.GetString(FormatFiles.Fig).Replace("\"name\": \"Fig\",", "\"name\": \"Fig\", \"name\": \"Plum\",", StringComparison.Ordinal);
        Assert.Contains(FormulaDocumentReader.Read(Encoding.UTF8.GetBytes(text)).Faults, fault => fault.Path == "$.formula.name" && fault.Says.Contains("twice", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_SameIdTwice_IsAFault() => Assert.Contains(
        FormulaDocumentReader.Read(Changed(["materials", "1", "id"], "\"alcohol\"")).Faults, fault => fault.Path == "$.materials[2]");

    /// <summary>Every value of the example in turn, replaced by every hostile one: read or refused, never thrown; what is read holds by the schema.</summary>
    [Fact]
    public void Read_EveryValueReplaced_NeverThrowsAndAgreesWithTheSchema()
    {
        int read = 0;
        foreach (string[] place in Places(FormatFiles.FigNode(), []))
        {
            foreach (string value in Hostile)
            {
                byte[] bytes = Changed(place, value);
                if (Attempt(bytes) && place.Length > 0)
                {
                    read++;
                    Assert.True(FormatFiles.IsFormula(bytes), $"{string.Join('.', place)} = {value} is read, but not by the schema.");
                }
            }
        }

        Assert.True(read > 50, $"Only {read} of the changed files were read.");
    }

    [Fact]
    public void Read_BytesAtRandom_NeverThrows()
    {
        var random = new Random(20261125);
        for (int i = 0; i < 3000; i++)
        {
            byte[] bytes = [.. FormatFiles.Fig];
            for (int j = random.Next(1, 6); j > 0; j--)
            {
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            }

            Attempt(random.Next(4) == 0 ? bytes[..random.Next(bytes.Length)] : bytes);
        }
    }

    /// <summary>As the command does it; true where an assessment came out.</summary>
    private static bool Attempt(byte[] bytes)
    {
        if (FormulaDocumentReader.Read(bytes).Document is not { } document || document.ToAssessed().Formula is not { } formula)
        {
            return false;
        }

        var choices = document.Market ?? new(LabelScheme.EuropeanUnion, [], null, [], new(2026, 11, 25));
        return Assessment.Of(formula, choices) is { } assessment && AssessmentDocument.Write(document.Name, assessment).Length > 0;
    }

    private static IEnumerable<string[]> Places(JsonNode? node, string[] at) => node switch
    {
        JsonObject fields => fields.SelectMany(field => Places(field.Value, [.. at, field.Key])).Prepend(at),
        JsonArray items => items.SelectMany((item, i) => Places(item, [.. at, $"{i}"])).Prepend(at),
        _ => [at],
    };

    /// <summary>The example with one value written over, as text: some of it no writer would write.</summary>
    private static byte[] Changed(string[] place, string value)
    {
        const string mark = "\u2603 here";
        if (place.Length == 0)
        {
            return Encoding.UTF8.GetBytes(value);
        }

        JsonNode file = FormatFiles.FigNode();
        JsonNode parent = file;
        foreach (string step in place[..^1])
        {
            parent = parent is JsonArray items ? items[int.Parse(step)]! : parent[step]!;
        }

        if (parent is JsonArray list)
        {
            list[int.Parse(place[^1])] = mark;
        }
        else
        {
            parent[place[^1]] = mark;
        }

        string text = file.ToJsonString(new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        return Encoding.UTF8.GetBytes(text.Replace($"\"{mark}\"", value, StringComparison.Ordinal));
    }
}
