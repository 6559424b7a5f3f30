using MakerStudio.Core.Assessing;
using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Voc;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>Reads where a formula is sold and by which limits.</summary>
internal static class MarketReader
{
    private const int MostLimits = 100;

    internal static MarketChoices? Read(JsonPlace place)
    {
        if (place.Fields("scheme", "vocLimits", "allergenThreshold", "substanceLimits", "on") is not { } fields)
        {
            return null;
        }

        var scheme = fields.Needed("scheme")?.OneOf(FileWords.Schemes);
        IReadOnlyDictionary<string, VocLimit> rows = VocLimits.All.ToDictionary(limit => limit.Key, StringComparer.Ordinal);
        string[] voc = [.. (fields["vocLimits"]?.Items(MostLimits) ?? []).Select(key => key.OneOf(rows)?.Key).OfType<string>()];
        var threshold = FileUnits.Percent.Read(fields["allergenThreshold"]);
        SubstanceLimit[] own = [.. (fields["substanceLimits"]?.Items(MostLimits) ?? []).Select(Limit).OfType<SubstanceLimit>()];
        var on = fields.Needed("on")?.Day();
        return scheme is null || on is null ? null : new(scheme.Value, voc, threshold, own, on.Value);
    }

    private static SubstanceLimit? Limit(JsonPlace place)
    {
        if (place.Fields("name", "cas", "amendment", "maximum", "isPhototoxic") is not { } fields)
        {
            return null;
        }

        var name = fields.Needed("name")?.Text();
        string[] cas = [.. (fields.Needed("cas")?.Items(MostLimits) ?? []).Select(each => MaterialReader.Cas(each)).OfType<Core.Materials.CasNumber>().Select(each => each.Text)];
        var amendment = fields.Needed("amendment")?.Text(20);
        var maximum = MaterialReader.Maximum(fields.Needed("maximum"));
        return name is null || amendment is null ? null : new(name, cas, amendment, maximum, fields["isPhototoxic"]?.Flag() ?? false);
    }
}
