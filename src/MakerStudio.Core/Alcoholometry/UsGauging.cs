using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Alcoholometry;

/// <summary>
/// The figures of the US gauging tables (27 CFR 30.63–30.66), at 60 °F, worked out from R 22. The tables come from a
/// slightly different set of measurements: parts agree within 0.01 gal and weights within 0.01 %. For a tax return use
/// the tables themselves.
/// </summary>
public static class UsGauging
{
    /// <summary>US gallon, m³: 231 in³ exactly (NIST HB 44 App. C).</summary>
    public const double CubicMetresPerGallon = 3.785411784e-3;

    /// <summary>Avoirdupois pound, kg, exact (NIST HB 44 App. C).</summary>
    public const double KilogramsPerPound = 0.45359237;

    private const double Gallons = 100;

    public static Source Source { get; } = new("27 CFR 30.63–30.66, worked out from OIML R 22 at 60 °F", DataStatus.Derived);

    /// <summary>Gallons of ethanol in 100 gallons: half the proof.</summary>
    public static double AlcoholParts(EthanolStrength strength) => strength.UsProof / 2;

    /// <summary>Gallons of water that 100 gallons were made with; with the alcohol more than 100, since the two shrink.</summary>
    public static double WaterParts(EthanolStrength strength) =>
        Gallons * (1 - strength.MassFraction) * DensityAt60(strength.MassFraction) / DensityAt60(0);

    /// <summary>As weighed in air, lb.</summary>
    public static double PoundsPerWineGallon(EthanolStrength strength) =>
        AirBuoyancy.Apparent(DensityAt60(strength.MassFraction)) * CubicMetresPerGallon / KilogramsPerPound;

    public static double WineGallonsPerPound(EthanolStrength strength) => 1 / PoundsPerWineGallon(strength);

    /// <summary>A proof gallon is a gallon at 100 proof, or as much alcohol in another volume (27 CFR 19.1).</summary>
    public static double ProofGallonsPerPound(EthanolStrength strength) =>
        WineGallonsPerPound(strength) * strength.UsProof / Gallons;

    /// <summary>Gallons of water to add to 100 gallons, by the rule of 27 CFR 30.66, not rounded on the way.</summary>
    public static double WaterToAdd(EthanolStrength given, EthanolStrength wanted) =>
        (AlcoholParts(given) / AlcoholParts(wanted) * WaterParts(wanted)) - WaterParts(given);

    private static double DensityAt60(double massFraction) =>
        R22.KilogramsPerCubicMetre(massFraction, EthanolStrength.ProofCelsius);
}
