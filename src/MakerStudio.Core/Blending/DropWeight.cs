using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Blending;

public abstract record DropWeightResult
{
    /// <param name="MilligramsPerDrop">mg.</param>
    /// <param name="ReadingError">
    /// The balance's step as a share of what was weighed; 0.01 is 1 %. The drops themselves vary more than that.
    /// </param>
    /// <param name="DropsForOnePercent">How many drops would bring that share to 1 % (common practice: 100 × readability).</param>
    public sealed record Weighed(decimal MilligramsPerDrop, decimal ReadingError, int DropsForOnePercent) : DropWeightResult;

    public sealed record NotPossible(string Why) : DropWeightResult;
}

/// <summary>The mass of a drop of one material from one dropper, by weighing several. A drop has no fixed mass.</summary>
public static class DropWeight
{
    /// <summary>Drops to weigh; common practice, no source.</summary>
    public const int UsualCount = 20;

    private const decimal OnePercent = 0.01m;

    /// <param name="readability">The smallest step of the balance.</param>
    public static DropWeightResult Of(Mass weighed, int drops, Mass readability)
    {
        if (drops <= 0 || weighed <= Mass.Zero)
        {
            return new DropWeightResult.NotPossible("Count at least one drop and weigh them. Twenty is usual.");
        }

        if (readability <= Mass.Zero)
        {
            return new DropWeightResult.NotPossible("Give the smallest step of the balance, above zero.");
        }

        decimal each = (decimal)weighed.Milligrams / drops;
        return each > LineMasses.LargestDropMilligrams
            ? new DropWeightResult.NotPossible(FormattableString.Invariant(
                $"{each:0} mg is too much for a drop: drops weigh 15 to 70 mg. Look at the count and the weight again."))
            : new DropWeightResult.Weighed(
                each,
                (decimal)readability.Milligrams / weighed.Milligrams,
                (int)Math.Min(int.MaxValue, decimal.Ceiling(readability.Milligrams / OnePercent / each)));
    }
}
