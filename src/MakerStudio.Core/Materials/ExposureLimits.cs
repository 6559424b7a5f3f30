using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Materials;

/// <summary>A limit for the air of workplaces, in words as published. It is not a limit for homes.</summary>
/// <param name="Over">What it is averaged over: "8 h", "10 h", "15 min", or "danger to life".</param>
/// <param name="Ppm">At 25 °C and 101.325 kPa; null where only mg/m³ is given.</param>
/// <param name="MilligramsPerCubicMetre">As printed, which is rounded; null where only ppm is given.</param>
/// <param name="CountsSkin">The list warns that the skin takes it up as well.</param>
public sealed record ExposureLimit(
    CasNumber Cas, string Name, string Over, double? Ppm, double? MilligramsPerCubicMetre, bool CountsSkin, Source Source)
{
    /// <summary>Worked out from ppm where there is one, else as printed.</summary>
    public double InMilligrams(double molarMass) =>
        Ppm is { } ppm ? ppm * molarMass / MolarVolume.At25 : MilligramsPerCubicMetre!.Value;
}

/// <summary>Litres of a mole of ideal gas at 101.325 kPa, R·T/P. ppm = mg/m³ × this ÷ g/mol.</summary>
public static class MolarVolume
{
    /// <summary>Molar gas constant, J/(mol·K), exact since 2019 (SI).</summary>
    public const double GasConstant = 8.31446261815324;

    /// <summary>At 25 °C: 24.465 L.</summary>
    public static double At25 { get; } = At(25);

    /// <summary>At 20 °C: 24.055 L.</summary>
    public static double At20 { get; } = At(20);

    public static double At(double celsius) =>
        1000 * GasConstant * (celsius + Antoine.ZeroCelsius) / Substance.StandardAtmosphere;
}

public static class ExposureLimits
{
    public static IReadOnlyList<ExposureLimit> All { get; } =
    [
        .. DataTable.Read("exposure_limits.csv").Select(row => new ExposureLimit(
            CasNumber.Of(row.Text("cas")),
            row.Text("name"),
            row.Text("over"),
            row.NumberOrNull("ppm"),
            row.NumberOrNull("mg_m3"),
            row.Has("skin"),
            row.Source())),
    ];

    public static IReadOnlyList<ExposureLimit> For(CasNumber cas) => [.. All.Where(limit => limit.Cas == cas)];
}
