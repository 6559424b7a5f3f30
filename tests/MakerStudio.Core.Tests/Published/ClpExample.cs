using System.Text.Json;
using MakerStudio.Core.Hazards;

namespace MakerStudio.Core.Tests.Published;

/// <summary>One example of Data/clp_worked_examples.json, turned into a mixture. The file's head gives units and status.</summary>
public sealed class ClpExample(JsonElement json)
{
    private static readonly string[] AllRoutes = ["oral", "dermal", "gas", "vapour", "dust/mist"];

    public string Id { get; } = json.GetProperty("id").GetString()!;

    public string Topic { get; } = json.GetProperty("topic").GetString()!;

    public JsonElement Inputs { get; } = json.GetProperty("inputs");

    public JsonElement Expected { get; } = json.GetProperty("expected");

    public static IReadOnlyDictionary<string, ClpExample> All { get; } = Read();

    public AcuteRoute Route => Text("route") is { } route ? RouteOf(route) : AcuteRoute.Oral;

    public MixtureFacts Mixture => new(
        Inputs.TryGetProperty("ingredients", out JsonElement ingredients) ? [.. ingredients.EnumerateArray().Select(Line)] : [],
        FlashPoint: Number(Inputs, "flash_point_c") is { } flash ? new(flash, true) : null,
        InitialBoilingPoint: Number(Inputs, "initial_boiling_point_c"),
        KinematicViscosity: Number(Inputs, "kinematic_viscosity_40C_mm2_s"),
        Ph: Number(Inputs, "mixture_pH"),
        InhaledAs: Route is AcuteRoute.Oral or AcuteRoute.Dermal ? AcuteRoute.InhalationVapour : Route,
        Scheme: Text("scheme")?.StartsWith("UN GHS", StringComparison.Ordinal) is true ? HazardScheme.UnGhs : HazardScheme.EuClp);

    public string? Text(string name) =>
        Inputs.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    public static decimal? Number(JsonElement from, string name) =>
        from.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Number ? value.GetDecimal() : null;

    public static string[] Strings(JsonElement from, string name) =>
        from.TryGetProperty(name, out JsonElement value) ? [.. value.EnumerateArray().Select(each => each.GetString()!)] : [];

    private static HazardLine Line(JsonElement ingredient) => new(
        Guid.CreateVersion7(),
        ingredient.GetProperty("name").GetString()!,
        ingredient.GetProperty("pct").GetDecimal(),
        MaterialHazards.Of(new ClassifiedSubstance(ingredient.GetProperty("name").GetString()!, null, Facts(ingredient))));

    private static HazardFacts Facts(JsonElement ingredient)
    {
        ClassificationReading classes = ClassificationText.Parse(string.Join(';', Strings(ingredient, "classification")));
        Assert.Empty(classes.NotRead);
        return new(
            classes.Entries,
            Pairs(ingredient, "scl").Select(pair => new SpecificLimit(Assert.Single(ClassificationText.Parse(pair.Name).Entries).Category, pair.Value)),
            Pairs(ingredient, "ate").Select(pair => new AcuteEstimate(RouteOf(pair.Name), pair.Value)),
            (int?)Number(ingredient, "M_acute"),
            (int?)Number(ingredient, "M_chronic"),
            !(ingredient.TryGetProperty("additivity", out JsonElement adds) && adds.ValueKind == JsonValueKind.False),
            Number(ingredient, "pH"),
            notKnown: Strings(ingredient, "unknown").Select(route => AcuteRanges.ClassOf(RouteOf(route))));
    }

    private static IEnumerable<(string Name, decimal Value)> Pairs(JsonElement from, string name) =>
        from.TryGetProperty(name, out JsonElement pairs) ? pairs.EnumerateObject().Select(pair => (pair.Name, pair.Value.GetDecimal())) : [];

    private static AcuteRoute RouteOf(string text)
    {
        int index = Array.FindIndex(AllRoutes, route => text.Contains(route, StringComparison.OrdinalIgnoreCase));
        Assert.True(index >= 0, text);
        return (AcuteRoute)index;
    }

    private static Dictionary<string, ClpExample> Read()
    {
        using FileStream file = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "Published", "Data", "clp_worked_examples.json"));
        return JsonDocument.Parse(file).RootElement.GetProperty("examples").EnumerateArray()
            .Select(example => new ClpExample(example))
            .ToDictionary(example => example.Id, StringComparer.Ordinal);
    }
}
