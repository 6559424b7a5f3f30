using System.Collections.Frozen;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Materials;

/// <summary>
/// The built-in table of solvents, carriers, fixatives and aroma substances: physical figures, each with source and
/// status. Defaults to start from; a supplier's safety data sheet overrules them.
/// </summary>
public static class Substances
{
    public const string EthanolCas = "64-17-5";
    public const string WaterCas = "7732-18-5";

    private static readonly Lazy<FrozenDictionary<string, Substance>> Table =
        new(() => Read().ToFrozenDictionary(substance => substance.Cas.Text));

    public static IReadOnlyList<Substance> All { get; } = [.. Table.Value.Values.OrderBy(substance => substance.Name, StringComparer.Ordinal)];

    public static Substance Ethanol => Table.Value[EthanolCas];

    public static Substance Water => Table.Value[WaterCas];

    /// <summary>Null where the table does not hold it.</summary>
    public static Substance? Find(CasNumber? cas) => cas is null ? null : Table.Value.GetValueOrDefault(cas.Text);

    private static IEnumerable<Substance> Read()
    {
        ILookup<string, Antoine> antoine = DataTable.Read("antoine.csv").ToLookup(row => row.Text("cas"), row => new Antoine(
            row.Number("a_log10_Pa"), row.Number("b_K"), row.Number("c_K"), row.Number("from_K"), row.Number("to_K"), row.Source()));
        return DataTable.Read("substances.csv").Select(row => Read(row, [.. antoine[row.Text("cas")]]));
    }

    private static Substance Read(DataRow row, IReadOnlyList<Antoine> antoine) => new(
        CasNumber.Of(row.Text("cas")),
        row.Text("name"),
        row.Text("formula"),
        row.Number("molar_mass_g_mol"),
        Enum.Parse<SubstanceRole>(row.Text("role"), ignoreCase: true),
        row.Yes("mixes_with_water"),
        new(new(new Density(row.Decimal("density_g_mL")), new(row.Decimal("density_at_C"))), row.Source("density_source", "density_status")),
        row.Has("boiling_C") ? new(row.Number("boiling_C"), row.Source("boiling_source", "boiling_status")) : null,
        row.Has("flash_C")
            ? new(
                new(row.Number("flash_C"), row.Yes("flash_at_least"), row.NumberOrNull("flash_lowest_C"), row.NumberOrNull("flash_highest_C")),
                row.Source("flash_sources", "flash_status"))
            : null,
        row.Has("vapour_source")
            ? new(row.NumberOrNull("vapour_20C_Pa"), row.NumberOrNull("vapour_25C_Pa"), row.Source("vapour_source", "vapour_status"))
            : null,
        antoine,
        row.Has("lower_explosive_vol_pct")
            ? new(
                new(row.Number("lower_explosive_vol_pct"), row.NumberOrNull("upper_explosive_vol_pct")),
                row.Source("explosive_source", "explosive_status"))
            : null,
        row.Text("note"));
}
