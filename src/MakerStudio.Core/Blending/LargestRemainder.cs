namespace MakerStudio.Core.Blending;

/// <summary>
/// Shares out a whole number of units by weight so that the shares sum exactly: each gets its whole part, and the
/// units left go to the largest remainders (Hare–Niemeyer). Equal remainders: the earlier one first.
/// </summary>
public static class LargestRemainder
{
    /// <param name="units">Units to share, 0 or more.</param>
    /// <param name="weights">0 or more each, at least one above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative units or weights, or weights that sum to nothing.</exception>
    public static IReadOnlyList<long> Share(long units, IReadOnlyList<decimal> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        ArgumentOutOfRangeException.ThrowIfNegative(units);
        decimal total = weights.Sum();
        if (total <= 0 || weights.Any(weight => weight < 0))
        {
            throw new ArgumentOutOfRangeException(nameof(weights), "Weights are 0 or more and not all 0.");
        }

        decimal[] quotas = weights.Select(weight => weight / total * units).ToArray();
        long[] shares = quotas.Select(quota => (long)decimal.Floor(quota)).ToArray();
        long left = units - shares.Sum();
        IEnumerable<int> byRemainder = Enumerable.Range(0, shares.Length)
            .Where(i => weights[i] > 0)
            .OrderByDescending(i => quotas[i] - shares[i]);
        foreach (int i in byRemainder.Take((int)left))
        {
            shares[i]++;
        }

        return shares;
    }
}
