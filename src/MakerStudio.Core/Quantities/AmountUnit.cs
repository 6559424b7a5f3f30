namespace MakerStudio.Core.Quantities;

/// <summary>The units an amount may be typed in. A bare "oz" is none of them: it is three.</summary>
public enum AmountUnit
{
    Kilogram,
    Gram,
    Milligram,
    Litre,
    Millilitre,
    Pound,
    OunceWeight,
    FluidOunceUs,
    FluidOunceImperial,
    Each,
}
