using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Blending;

/// <param name="Needed">What the bottles take with the expected loss, to the milligram above.</param>
/// <param name="Total">What to make: the needed mass rounded up to the step.</param>
/// <param name="Bottles">Bottles asked for, or null where a mass was.</param>
public sealed record ScalePlan(Mass Needed, Mass Total, int? Bottles)
{
    /// <summary>The mass of each line; sums exactly to the total.</summary>
    public IReadOnlyList<Mass> Lines(IReadOnlyList<decimal> fractions) => Scaling.Split(Total, fractions);
}

/// <param name="Total">The largest batch the stock allows.</param>
/// <param name="LimitingLine">Index of the line that runs out first.</param>
public sealed record LargestBatch(Mass Total, int LimitingLine);

public static class Scaling
{
    /// <summary>Most bottles in one batch.</summary>
    public const int MostBottles = 100_000;

    /// <summary>Largest batch, kg. A thousand tonnes: only there to keep every sum within range.</summary>
    public const long LargestBatchKilograms = 1_000_000;

    /// <summary>Highest loss that can be planned for, as a fraction.</summary>
    public const decimal HighestLoss = 0.5m;

    private static readonly Mass LargestBatch = Mass.FromGrams(LargestBatchKilograms * 1000m);

    /// <summary>What is wrong with a wish for bottles, or null. For validators; <see cref="ToBottles"/> throws on the same.</summary>
    public static string? WhyNot(int bottles, Mass fillMass, decimal expectedLossFraction, Mass roundUpTo)
    {
        if (bottles is < 1 or > MostBottles)
        {
            return "Give a number of bottles from 1 to 100,000.";
        }

        if (fillMass <= Mass.Zero || fillMass.Grams * bottles > LargestBatch.Grams * (1 - HighestLoss))
        {
            return "The mass in one bottle must be above zero and the batch within 1,000 tonnes.";
        }

        if (expectedLossFraction is < 0 or > HighestLoss)
        {
            return "The expected loss runs from 0 to 50 %.";
        }

        return roundUpTo < Mass.FromMilligrams(1) || roundUpTo > LargestBatch
            ? "The rounding step must be 1 mg or more."
            : null;
    }

    /// <summary>
    /// The batch for so many bottles: bottles × fill ÷ (1 − loss), rounded up to a step such as 100 g.
    /// </summary>
    /// <exception cref="ArgumentException"><see cref="WhyNot"/> has a reason.</exception>
    public static ScalePlan ToBottles(int bottles, Mass fillMass, decimal expectedLossFraction, Mass roundUpTo)
    {
        if (WhyNot(bottles, fillMass, expectedLossFraction, roundUpTo) is { } why)
        {
            throw new ArgumentException(why);
        }

        decimal milligrams = (decimal)fillMass.Milligrams * bottles / (1 - expectedLossFraction);
        Mass needed = Mass.FromMilligrams((long)decimal.Ceiling(milligrams));
        return new(needed, needed.RoundUpTo(roundUpTo), bottles);
    }

    /// <exception cref="ArgumentOutOfRangeException">Not above zero, or above a thousand tonnes.</exception>
    public static ScalePlan ToMass(Mass total) => total > Mass.Zero && total <= LargestBatch
        ? new(total, total, null)
        : throw new ArgumentOutOfRangeException(nameof(total), "A batch is above zero and within 1,000 tonnes.");

    /// <summary>
    /// Shares a mass by fractions, to the milligram and summing exactly. Fractions that do not sum to 1 are taken in
    /// proportion.
    /// </summary>
    public static IReadOnlyList<Mass> Split(Mass total, IReadOnlyList<decimal> fractions) =>
        LargestRemainder.Share(total.Milligrams, fractions).Select(Mass.FromMilligrams).ToArray();

    /// <summary>
    /// The largest batch that the stock of every line allows, to the milligram. Null where no line limits it.
    /// </summary>
    /// <param name="fractions">By weight; those that do not sum to 1 are taken in proportion.</param>
    /// <param name="available">Per line; null for a line whose stock does not limit. Never negative.</param>
    public static LargestBatch? LargestFrom(IReadOnlyList<decimal> fractions, IReadOnlyList<Mass?> available)
    {
        ArgumentNullException.ThrowIfNull(fractions);
        ArgumentNullException.ThrowIfNull(available);
        int[] limiting = Enumerable.Range(0, fractions.Count).Where(i => fractions[i] > 0 && available[i] is not null).ToArray();
        if (limiting.Length == 0)
        {
            return null;
        }

        decimal whole = fractions.Sum();
        int tightest = limiting.MinBy(i => Allows(available[i]!.Value, fractions[i] / whole));
        decimal milligrams = Allows(available[tightest]!.Value, fractions[tightest] / whole);
        // Rounding down keeps every line's share at or below its stock, so the largest remainders cannot exceed it.
        return new(Mass.FromMilligrams((long)decimal.Floor(milligrams)), tightest);
    }

    /// <summary>Milligrams of batch that a line's stock allows, never above the largest batch.</summary>
    private static decimal Allows(Mass available, decimal fraction) =>
        available.Milligrams >= LargestBatch.Milligrams * fraction ? LargestBatch.Milligrams : available.Milligrams / fraction;
}
