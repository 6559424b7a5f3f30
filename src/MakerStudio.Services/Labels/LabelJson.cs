using System.Text.Json;
using System.Text.Json.Serialization;

namespace MakerStudio.Services.Labels;

/// <summary>How frozen labels are written into their columns.</summary>
internal static class LabelJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Options) ?? throw new InvalidOperationException("An empty label was kept.");
}
