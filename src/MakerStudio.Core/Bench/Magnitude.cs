using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Bench;

/// <summary>A typed weight that lies a power of ten from its target.</summary>
/// <param name="Factor">10, 100 or 1,000.</param>
/// <param name="IsBelow">Below the target rather than above.</param>
/// <param name="SuggestedValue">What was perhaps meant, in <paramref name="SuggestedUnit"/>.</param>
public sealed record MagnitudeQuestion(int Factor, bool IsBelow, decimal SuggestedValue, AmountUnit SuggestedUnit)
{
    /// <summary>The question in the marks of a culture: "1,000 times below the target; did you mean 3.32 kg?"</summary>
    public string Sentence(CultureInfo culture)
    {
        string times = QuantityFormat.Number(Factor, culture, 0);
        string value = QuantityFormat.Editable(SuggestedValue, culture);
        string side = IsBelow ? "below" : "above";
        return $"{times} times {side} the target; did you mean {value} {AmountUnits.Symbol(SuggestedUnit)}?";
    }
}

/// <summary>Catches a slipped decimal mark or a wrong unit before it is recorded.</summary>
public static class Magnitude
{
    /// <summary>How close to a whole power of ten the slip must be, as a fraction. The house's own threshold.</summary>
    public const decimal Closeness = 0.05m;

    private const decimal LeastGrams = 0.000001m;
    private const decimal MostGrams = 1_000_000_000_000m;
    private const int UnitStep = 1000;
    private static readonly int[] Factors = [1000, 100, 10];

    /// <summary>
    /// The question to ask before recording, or null when the weight is no power of ten from its target. A factor of
    /// 1,000 suggests the neighbouring unit, 10 and 100 a slipped mark.
    /// </summary>
    public static MagnitudeQuestion? Question(Mass target, decimal typedGrams)
    {
        if (target <= Mass.Zero || typedGrams is < LeastGrams or > MostGrams)
        {
            return null;
        }

        foreach (int factor in Factors)
        {
            if (IsClose(typedGrams * factor, target.Grams))
            {
                return factor == UnitStep
                    ? new(factor, true, typedGrams, AmountUnit.Kilogram)
                    : new(factor, true, typedGrams * factor, AmountUnit.Gram);
            }

            if (IsClose(typedGrams / factor, target.Grams))
            {
                return factor == UnitStep
                    ? new(factor, false, typedGrams, AmountUnit.Milligram)
                    : new(factor, false, typedGrams / factor, AmountUnit.Gram);
            }
        }

        return null;
    }

    private static bool IsClose(decimal grams, decimal target) => Math.Abs(grams - target) <= target * Closeness;
}
