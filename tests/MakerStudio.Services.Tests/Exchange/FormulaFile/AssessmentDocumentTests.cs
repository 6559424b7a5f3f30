using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Products;
using MakerStudio.Services.Exchange.FormulaFile;

namespace MakerStudio.Services.Tests.Exchange.FormulaFile;

public class AssessmentDocumentTests
{
    public static TheoryData<string, string> KindsAndSchemes()
    {
        var all = new TheoryData<string, string>();
        foreach (ProductKind kind in ProductKinds.All)
        {
            all.Add(kind.Key, "eu");
            all.Add(kind.Key, "us");
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(KindsAndSchemes))]
    public void Write_EveryKindAndScheme_HoldsByTheSchema(string kind, string scheme)
    {
        JsonNode file = FormatFiles.FigNode();
        file["formula"]!["kind"] = kind;
        file["market"]!["scheme"] = scheme;
        file["market"]!["vocLimits"] = new JsonArray("us-air-freshener-liquid", "ca-air-freshener-liquid");
        byte[] written = Written(file);
        Assert.True(FormatFiles.IsAssessment(written), Encoding.UTF8.GetString(written));
    }

    /// <summary>Nothing known of anything, a measured flash point, water alone: every shape of result.</summary>
    [Fact]
    public void Write_LittleKnownOrMuchMeasured_HoldsByTheSchema()
    {
        JsonNode bare = FormatFiles.FigNode();
        foreach (JsonNode? material in bare["materials"]!.AsArray())
        {
            foreach (string field in material!.AsObject().Select(each => each.Key).Except(["id", "name", "kind"]).ToArray())
            {
                material.AsObject().Remove(field);
            }
        }

        JsonNode measured = FormatFiles.FigNode();
        measured["formula"]!["measured"] = new JsonObject
        {
            ["density"] = new JsonObject { ["value"] = 0.82, ["unit"] = "g/mL" },
            ["flashPoint"] = new JsonObject { ["value"] = 17.5, ["unit"] = "Cel" },
        };
        JsonNode water = FormatFiles.FigNode();
        water["materials"]!.AsArray().Add(JsonNode.Parse("""{"id":"water","name":"Water","kind":"water"}"""));
        water["formula"]!["lines"] = JsonNode.Parse("""[{"material":"water","amount":{"value":10,"unit":"g"}}]""");
        Assert.All([bare, measured, water], file =>
        {
            byte[] written = Written(file);
            Assert.True(FormatFiles.IsAssessment(written), Encoding.UTF8.GetString(written));
        });
        Assert.Contains("\"result\": \"measured\"", Encoding.UTF8.GetString(Written(measured)), StringComparison.Ordinal);
    }

    [Fact]
    public void Write_UnderAnotherCulture_IsTheSame()
    {
        byte[] expected = Written(FormatFiles.FigNode());
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(expected, Written(FormatFiles.FigNode()));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static byte[] Written(JsonNode file)
    {
        FormulaReading reading = FormulaDocumentReader.Read(FormatFiles.Bytes(file));
        Assert.Empty(reading.Faults);
        var (formula, faults) = reading.Document!.ToAssessed();
        Assert.Empty(faults);
        return AssessmentDocument.Write(reading.Document.Name, Assessment.Of(formula!, reading.Document.Market!)!);
    }
}
