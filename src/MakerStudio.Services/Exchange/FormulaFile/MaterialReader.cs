using System.Text.RegularExpressions;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>Reads the materials of a file.</summary>
internal static partial class MaterialReader
{
    internal const int LongestKey = 64;

    private const int Most = 200;
    private const int MostSubstances = 500;
    private const int LongestHazards = 4000;

    internal static IReadOnlyList<FileMaterial> Read(JsonPlace? place)
    {
        var found = new List<FileMaterial>();
        foreach (var item in place?.Items(Most) ?? [])
        {
            if (Material(item) is { } material)
            {
                if (found.Exists(each => each.Key == material.Key))
                {
                    item.Fault<string>($"Two materials are called \"{material.Key}\". Give each an id of its own.");
                }

                found.Add(material);
            }
        }

        return found;
    }

    private static FileMaterial? Material(JsonPlace place)
    {
        if (place.Fields(
            "id", "name", "kind", "cas", "density", "alcoholStrength", "flashPoint", "dropMass", "hazards", "composition", "fragranceCertificate",
            "volatileShare", "vanillinShare", "holdsCitrus", "phthalateFree", "cmrFree", "missingPapers", "scentShare") is not { } fields)
        {
            return null;
        }

        var key = Key(fields.Needed("id"));
        var name = fields.Needed("name")?.Text();
        var kind = fields.Needed("kind")?.OneOf(FileWords.MaterialKinds);
        var facts = new AssessedMaterial(
            Guid.CreateVersion7(),
            name ?? "",
            kind?.Value ?? default,
            Cas(fields["cas"]),
            Density.WherePossible(FileUnits.Density.Read(fields["density"])),
            Strength(fields["alcoholStrength"]),
            FileUnits.Temperature.Read(fields["flashPoint"]) is { } flash ? new Celsius(flash) : null,
            Hazards(fields["hazards"]),
            Composition(fields["composition"]),
            Certificate(fields["fragranceCertificate"]),
            FileUnits.Percent.Read(fields["volatileShare"]),
            FileUnits.Percent.Read(fields["vanillinShare"]),
            fields["holdsCitrus"]?.Flag() ?? false,
            fields["phthalateFree"]?.Flag(),
            fields["cmrFree"]?.Flag(),
            [.. (fields["missingPapers"]?.Items(10) ?? []).Select(paper => paper.OneOf(FileWords.Papers)).OfType<Word<PaperKind>>().Select(word => word.Value).Distinct()],
            FileUnits.Percent.Read(fields["scentShare"]) / 100m);
        var drop = FileUnits.DropMass.Read(fields["dropMass"]);
        return key is null || name is null || kind is null ? null : new(key, facts, drop);
    }

    private static string? Key(JsonPlace? place)
    {
        var key = place?.Text(LongestKey);
        return key is null || PlainKey().IsMatch(key)
            ? key
            : place!.Value.Fault<string>($"{place.Value.Shown()} is no id. Write it of the letters a to z, digits and hyphens.");
    }

    internal static CasNumber? Cas(JsonPlace? place)
    {
        if (place?.Text() is not { } text)
        {
            return null;
        }

        return CasNumber.TryParse(text, out var cas, out var why) ? cas : place.Value.Fault<CasNumber>(why);
    }

    private static AlcoholStrength? Strength(JsonPlace? place)
    {
        const decimal most = 200;
        if (place?.Fields("value", "unit", "basis") is not { } fields)
        {
            return null;
        }

        var basis = FileWords.BasisOf(fields, FileWords.Strengths);
        var value = fields.Needed("value")?.Number(0, basis == AlcoholBasis.UsProof ? most : 100);
        return basis is { } of && value is { } number && AlcoholStrength.IsPossible(number, of) ? new(number, of) : null;
    }

