namespace MakerStudio.Core.Quantities;

/// <summary>A temperature in degrees Celsius.</summary>
public readonly record struct Celsius(decimal Degrees)
{
    /// <summary>Absolute zero: −273.15 °C exactly (NIST SP 811). A validator refuses anything below it.</summary>
    public const decimal AbsoluteZero = -273.15m;

    /// <summary>Degrees Fahrenheit to Celsius, (F − 32) / 1.8 exactly (NIST SP 811).</summary>
    public static Celsius FromFahrenheit(decimal degrees) => new((degrees - 32m) / 1.8m);

    public bool IsPossible => Degrees >= AbsoluteZero;
}
