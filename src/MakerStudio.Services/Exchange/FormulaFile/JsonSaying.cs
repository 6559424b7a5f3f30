using System.Text.Encodings.Web;
using System.Text.Json;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>How the program writes JSON: indented, readable letters as they are, what is not known left out.</summary>
internal static class JsonSaying
{
    private static readonly JsonWriterOptions Plain = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };

    /// <summary>Dividing by it drops the zeros a decimal carries behind its last digit: 12.00 is written 12.</summary>
    private const decimal OneWithAllZeros = 1.000000000000000000000000000m;

    internal static byte[] Write(Action<Utf8JsonWriter> root)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Plain))
        {
            json.Object(root);
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    internal static void Object(this Utf8JsonWriter json, Action<Utf8JsonWriter> inside)
    {
        json.WriteStartObject();
        inside(json);
        json.WriteEndObject();
    }

    internal static void Object(this Utf8JsonWriter json, string name, Action<Utf8JsonWriter> inside)
    {
        json.WritePropertyName(name);
        json.Object(inside);
    }

    internal static void List<T>(this Utf8JsonWriter json, string name, IEnumerable<T> all, Action<Utf8JsonWriter, T> each)
    {
        json.WriteStartArray(name);
        foreach (var item in all)
        {
            each(json, item);
        }

        json.WriteEndArray();
    }

    internal static void Objects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> all, Action<Utf8JsonWriter, T> each) =>
        json.List(name, all, (to, item) => to.Object(inside => each(inside, item)));

    internal static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> all) =>
        json.List(name, all, (to, text) => to.WriteStringValue(text));

    /// <summary>Left out where it is null.</summary>
    internal static void Text(this Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
        {
            json.WriteString(name, value);
        }
    }

    internal static void Flag(this Utf8JsonWriter json, string name, bool? value)
    {
        if (value is { } known)
        {
            json.WriteBoolean(name, known);
        }
    }

    internal static void Number(this Utf8JsonWriter json, string name, decimal? value)
    {
        if (value is { } known)
        {
            json.WriteNumber(name, known / OneWithAllZeros);
        }
    }

    /// <summary>What a model gives, to 6 decimals: more of them say nothing.</summary>
    internal static void Number(this Utf8JsonWriter json, string name, double? value)
    {
        const int decimals = 6;
        json.Number(name, value is { } known && double.IsFinite(known) && Math.Abs(known) < 1e15 ? decimal.Round((decimal)known, decimals) : null);
    }

    /// <summary><c>"density": { "value": 0.815, "unit": "g/mL" }</c>; left out where it is null.</summary>
    internal static void Quantity(this Utf8JsonWriter json, string name, decimal? value, string ucum)
    {
        if (value is { } known)
        {
            json.Object(name, to =>
            {
                to.Number("value", known);
                to.WriteString("unit", ucum);
            });
        }
    }
}
