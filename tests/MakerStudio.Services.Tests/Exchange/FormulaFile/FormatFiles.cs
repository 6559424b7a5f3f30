using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace MakerStudio.Services.Tests.Exchange.FormulaFile;

/// <summary>The documented files of docs/format, as they are shipped.</summary>
internal static class FormatFiles
{
    private static readonly JsonSchema FormulaSchema = JsonSchema.FromText(Text("formula.schema.json"));
    private static readonly JsonSchema AssessmentSchema = JsonSchema.FromText(Text("assessment.schema.json"));

    internal static byte[] Fig { get; } = Encoding.UTF8.GetBytes(Text("fig.json"));

    internal static JsonNode FigNode() => JsonNode.Parse(Fig)!;

    internal static bool IsFormula(ReadOnlySpan<byte> bytes) => Holds(FormulaSchema, bytes);

    internal static bool IsAssessment(ReadOnlySpan<byte> bytes) => Holds(AssessmentSchema, bytes);

    internal static byte[] Bytes(JsonNode node) => Encoding.UTF8.GetBytes(node.ToJsonString());

    private static bool Holds(JsonSchema schema, ReadOnlySpan<byte> bytes)
    {
        using var document = JsonDocument.Parse(bytes.ToArray());
        return schema.Evaluate(document.RootElement).IsValid;
    }

    internal static string Text(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Exchange", "FormulaFile", "Format", name));
}
