using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Materials;

/// <summary>
/// Vapour pressure by the Antoine equation, log10(P/Pa) = A − B/(T/K + C), meant for the range it was fitted in. Far
/// below it the value can be wrong by several times.
/// </summary>
public sealed record Antoine(double A, double B, double C, double FromKelvin, double ToKelvin, Source Source)
{
    /// <summary>0 °C in K, exactly.</summary>
    public const double ZeroCelsius = 273.15;

    /// <summary>
    /// ln P straight in 1/T through two known points (Clausius and Clapeyron, constant heat of vaporisation). A few per
    /// cent between the points.
    /// </summary>
    public static Antoine Through(double firstKelvin, double firstPascal, double secondKelvin, double secondPascal, Source source)
    {
        double b = (Math.Log10(secondPascal) - Math.Log10(firstPascal)) / ((1 / firstKelvin) - (1 / secondKelvin));
        return new(Math.Log10(firstPascal) + (b / firstKelvin), b, 0, firstKelvin, secondKelvin, source);
    }

    /// <summary>Pa.</summary>
    public double Pascal(double kelvin) => Math.Pow(10, A - (B / (kelvin + C)));

    /// <summary>Temperature at which the vapour pressure is this, K.</summary>
    /// <param name="pascal">Above 0.</param>
    public double Kelvin(double pascal) => (B / (A - Math.Log10(pascal))) - C;

    public bool IsInRange(double kelvin) => kelvin >= FromKelvin && kelvin <= ToKelvin;

    /// <summary>How far a temperature lies outside the range, K; 0 inside.</summary>
    public double Outside(double kelvin) => Math.Max(0, Math.Max(FromKelvin - kelvin, kelvin - ToKelvin));
}

/// <summary>A vapour pressure at two temperatures, Pa, as the table of substances has it.</summary>
public sealed record VapourPressurePair(double? At20, double? At25, Source Source);
