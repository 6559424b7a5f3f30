using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Alcoholometry;

/// <summary>
/// What a balance reads in air against mass in vacuo. A litre of alcohol seems about 0.14 % lighter in air, which the US
/// gallon tables and specific gravities of pharmacopoeias include and R 22 does not.
/// </summary>
public static class AirBuoyancy
{
    /// <summary>Density of air taken, kg/m³: the conventional value of OIML R 111.</summary>
    public const double Air = 1.2;

    /// <summary>Density of the weights a balance is set with, kg/m³: the conventional value of OIML R 111.</summary>
    public const double Weights = 8000;

    public static Source Source { get; } = new("OIML R 111-1 (2004), conventional mass: air 1.2, weights 8,000 kg/m³", DataStatus.Memory);

    /// <summary>Mass a balance shows for a cubic metre, kg.</summary>
    /// <param name="kilogramsPerCubicMetre">In vacuo.</param>
    public static double Apparent(double kilogramsPerCubicMetre) => (kilogramsPerCubicMetre - Air) / (1 - (Air / Weights));

    /// <summary>Density in vacuo from a weighed volume, kg/m³.</summary>
    public static double InVacuo(double apparentKilogramsPerCubicMetre) =>
        (apparentKilogramsPerCubicMetre * (1 - (Air / Weights))) + Air;

    /// <summary>Specific gravity as weighed in air, against water.</summary>
    /// <param name="kilogramsPerCubicMetre">In vacuo.</param>
    /// <param name="water">Density of water at its temperature, kg/m³ in vacuo.</param>
    public static double SpecificGravity(double kilogramsPerCubicMetre, double water) =>
        (kilogramsPerCubicMetre - Air) / (water - Air);
}
