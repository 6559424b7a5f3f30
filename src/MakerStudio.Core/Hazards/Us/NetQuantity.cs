using System.Globalization;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Hazards.Us;

/// <summary>
/// The statement of net quantity in both unit systems, at most three digits, cut off and never rounded up, so that
/// the contents are not overstated. From a pint and from a pound the larger whole units come first.
/// Examples: 118.29 mL is "4 FL OZ (118 mL)"; 226.8 g is "NET WT 8 OZ (226 g)"; 591.5 mL is "1 PT 4 FL OZ (591 mL)".
/// </summary>
public static class NetQuantity
{
    /// <summary>Millilitres in a US fluid ounce, exact (NIST Handbook 44, App. C).</summary>
    private const decimal MillilitresPerFluidOunce = 29.5735295625m;

    /// <summary>Grams in an ounce, exact.</summary>
    private const decimal GramsPerOunce = 28.349523125m;

    private const decimal OuncesPerPound = 16m;
    private const decimal Thousand = 1000m;
    private const int Digits = 3;

    /// <summary>Part of an ounce by which a quantity typed to a tenth of a millilitre or gram may fall short of a whole one.</summary>
    private const decimal NearlyWhole = 0.005m;

    private static readonly (decimal FluidOunces, string Unit)[] Larger = [(128m, "GAL"), (32m, "QT"), (16m, "PT")];

    public static Citation Source { get; } = new("16 CFR 500.6 to 500.25", DataStatus.Memory);

    /// <param name="millilitres">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public static string OfLiquid(decimal millilitres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(millilitres);
        decimal ounces = Settled(millilitres / MillilitresPerFluidOunce);
        var parts = new List<string>();
        foreach ((decimal size, string unit) in Larger.SkipWhile(each => each.FluidOunces > ounces))
        {
            decimal whole = decimal.Floor(ounces / size);
            if (whole > 0)
            {
                parts.Add($"{Number(whole)} {unit}");
                ounces -= whole * size;
            }
        }

        decimal rest = Cut(ounces);
        if (rest > 0 || parts.Count == 0)
        {
            parts.Add($"{Number(rest)} FL OZ");
        }

        return $"{string.Join(' ', parts)} ({Metric(millilitres, "mL", "L")})";
    }

    /// <param name="grams">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public static string OfSolid(decimal grams)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(grams);
        decimal ounces = Settled(grams / GramsPerOunce);
        decimal pounds = decimal.Floor(ounces / OuncesPerPound);
        decimal rest = Cut(ounces - (pounds * OuncesPerPound));
        string customary = (pounds, rest) switch
        {
            (0, _) => $"{Number(rest)} OZ",
            (_, 0) => $"{Number(pounds)} LB",
            _ => $"{Number(pounds)} LB {Number(rest)} OZ",
        };
        return $"NET WT {customary} ({Metric(grams, "g", "kg")})";
    }

    private static string Metric(decimal amount, string small, string large) =>
        amount < Thousand ? $"{Number(Cut(amount))} {small}" : $"{Number(Cut(amount / Thousand))} {large}";

    /// <summary>A pack of 4 fl oz typed as 118.29 mL is 4 fl oz, not 3.99.</summary>
    private static decimal Settled(decimal ounces)
    {
        decimal whole = decimal.Ceiling(ounces);
        return whole - ounces < NearlyWhole ? whole : ounces;
    }

    /// <summary>At most three digits, the rest cut off.</summary>
    private static decimal Cut(decimal amount)
    {
        int whole = decimal.Floor(amount) switch { >= 100 => 3, >= 10 => 2, _ => 1 };
        decimal scale = 1m;
        for (int i = whole; i < Digits; i++)
        {
            const decimal digitBase = 10m;
            scale *= digitBase;
        }

        return decimal.Floor(amount * scale) / scale;
    }

    private static string Number(decimal amount) => amount.ToString("0.##", CultureInfo.InvariantCulture);
}
