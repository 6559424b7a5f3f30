using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Voc;

/// <summary>
/// What decides for each substance whether it counts: a table of its own, and for the rest the physical table of
/// substances. A supplier's statement overrules both.
/// </summary>
public static partial class VocSubstances
{
    /// <summary>Pa, exactly: a standard atmosphere is 760 mmHg.</summary>
    public const double PascalPerMillimetreOfMercury = Substance.StandardAtmosphere / 760;

    /// <summary>How the physical table marks a vapour pressure that is not to be relied on.</summary>
    private const string Extrapolated = "EXTRAPOLATED";

    public static IReadOnlyList<VocSubstance> All { get; } = Read();

    private static readonly FrozenDictionary<string, Judged> Table = All.ToFrozenDictionary(
        substance => substance.Cas,
        substance => new Judged(substance, substance.Judge(VocDefinition.UsFederal), substance.Judge(VocDefinition.California)),
        StringComparer.Ordinal);

    /// <summary>Null where nothing is known of the substance.</summary>
    public static VocSubstance? Find(string cas) => Table.GetValueOrDefault(cas)?.Substance;

    internal static VocJudgement? Judge(string? cas, VocDefinition definition) =>
        cas is not null && Table.GetValueOrDefault(cas) is { } judged
            ? definition == VocDefinition.UsFederal ? judged.Federal : judged.California
            : null;

    private sealed record Judged(VocSubstance Substance, VocJudgement Federal, VocJudgement California);

    private static List<VocSubstance> Read()
    {
        List<VocSubstance> own = [.. DataTable.Read("voc_substances.csv").Select(Read)];
        HashSet<string> known = [.. own.Select(substance => substance.Cas)];
        own.AddRange(Substances.All.Where(substance => !known.Contains(substance.Cas.Text)).Select(Read));
        return own;
    }

    private static VocSubstance Read(DataRow row) => new(
        row.Text("cas"),
        row.Text("name"),
        row.Yes("organic"),
        row.Has("fewest_carbon_atoms") ? (int)row.Number("fewest_carbon_atoms") : null,
        row.NumberOrNull("vapour_20C_mmHg") is { } vapour ? new(vapour, row.Yes("vapour_is_below") ? VapourReading.AtMost : VapourReading.Value) : null,
        row.NumberOrNull("boiling_from_C"),
        row.Yes("solid_at_20C"),
        row.Yes("sublimes"),
        row.Source(),
        row.Text("note"));

    /// <summary>A vapour pressure at 25 °C stands in for one at 20 °C that is missing: it is higher.</summary>
    private static VocSubstance Read(Substance substance)
    {
        DataStatus status = substance.BoilingPoint?.Source.Status ?? DataStatus.Memory;
        Vapour? vapour = (substance.VapourPressure?.At20 ?? substance.VapourPressure?.At25) is { } pascal
            ? new(
                pascal / PascalPerMillimetreOfMercury,
                substance.VapourPressure!.Source.Citation.Contains(Extrapolated, StringComparison.Ordinal) ? VapourReading.Rough : VapourReading.Value)
            : null;
        return new(
            substance.Cas.Text,
            substance.Name,
            IsOrganic: !substance.DoesNotBurn,
            CarbonAtoms(substance.Formula),
            vapour,
            substance.BoilingPoint?.Value,
            IsSolid: false,
            Sublimes: false,
            new("table of substances", DataStatuses.Weaker(status, substance.VapourPressure?.Source.Status ?? status)),
            substance.Note);
    }

    private static int CarbonAtoms(string formula) => CarbonInFormula().Match(formula) is { Success: true } match
        ? match.Groups[1].Length == 0 ? 1 : int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)
        : 0;

    [GeneratedRegex("^C([0-9]*)(?=[A-Z]|$)")]
    private static partial Regex CarbonInFormula();
}
