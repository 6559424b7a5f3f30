using System.Globalization;
using System.Text.Json;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>A value of a file with its path. It reads itself as what is asked for, and notes a fault where it is not that.</summary>
/// <param name="Value">Of a read document that outlives this.</param>
internal readonly record struct JsonPlace(JsonElement Value, string Path, List<FileFault> Faults)
{
    private const int LongestShown = 40;

    /// <summary>An object with these fields only; null, and a fault, for what is none.</summary>
    internal JsonFields? Fields(params string[] known)
    {
        if (Value.ValueKind != JsonValueKind.Object)
        {
            return Fault<JsonFields>($"{Kind()} stands where an object should. Write {{ … }}.");
        }

        var fields = new Dictionary<string, JsonPlace>(StringComparer.Ordinal);
        foreach (var property in Value.EnumerateObject())
        {
            var name = NameOf(property);
            var path = $"{Path}.{Short(name)}";
            if (!known.Contains(name, StringComparer.Ordinal))
            {
                Faults.Add(new(path, $"This field is not known here. Leave it out, or write one of: {string.Join(", ", known)}."));
            }
            else if (!fields.TryAdd(name, new(property.Value, path, Faults)))
            {
                Faults.Add(new(path, "The field stands here twice. Keep one."));
            }
        }

        return new(fields, this);
    }

    /// <summary>The members of a list; none, and a fault, for what is no list or too long.</summary>
    internal IReadOnlyList<JsonPlace> Items(int most)
    {
        if (Value.ValueKind != JsonValueKind.Array)
        {
            Fault<string>($"{Kind()} stands where a list should. Write [ … ].");
            return [];
        }

        var length = Value.GetArrayLength();
        if (length > most)
        {
            Fault<string>($"The list has {length} entries; at most {most} are read. Shorten it.");
            return [];
        }

        var self = this;
        return [.. Value.EnumerateArray().Select((each, i) => new JsonPlace(each, $"{self.Path}[{i}]", self.Faults))];
    }

    /// <summary>Text that is not blank.</summary>
    internal string? Text(int longest = 200)
    {
        if (Value.ValueKind != JsonValueKind.String || TextOf(Value) is not { } text)
        {
            return Fault<string>($"{Kind()} stands where text should. Write it in quotes.");
        }

        text = text.Trim();
        return text.Length == 0 ? Fault<string>("The text is empty. Write it, or leave the field out.")
            : text.Length > longest ? Fault<string>($"The text has {text.Length} characters; at most {longest} are read. Shorten it.")
            : text.Any(char.IsControl) && text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')) ? Fault<string>("The text holds control characters. Take them out.")
            : text;
    }

    internal decimal? Number(decimal least, decimal most)
    {
        if (Value.ValueKind != JsonValueKind.Number)
        {
            return NoNumber($"{Kind()} stands where a number should. Write it without quotes.");
        }

        return !Value.TryGetDecimal(out var number) || number < least || number > most
            ? NoNumber(string.Create(CultureInfo.InvariantCulture, $"{Shown()} does not lie between {least:0.######} and {most:0.######}. Check the number and its unit."))
            : number;
    }

    internal bool? Flag()
    {
        if (Value.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return Value.GetBoolean();
        }

        Faults.Add(new(Path, $"{Kind()} stands where true or false should. Write one of them, or leave the field out."));
        return null;
    }

    internal DateOnly? Day()
    {
        if (Text() is not { } text)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        Faults.Add(new(Path, $"{Shown()} is not a day. Write it as 2026-11-25."));
        return null;
    }

    /// <summary>The value that goes with one of these words.</summary>
    internal T? OneOf<T>(IReadOnlyDictionary<string, T> words)
        where T : class
    {
        if (Text() is not { } text)
        {
            return null;
        }

        return words.TryGetValue(text, out var value) ? value : Fault<T>($"{Shown()} is not known here. Write one of: {string.Join(", ", words.Keys)}.");
    }

    internal T? Fault<T>(string says)
        where T : class
    {
        Faults.Add(new(Path, says));
        return null;
    }

    internal string Shown() => Short(Value.GetRawText());

    private decimal? NoNumber(string says)
    {
        Faults.Add(new(Path, says));
        return null;
    }

    private string Kind() => Value.ValueKind switch
    {
        JsonValueKind.Object => "An object",
        JsonValueKind.Array => "A list",
        JsonValueKind.String => "Text",
        JsonValueKind.Number => "A number",
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => "null",
    };

    /// <summary>Null for text that is half a character: such a file is not Unicode.</summary>
    private static string? TextOf(JsonElement value)
    {
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static string NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return "(not Unicode)";
        }
    }

    /// <summary>What a file may have a message repeat: on one line and short.</summary>
    private static string Short(string text)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= LongestShown ? line : line[..LongestShown] + "…";
    }
}

/// <summary>The fields of an object.</summary>
internal sealed class JsonFields(IReadOnlyDictionary<string, JsonPlace> fields, JsonPlace self)
{
    internal JsonPlace Self => self;

    internal JsonPlace? this[string name] =>
        fields.TryGetValue(name, out var place) ? place : null;

    /// <summary>The field, or null and a fault where it is left out.</summary>
    internal JsonPlace? Needed(string name)
    {
        if (this[name] is { } place)
        {
            return place;
        }

        self.Faults.Add(new($"{self.Path}.{name}", "This field is missing. Add it."));
        return null;
    }
}
