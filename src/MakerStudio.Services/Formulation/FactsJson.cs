using System.Text.Json;
using System.Text.Json.Serialization;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Formulation;

/// <summary>Carries materials' facts from the prerendered page to the live one. Only the house reads what it wrote.</summary>
internal sealed class FactsJson : JsonConverter<IReadOnlyDictionary<Guid, AssessedMaterial>>
{
    private static readonly JsonSerializerOptions Plain = new() { Converters = { new DensityJson(), new CasJson() } };

    public override IReadOnlyDictionary<Guid, AssessedMaterial> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        JsonSerializer.Deserialize<Dictionary<Guid, AssessedMaterial>>(ref reader, Plain)!;

    public override void Write(Utf8JsonWriter writer, IReadOnlyDictionary<Guid, AssessedMaterial> value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, value, Plain);

    private sealed class DensityJson : JsonConverter<Density>
    {
        public override Density Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetDecimal());

        public override void Write(Utf8JsonWriter writer, Density value, JsonSerializerOptions options) => writer.WriteNumberValue(value.GramsPerMillilitre);
    }

    private sealed class CasJson : JsonConverter<CasNumber>
    {
        public override CasNumber Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => CasNumber.Of(reader.GetString()!);

        public override void Write(Utf8JsonWriter writer, CasNumber value, JsonSerializerOptions options) => writer.WriteStringValue(value.Text);
    }
}
