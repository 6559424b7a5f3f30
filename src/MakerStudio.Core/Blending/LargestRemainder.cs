using System.Numerics;

namespace MakerStudio.Core.Blending;

/// <summary>
/// Shares out a whole number of units by weight so that the shares sum exactly: each gets its whole part, and the
/// units left go to the largest remainders (Hare–Niemeyer). Equal remainders: the earlier one first.
/// </summary>
public static class LargestRemainder
{
    /// <summary>Most decimals a <see cref="decimal"/> can hold.</summary>
    private const int FinestDecimals = 28;

    /// <param name="units">Units to share, 0 or more.</param>
    /// <param name="weights">0 or more each, at least one above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative units or weights, or weights that sum to nothing.</exception>
    public static IReadOnlyList<long> Share(long units, IReadOnlyList<decimal> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        ArgumentOutOfRangeException.ThrowIfNegative(units);
        if (weights.Any(weight => weight < 0) || weights.All(weight => weight == 0))
        {
            throw new ArgumentOutOfRangeException(nameof(weights), "Weights are 0 or more and not all 0.");
        }

        // Whole numbers of any length: with a rounded division, noise in the last digit would decide a tie.
        BigInteger[] exact = weights.Select(InFinestUnits).ToArray();
        BigInteger total = exact.Aggregate(BigInteger.Zero, (sum, weight) => sum + weight);
        long[] shares = exact.Select(weight => (long)(units * weight / total)).ToArray();
        IEnumerable<int> byRemainder = Enumerable.Range(0, shares.Length)
            .OrderByDescending(i => units * exact[i] % total);
        foreach (int i in byRemainder.Take((int)(units - shares.Sum())))
        {
            shares[i]++;
        }

        return shares;
    }

    private static BigInteger InFinestUnits(decimal value)
    {
        Span<int> parts = stackalloc int[4];
        decimal.GetBits(value, parts);
        // The parts are bit patterns: a set top bit is no minus sign.
        BigInteger digits = unchecked(
            (new BigInteger((uint)parts[2]) << 64) + (new BigInteger((uint)parts[1]) << 32) + (uint)parts[0]);
        return digits * BigInteger.Pow(10, FinestDecimals - value.Scale);
    }
}
