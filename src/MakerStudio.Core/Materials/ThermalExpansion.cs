using System.Collections.Frozen;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Materials;

/// <summary>
/// Density of a pure liquid at 15, 20, 25, 30 and 40 °C, kg/m³, for the few that published constants exist for
/// (DIPPR equation 105). Within 0.3 % of handbook densities. For ethanol use R 22.
/// </summary>
public sealed record LiquidDensities(IReadOnlyList<double> KilogramsPerCubicMetre, Source Source)
{
    /// <summary>°C.</summary>
    public static IReadOnlyList<double> Temperatures { get; } = [15, 20, 25, 30, 40];

    /// <summary>Mean expansion of volume between 20 and 30 °C, per K: (ρ20/ρ30 − 1)/10.</summary>
    public double ExpansionPerKelvin => ((KilogramsPerCubicMetre[1] / KilogramsPerCubicMetre[3]) - 1) / 10;

    /// <summary>kg/m³, straight between the two nearest temperatures; null outside 15 to 40 °C.</summary>
    public double? At(double celsius)
    {
        for (int i = 1; i < Temperatures.Count; i++)
        {
            (double low, double high) = (Temperatures[i - 1], Temperatures[i]);
            if (celsius >= low && celsius <= high)
            {
                double share = (celsius - low) / (high - low);
                return KilogramsPerCubicMetre[i - 1] + (share * (KilogramsPerCubicMetre[i] - KilogramsPerCubicMetre[i - 1]));
            }
        }

        return null;
    }
}

public static class ThermalExpansion
{
    private static readonly string[] Columns = ["at_15C_kg_m3", "at_20C_kg_m3", "at_25C_kg_m3", "at_30C_kg_m3", "at_40C_kg_m3"];

    private static readonly FrozenDictionary<string, LiquidDensities> Table = DataTable.Read("density_temperature.csv").ToFrozenDictionary(
        row => row.Text("cas"),
        row => new LiquidDensities([.. Columns.Select(row.Number)], row.Source()));

    /// <summary>Null where nothing is published; most fragrance materials.</summary>
    public static LiquidDensities? Find(CasNumber? cas) => cas is null ? null : Table.GetValueOrDefault(cas.Text);
}
