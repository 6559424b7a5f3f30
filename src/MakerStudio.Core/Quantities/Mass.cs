namespace MakerStudio.Core.Quantities;

/// <summary>
/// A mass counted in whole milligrams, so that sums are exact. May be negative (a difference).
/// Range ±9.2 × 10¹² kg; arithmetic beyond it throws <see cref="OverflowException"/>.
/// </summary>
public readonly record struct Mass : IComparable<Mass>
{
    /// <summary>Milligrams in a gram (SI prefix, exact).</summary>
    public const int MilligramsPerGram = 1000;

    private Mass(long milligrams) => Milligrams = milligrams;

    public static Mass Zero => default;

    public long Milligrams { get; }

    public decimal Grams => (decimal)Milligrams / MilligramsPerGram;

    public bool IsZero => Milligrams == 0;

    public static Mass FromMilligrams(long milligrams) => new(milligrams);

    /// <summary>Takes grams exactly. Anything finer than 1 mg is refused rather than rounded.</summary>
    /// <exception cref="ArgumentException">The grams are finer than 1 mg.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The grams do not fit the range of the type.</exception>
    public static Mass FromGrams(decimal grams)
    {
        Mass rounded = RoundGrams(grams);
        return rounded.Grams == grams
            ? rounded
            : throw new ArgumentException("Finer than 1 mg. Round it by name with RoundGrams.", nameof(grams));
    }

    /// <summary>Rounds grams to the nearest milligram, halves away from zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The grams do not fit the range of the type.</exception>
    public static Mass RoundGrams(decimal grams)
    {
        const decimal largestGrams = (decimal)long.MaxValue / MilligramsPerGram;
        if (grams is > largestGrams or < -largestGrams)
        {
            throw new ArgumentOutOfRangeException(nameof(grams), grams, "More grams than a mass can hold.");
        }

        return new((long)decimal.Round(grams * MilligramsPerGram, 0, MidpointRounding.AwayFromZero));
    }

    /// <summary>Multiplies and rounds to the nearest milligram, halves away from zero.</summary>
    public Mass Times(decimal factor) => RoundGrams(Grams * factor);

    /// <summary>The smallest whole multiple of <paramref name="step"/> that is not below this mass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero.</exception>
    public Mass RoundUpTo(Mass step)
    {
        if (step.Milligrams <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(step), "The step must be above zero.");
        }

        long remainder = Milligrams % step.Milligrams;
        return remainder switch
        {
            0 => this,
            > 0 => new(Milligrams - remainder + step.Milligrams),
            _ => new(Milligrams - remainder),
        };
    }

    public Mass Abs() => new(Math.Abs(Milligrams));

    public int CompareTo(Mass other) => Milligrams.CompareTo(other.Milligrams);

    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Grams} g");

    public static Mass operator +(Mass left, Mass right) => new(left.Milligrams + right.Milligrams);

    public static Mass operator -(Mass left, Mass right) => new(left.Milligrams - right.Milligrams);

    public static Mass operator -(Mass mass) => new(-mass.Milligrams);

    public static bool operator <(Mass left, Mass right) => left.Milligrams < right.Milligrams;

    public static bool operator >(Mass left, Mass right) => left.Milligrams > right.Milligrams;

    public static bool operator <=(Mass left, Mass right) => left.Milligrams <= right.Milligrams;

    public static bool operator >=(Mass left, Mass right) => left.Milligrams >= right.Milligrams;
}

public static class MassSums
{
    /// <summary>The exact total.</summary>
    public static Mass Sum(this IEnumerable<Mass> masses) => masses.Aggregate(Mass.Zero, (total, mass) => total + mass);
}
