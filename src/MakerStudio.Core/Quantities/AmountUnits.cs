using System.Diagnostics.CodeAnalysis;

namespace MakerStudio.Core.Quantities;

/// <summary>Symbols, codes and exact factors of the units.</summary>
public static class AmountUnits
{
    /// <summary>Avoirdupois pound, g, exact. NIST Handbook 44, Appendix C.</summary>
    public const decimal GramsPerPound = 453.59237m;

    /// <summary>Avoirdupois ounce, g, exact (a sixteenth of a pound). NIST Handbook 44, Appendix C.</summary>
    public const decimal GramsPerOunce = 28.349523125m;

    /// <summary>US fluid ounce, mL, exact (231 cubic inches / 128). NIST Handbook 44, Appendix C.</summary>
    public const decimal MillilitresPerUsFluidOunce = 29.5735295625m;

    /// <summary>Imperial fluid ounce, mL, exact: 4.546 09 L / 160. NIST SP 811 (2008) for the imperial gallon.</summary>
    public const decimal MillilitresPerImperialFluidOunce = 28.4130625m;

    private static readonly Dictionary<string, AmountUnit> ByToken = new(StringComparer.OrdinalIgnoreCase)
    {
        ["kg"] = AmountUnit.Kilogram, ["kilo"] = AmountUnit.Kilogram, ["kilos"] = AmountUnit.Kilogram,
        ["g"] = AmountUnit.Gram, ["gram"] = AmountUnit.Gram, ["grams"] = AmountUnit.Gram,
        ["mg"] = AmountUnit.Milligram,
        ["L"] = AmountUnit.Litre, ["litre"] = AmountUnit.Litre, ["litres"] = AmountUnit.Litre, ["liter"] = AmountUnit.Litre,
        ["liters"] = AmountUnit.Litre,
        ["mL"] = AmountUnit.Millilitre, ["millilitre"] = AmountUnit.Millilitre, ["millilitres"] = AmountUnit.Millilitre,
        ["milliliter"] = AmountUnit.Millilitre, ["milliliters"] = AmountUnit.Millilitre,
        ["lb"] = AmountUnit.Pound, ["lbs"] = AmountUnit.Pound, ["pound"] = AmountUnit.Pound, ["pounds"] = AmountUnit.Pound,
        ["oz (weight)"] = AmountUnit.OunceWeight, ["oz weight"] = AmountUnit.OunceWeight, ["oz wt"] = AmountUnit.OunceWeight,
        ["fl oz (US)"] = AmountUnit.FluidOunceUs, ["fl oz US"] = AmountUnit.FluidOunceUs, ["US fl oz"] = AmountUnit.FluidOunceUs,
        ["fl oz (imp)"] = AmountUnit.FluidOunceImperial, ["fl oz imp"] = AmountUnit.FluidOunceImperial,
        ["imp fl oz"] = AmountUnit.FluidOunceImperial,
        ["each"] = AmountUnit.Each, ["ea"] = AmountUnit.Each, ["pcs"] = AmountUnit.Each, ["piece"] = AmountUnit.Each,
        ["pieces"] = AmountUnit.Each,
    };

    public static IReadOnlyList<AmountUnit> All { get; } = Enum.GetValues<AmountUnit>();

    public static string Symbol(AmountUnit unit) => unit switch
    {
        AmountUnit.Kilogram => "kg",
        AmountUnit.Gram => "g",
        AmountUnit.Milligram => "mg",
        AmountUnit.Litre => "L",
        AmountUnit.Millilitre => "mL",
        AmountUnit.Pound => "lb",
        AmountUnit.OunceWeight => "oz (weight)",
        AmountUnit.FluidOunceUs => "fl oz (US)",
        AmountUnit.FluidOunceImperial => "fl oz (imp)",
        AmountUnit.Each => "each",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, null),
    };

    /// <summary>The case-sensitive UCUM code, for files that other programs read.</summary>
    public static string Ucum(AmountUnit unit) => unit switch
    {
        AmountUnit.Kilogram => "kg",
        AmountUnit.Gram => "g",
        AmountUnit.Milligram => "mg",
        AmountUnit.Litre => "L",
        AmountUnit.Millilitre => "mL",
        AmountUnit.Pound => "[lb_av]",
        AmountUnit.OunceWeight => "[oz_av]",
        AmountUnit.FluidOunceUs => "[foz_us]",
        AmountUnit.FluidOunceImperial => "[foz_br]",
        AmountUnit.Each => "{each}",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, null),
    };

    /// <summary>Reads a unit token, ignoring case and repeated spaces. Bare "oz" and "fl oz" are not read: ask.</summary>
    public static bool TryParse(string? token, [NotNullWhen(true)] out AmountUnit? unit)
    {
        unit = null;
        if (string.IsNullOrWhiteSpace(token))
        {
            return false;
        }

        string tidy = string.Join(' ', token.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).TrimEnd('.');
        if (!ByToken.TryGetValue(tidy, out AmountUnit found))
        {
            return false;
        }

        unit = found;
        return true;
    }

    /// <summary>The unit of a token, or null when it is none of ours.</summary>
    public static AmountUnit? Parse(string? token) => TryParse(token, out AmountUnit? unit) ? unit : null;

    public static bool IsMass(AmountUnit unit) =>
        unit is AmountUnit.Kilogram or AmountUnit.Gram or AmountUnit.Milligram or AmountUnit.Pound or AmountUnit.OunceWeight;

    public static bool IsVolume(AmountUnit unit) =>
        unit is AmountUnit.Litre or AmountUnit.Millilitre or AmountUnit.FluidOunceUs or AmountUnit.FluidOunceImperial;

    public static bool IsCount(AmountUnit unit) => unit == AmountUnit.Each;

    /// <summary>
    /// How many grams (mass units), millilitres (volume units) or pieces one of the unit is. Exact decimals.
    /// </summary>
    public static decimal Factor(AmountUnit unit) => unit switch
    {
        AmountUnit.Kilogram or AmountUnit.Litre => 1000m,
        AmountUnit.Gram or AmountUnit.Millilitre or AmountUnit.Each => 1m,
        AmountUnit.Milligram => 0.001m,
        AmountUnit.Pound => GramsPerPound,
        AmountUnit.OunceWeight => GramsPerOunce,
        AmountUnit.FluidOunceUs => MillilitresPerUsFluidOunce,
        AmountUnit.FluidOunceImperial => MillilitresPerImperialFluidOunce,
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, null),
    };
}
