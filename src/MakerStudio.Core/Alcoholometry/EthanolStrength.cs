using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Alcoholometry;

/// <summary>
/// How strong ethanol is in water, kept as its mass fraction, the one measure that no temperature changes. Converted by
/// OIML R 22: % vol q = ρ(p, t) · p / ρ(1, t), at 20 °C for the EU and OIML, at 60 °F for US proof (27 CFR 19.1).
/// The two percentages by volume differ by up to about 0.1 for that reason.
/// </summary>
public readonly record struct EthanolStrength : IComparable<EthanolStrength>
{
    /// <summary>60 °F, the temperature of US proof, in °C: 140/9.</summary>
    public const double ProofCelsius = 140.0 / 9.0;

    private const double Whole = 100;
    private const double WholeProof = 200;

    private EthanolStrength(double massFraction) => MassFraction = massFraction;

    public static EthanolStrength Water => default;

    public static EthanolStrength Pure => new(1);

    /// <summary>Grams of ethanol in a gram of ethanol and water, 0 to 1.</summary>
    public double MassFraction { get; }

    public double PercentMass => MassFraction * Whole;

    /// <summary>Per cent by volume at 20 °C.</summary>
    public double PercentVolume => Whole * VolumeFraction(MassFraction, R22.ReferenceCelsius);

    /// <summary>Twice the per cent by volume at 60 °F.</summary>
    public double UsProof => WholeProof * VolumeFraction(MassFraction, ProofCelsius);

    /// <param name="massFraction">0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static EthanolStrength FromMassFraction(double massFraction) =>
        new(Checked(massFraction, 1, nameof(massFraction)));

    /// <param name="percent">0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static EthanolStrength FromPercentMass(double percent) => new(Checked(percent, Whole, nameof(percent)) / Whole);

    /// <param name="percent">At 20 °C, 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static EthanolStrength FromPercentVolume(double percent) =>
        new(MassFractionAt(Checked(percent, Whole, nameof(percent)) / Whole, R22.ReferenceCelsius));

    /// <param name="proof">0 to 200.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static EthanolStrength FromUsProof(double proof) =>
        new(MassFractionAt(Checked(proof, WholeProof, nameof(proof)) / WholeProof, ProofCelsius));

    /// <summary>A strength as a supplier states it; % vol is taken at 20 °C.</summary>
    public static EthanolStrength Of(AlcoholStrength stated)
    {
        ArgumentNullException.ThrowIfNull(stated);
        double value = (double)stated.Value;
        return stated.Basis switch
        {
            AlcoholBasis.PercentVolume => FromPercentVolume(value),
            AlcoholBasis.PercentMass => FromPercentMass(value),
            _ => FromUsProof(value),
        };
    }

    /// <summary>
    /// The strength of ethanol and water of a measured density, in vacuo. Null where no strength has that density at
    /// that temperature. Density falls all the way from water to ethanol, so there is one answer.
    /// </summary>
    /// <param name="kilogramsPerCubicMetre">In vacuo; mend an apparent one by <see cref="AirBuoyancy"/> first.</param>
    /// <param name="celsius">−20 to 40.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside −20 to 40 °C.</exception>
    public static EthanolStrength? FromDensity(double kilogramsPerCubicMetre, double celsius)
    {
        bool exists = kilogramsPerCubicMetre <= R22.KilogramsPerCubicMetre(0, celsius)
            && kilogramsPerCubicMetre >= R22.KilogramsPerCubicMetre(1, celsius);
        return exists
            ? new(Root.Rising(p => -R22.KilogramsPerCubicMetre(p, celsius), -kilogramsPerCubicMetre, 0, 1))
            : null;
    }

    public double In(AlcoholBasis basis) => basis switch
    {
        AlcoholBasis.PercentVolume => PercentVolume,
        AlcoholBasis.PercentMass => PercentMass,
        _ => UsProof,
    };

    public int CompareTo(EthanolStrength other) => MassFraction.CompareTo(other.MassFraction);

    public override string ToString() => FormattableString.Invariant($"{PercentVolume:0.##} % vol");

    public static bool operator <(EthanolStrength left, EthanolStrength right) => left.MassFraction < right.MassFraction;

    public static bool operator >(EthanolStrength left, EthanolStrength right) => left.MassFraction > right.MassFraction;

    public static bool operator <=(EthanolStrength left, EthanolStrength right) => left.MassFraction <= right.MassFraction;

    public static bool operator >=(EthanolStrength left, EthanolStrength right) => left.MassFraction >= right.MassFraction;

    private static double VolumeFraction(double massFraction, double celsius) =>
        massFraction * R22.KilogramsPerCubicMetre(massFraction, celsius) / R22.KilogramsPerCubicMetre(1, celsius);

    private static double MassFractionAt(double volumeFraction, double celsius) =>
        Root.Rising(p => VolumeFraction(p, celsius), volumeFraction, 0, 1);

    private static double Checked(double value, double whole, string name) => value >= 0 && value <= whole
        ? value
        : throw new ArgumentOutOfRangeException(name, value, FormattableString.Invariant($"Between 0 and {whole}."));
}
