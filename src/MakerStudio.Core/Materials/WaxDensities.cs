using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Materials;

/// <summary>g/mL. Weak figures, to start from: weigh what your own container holds.</summary>
public sealed record WaxDensity(string Name, decimal Lowest, decimal Highest, Source Source);

public static class WaxDensities
{
    /// <summary>Paraffin swells by 5 to 8 % on melting (a trade page), so solid and liquid differ.</summary>
    public static IReadOnlyList<WaxDensity> All { get; } =
    [
        .. DataTable.Read("wax_density.csv").Select(row => new WaxDensity(
            row.Text("name"), row.Decimal("lowest_g_mL"), row.Decimal("highest_g_mL"), row.Source())),
    ];
}