    private static StatedHazards? Hazards(JsonPlace? place)
    {
        if (place?.Fields("classes", "limits", "acuteToxicity", "mFactors") is not { } fields)
        {
            return null;
        }

        var acute = fields["acuteToxicity"]?.Fields("oral", "dermal", "vapour", "mist");
        var factors = fields["mFactors"]?.Fields("acute", "chronic");
        var stated = new StatedHazards(
            fields["classes"]?.Text(LongestHazards),
            fields["limits"]?.Text(LongestHazards),
            FileUnits.ByBodyWeight.Read(acute?["oral"]),
            FileUnits.ByBodyWeight.Read(acute?["dermal"]),
            FileUnits.InAir.Read(acute?["vapour"]),
            FileUnits.InAir.Read(acute?["mist"]),
            Factor(factors?["acute"]),
            Factor(factors?["chronic"]));
        foreach (var said in stated.Read().NotRead)
        {
            (fields["limits"] is { } limits && said.Contains("specific limit", StringComparison.Ordinal) ? limits : fields["classes"] ?? place.Value).Fault<string>(said);
        }

        return stated;
    }

    private static int? Factor(JsonPlace? place)
    {
        const decimal most = 1_000_000_000m;
        if (place?.Number(1, most) is not { } factor)
        {
            return null;
        }

        if (factor == decimal.Truncate(factor))
        {
            return (int)factor;
        }

        place.Value.Fault<string>("An M-factor is a whole number: 1, 10, 100 … Correct it.");
        return null;
    }

    private static IReadOnlyList<StatedSubstance> Composition(JsonPlace? place) =>
        [.. (place?.Items(MostSubstances) ?? []).Select(Substance).OfType<StatedSubstance>()];

    private static StatedSubstance? Substance(JsonPlace place)
    {
        if (place.Fields("name", "cas", "share", "hazards") is not { } fields)
        {
            return null;
        }

        var name = fields.Needed("name")?.Text();
        var cas = Cas(fields["cas"])?.Text;
        var hazards = Hazards(fields["hazards"]);
        if (fields.Needed("share")?.Fields("low", "high", "stated", "unit") is not { } share)
        {
            return null;
        }

        FileUnits.Percent.Factor(share.Needed("unit"));
        var stated = share["stated"]?.Number(0, 100);
        var low = share["low"]?.Number(0, 100);
        var high = share["high"]?.Number(0, 100);
        if (share["stated"] is null && share["high"] is null)
        {
            share.Self.Fault<string>("The share has neither \"stated\" nor \"high\". Write the value, or the range of the sheet.");
        }

        var top = high ?? stated ?? 0;
        if (low > top)
        {
            share.Self.Fault<string>("The range ends below where it begins. Write the low end under \"low\".");
        }

        return name is null ? null : new(name, cas, low ?? (high is null ? stated ?? 0 : 0), top, stated, hazards);
    }

    private static FragranceCertificate? Certificate(JsonPlace? place)
    {
        if (place?.Fields("amendment", "issuedOn", "maximum") is not { } fields)
        {
            return null;
        }

        var amendment = fields.Needed("amendment")?.Text(20);
        var issued = fields["issuedOn"]?.Day();
        var maximum = Maximum(fields.Needed("maximum"));
        return amendment is null ? null : new(amendment, issued, maximum);
    }

    /// <summary>Per cent of the finished product by category: <c>{ "unit": "%", "10A": 20 }</c>.</summary>
    internal static IReadOnlyDictionary<string, decimal> Maximum(JsonPlace? place)
    {
        string[] categories = [.. FragranceCategories.All.SelectMany(category => category.Keys)];
        var limits = new Dictionary<string, decimal>(StringComparer.Ordinal);
        if (place?.Fields([.. categories, "unit"]) is { } maximum)
        {
            FileUnits.Percent.Factor(maximum.Needed("unit"));
            foreach (var category in categories)
            {
                if (maximum[category]?.Number(0, 100) is { } percent)
                {
                    limits.Add(category, percent);
                }
            }
        }

        return limits;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex PlainKey();
}
