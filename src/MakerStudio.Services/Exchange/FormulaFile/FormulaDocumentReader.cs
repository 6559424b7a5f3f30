using System.Globalization;
using System.Text.Json;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <param name="Document">Null where there is any fault.</param>
/// <param name="Faults">Each with its path, in the order of the file.</param>
public sealed record FormulaReading(FormulaDocument? Document, IReadOnlyList<FileFault> Faults);

/// <summary>Reads the open format. Whatever the bytes are, it answers with a document or with faults, and does not throw.</summary>
public static class FormulaDocumentReader
{
    /// <summary>A formula of a studio takes some kilobytes.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    private const int Deepest = 32;
    private const int MostLines = 200;
    private const int MostFaults = 100;
    private const decimal MostAmount = 1_000_000_000m;

    public static FormulaReading Read(ReadOnlyMemory<byte> bytes)
    {
        var faults = new List<FileFault>();
        FormulaDocument? document = null;
        if (bytes.Length > MostBytes)
        {
            faults.Add(new("$", $"The file has more than {MostBytes / 1024 / 1024} MB. It is none of a formula; choose another."));
        }
        else if (Parse(bytes, faults) is { } json)
        {
            using (json)
            {
                document = Document(new(json.RootElement, "$", faults));
            }
        }

        return faults.Count == 0
            ? new(document, [])
            : new(null, faults.Count <= MostFaults ? faults : [.. faults.Take(MostFaults), new("$", $"There are {faults.Count - MostFaults} more faults. Mend these first.")]);
    }

    private static JsonDocument? Parse(ReadOnlyMemory<byte> bytes, List<FileFault> faults)
    {
        ReadOnlySpan<byte> mark = [0xEF, 0xBB, 0xBF];
        var text = bytes.Span.StartsWith(mark) ? bytes[mark.Length..] : bytes;
        if (text.Span.Trim(" \t\r\n"u8).IsEmpty)
        {
            faults.Add(new("$", "The file is empty. Choose one that holds a formula."));
            return null;
        }

        try
        {
            return JsonDocument.Parse(text, new() { MaxDepth = Deepest, CommentHandling = JsonCommentHandling.Disallow, AllowTrailingCommas = false });
        }
        catch (JsonException wrong)
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"line {wrong.LineNumber + 1}, byte {wrong.BytePositionInLine + 1}");
            faults.Add(new("$", $"The file is not JSON at {place}. Comments, NaN, a comma before a closing bracket and nesting deeper than {Deepest} are none; mend it there."));
            return null;
        }
    }

    private static FormulaDocument? Document(JsonPlace root)
    {
        if (root.Fields("format", "formula", "materials", "market", "$schema") is not { } file)
        {
            return null;
        }

        if (file.Needed("format") is { } format && format.Text() is { } version && version != FormulaDocument.Format)
        {
            format.Fault<string>($"This is {format.Shown()}. This program reads \"{FormulaDocument.Format}\".");
            return null;
        }

        var materials = MaterialReader.Read(file.Needed("materials"));
        var market = file["market"] is { } chosen ? MarketReader.Read(chosen) : null;
        return file.Needed("formula")?.Fields(
            "name", "kind", "note", "lines", "pack", "measured", "enoughScent", "sealedSpray") is { } formula
            ? Document(formula, materials, market)
            : null;
    }

    private static FormulaDocument? Document(JsonFields formula, IReadOnlyList<FileMaterial> materials, MarketChoices? market)
    {
        var name = formula.Needed("name")?.Text();
        ProductKind? kind = formula.Needed("kind")?.OneOf(FileWords.ProductKinds);
        IReadOnlyList<FileLine> lines = Lines(formula.Needed("lines"), materials);
        var measured = Measured(formula["measured"]);
        var pack = FileUnits.Volume.Read(formula["pack"]);
        var enough = FileUnits.Percent.Read(formula["enoughScent"]);
        var isSealed = formula["sealedSpray"]?.Flag();
        var note = formula["note"]?.Text(longest: 4000);
        return name is null || kind is null ? null : new(name, kind, lines, materials, measured, pack, enough, isSealed, note, market);
    }

    private static IReadOnlyList<FileLine> Lines(JsonPlace? place, IReadOnlyList<FileMaterial> materials)
    {
        var items = place?.Items(MostLines) ?? [];
        if (place is { Value.ValueKind: JsonValueKind.Array } list && list.Value.GetArrayLength() == 0)
        {
            list.Fault<string>("A formula has at least one line. Add it.");
        }

        HashSet<string> keys = [.. materials.Select(material => material.Key)];
        return [.. items.Select(item => Line(item, keys)).OfType<FileLine>()];
    }

    private static FileLine? Line(JsonPlace place, HashSet<string> keys)
    {
        if (place.Fields("material", "amount") is not { } line)
        {
            return null;
        }

        var named = line.Needed("material");
        var material = named?.Text(MaterialReader.LongestKey);
        if (material is not null && !keys.Contains(material))
        {
            named!.Value.Fault<string>($"No material of the file is called {named.Value.Shown()}. Add it under $.materials, or correct the name.");
        }

        if (line.Needed("amount")?.Fields("value", "rest", "unit", "basis") is not { } amount)
        {
            return null;
        }

        var basis = FileWords.BasisOf(amount, FileWords.Bases);
        var isRest = amount["rest"]?.Flag() ?? false;
        var value = isRest ? null : amount.Needed("value")?.Number(0, MostAmount);
        if (isRest && amount["value"] is { } both)
        {
            both.Fault<string>("A line that is the rest has no value of its own. Leave one of the two out.");
        }

        return material is null || basis is null ? null : new(material, value, basis.Value);
    }

    private static MeasuredFacts Measured(JsonPlace? place)
    {
        if (place?.Fields("density", "flashPoint", "boilingPoint", "sustainsCombustion", "viscosity", "pH") is not { } measured)
        {
            return MeasuredFacts.None;
        }

        return new(
            Density.WherePossible(FileUnits.Density.Read(measured["density"])),
            FileUnits.Temperature.Read(measured["flashPoint"]) is { } flash ? new Celsius(flash) : null,
            FileUnits.Temperature.Read(measured["boilingPoint"]) is { } boiling ? new Celsius(boiling) : null,
            measured["sustainsCombustion"]?.Flag(),
            FileUnits.Viscosity.Read(measured["viscosity"]),
            FileUnits.Ph.Read(measured["pH"]));
    }
}
