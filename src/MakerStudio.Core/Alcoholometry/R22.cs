using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Alcoholometry;

/// <summary>
/// Density of ethanol and water by the general formula of OIML R 22 (1973, English edition 1975), "International
/// Alcoholometric Tables"; the same formula stands in the Annex of Directive 76/766/EEC. In vacuo. For ethanol and
/// water only: it does not apply with fragrance, glycols or more than a trace of denaturant (see
/// <see cref="EthanolWaterScope"/>). Below the mixture's freezing point it describes a liquid that is not there.
/// </summary>
public static class R22
{
    /// <summary>°C (R 22).</summary>
    public const double LowestCelsius = -20;

    /// <summary>°C (R 22).</summary>
    public const double HighestCelsius = 40;

    /// <summary>Reference temperature of strength by volume in the EU and OIML, °C.</summary>
    public const double ReferenceCelsius = 20;

    public static Source Source { get; } = new(
        "OIML R 22 (1973), general formula; coefficients as in Directive 76/766/EEC, Annex", DataStatus.Read);

    /// <summary>
    /// kg/m³ in vacuo. No allocation. By Horner's rule in p for each power of (t − 20), then in (t − 20).
    /// </summary>
    /// <param name="massFraction">Grams of ethanol in a gram of ethanol and water, 0 to 1.</param>
    /// <param name="celsius">−20 to 40.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public static double KilogramsPerCubicMetre(double massFraction, double celsius)
    {
        if (!(massFraction is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(massFraction), massFraction, "A mass fraction lies between 0 and 1.");
        }

        if (!IsInRange(celsius))
        {
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "R 22 holds from −20 to 40 °C.");
        }

        double p = massFraction;
        double u = celsius - ReferenceCelsius;
        double byTemperature = B[5];
        byTemperature = (byTemperature * u) + B[4] + (p * Horner(C5, p));
        byTemperature = (byTemperature * u) + B[3] + (p * Horner(C4, p));
        byTemperature = (byTemperature * u) + B[2] + (p * Horner(C3, p));
        byTemperature = (byTemperature * u) + B[1] + (p * Horner(C2, p));
        byTemperature = (byTemperature * u) + B[0] + (p * Horner(C1, p));
        return Horner(A, p) + (u * byTemperature);
    }

    public static bool IsInRange(double celsius) => celsius is >= LowestCelsius and <= HighestCelsius;

    /// <summary>In vacuo, to six decimals of g/mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside −20 to 40 °C.</exception>
    public static Density Of(EthanolStrength strength, Celsius at) =>
        new(decimal.Round((decimal)KilogramsPerCubicMetre(strength.MassFraction, (double)at.Degrees) / KilogramsPerGramPerMillilitre, 6));

    /// <summary>1 g/mL is 1,000 kg/m³.</summary>
    private const decimal KilogramsPerGramPerMillilitre = 1000m;

    private static double Horner(ReadOnlySpan<double> coefficients, double x)
    {
        double sum = 0;
        for (int k = coefficients.Length - 1; k >= 0; k--)
        {
            sum = (sum * x) + coefficients[k];
        }

        return sum;
    }

    /// <summary>A1 … A12, kg/m³: powers 0 to 11 of p.</summary>
    private static readonly double[] A =
    [
        998.20123,
        -192.9769495,
        389.1238958,
        -1668.103923,
        13522.15441,
        -88292.78388,
        306287.4042,
        -613838.1234,
        747017.2998,
        -547846.1354,
        223446.0334,
        -39032.85426,
    ];

    /// <summary>B1 … B6: powers 1 to 6 of (t − 20).</summary>
    private static readonly double[] B =
    [
        -0.20618513,
        -0.0052682542,
        3.6130013E-05,
        -3.8957702E-07,
        7.169354E-09,
        -9.9739231E-11,
    ];

    /// <summary>C1,1 … C1,11: powers 1 to 11 of p with (t − 20)^1.</summary>
    private static readonly double[] C1 =
    [
        0.1693443461530087,
        -10.46914743455169,
        71.96353469546523,
        -704.7478054272792,
        3924.090430035045,
        -12101.64659068747,
        22486.46550400788,
        -26055.62982188164,
        18523.73922069467,
        -7420.201433430137,
        1285.617841998974,
    ];

    /// <summary>C2,1 … C2,10: powers 1 to 10 of p with (t − 20)^2. Of three copies two agree on C2,3; the third swaps two digits of it.</summary>
    private static readonly double[] C2 =
    [
        -0.0119301300505701,
        0.2517399633803461,
        -2.170575700536993,
        13.53034988843029,
        -50.29988758547014,
        109.635566657757,
        -142.2753946421155,
        108.043594285623,
        -44.14153236817392,
        7.442971530188783,
    ];

    /// <summary>C3,1 … C3,9: powers 1 to 9 of p with (t − 20)^3.</summary>
    private static readonly double[] C3 =
    [
        -0.0006802995733503803,
        0.01876837790289664,
        -0.2002561813734156,
        1.02299296671922,
        -2.895696483903638,
        4.810060584300675,
        -4.672147440794683,
        2.458043105903461,
        -0.5411227621436812,
    ];

    /// <summary>C4,1 … C4,4: powers 1 to 4 of p with (t − 20)^4.</summary>
    private static readonly double[] C4 =
    [
        4.075376675622027E-06,
        -8.76305857347111E-06,
        6.515031360099368E-06,
        -1.51578483698721E-06,
    ];

    /// <summary>C5,1 … C5,2: powers 1 to 2 of p with (t − 20)^5.</summary>
    private static readonly double[] C5 =
    [
        -2.788074354782409E-08,
        1.345612883493354E-08,
    ];
}
