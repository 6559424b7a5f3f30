using System.Numerics;

namespace MakerStudio.Core.Costing;

/// <summary>
/// Shares a sum of money out in whole smallest coins so that the shares add up to the sum exactly.
/// </summary>
public static class Apportionment
{
    /// <summary>Most decimals a currency or a price list may use; ISO 4217 itself goes to 4.</summary>
    public const int MostMoneyDecimals = 6;

    /// <summary>Most decimals a <see cref="decimal"/> can hold.</summary>
    private const int FinestDecimals = 28;

    /// <summary>
    /// Largest remainder method: every share is cut down to a whole coin, and the coins left over go one each to
    /// the shares that lost most. Where two lost the same, the heavier share is first, then the earlier one.
    /// Every share ends less than one coin from its exact proportion.
    /// </summary>
    /// <param name="sum">0 or more, a whole number of coins.</param>
    /// <param name="weights">None below 0; not all 0 unless <paramref name="sum"/> is 0.</param>
    /// <param name="decimals">Decimals of the coin, 0 to 6.</param>
    /// <exception cref="ArgumentException">The sum or a weight is outside its range.</exception>
    public static IReadOnlyList<decimal> Share(decimal sum, IReadOnlyList<decimal> weights, int decimals = 2)
    {
        ArgumentNullException.ThrowIfNull(weights);
        ArgumentOutOfRangeException.ThrowIfNegative(sum);
        var coin = Coin(decimals);
        if (sum % coin != 0)
        {
            throw new ArgumentException("The sum is finer than the coin.", nameof(sum));
        }
        if (weights.Any(w => w < 0))
        {
            throw new ArgumentException("A weight is below zero.", nameof(weights));
        }
        if (sum == 0)
        {
            return new decimal[weights.Count];
        }
        var exact = weights.Select(InFinestUnits).ToList();
        var total = exact.Aggregate(BigInteger.Zero, (a, b) => a + b);
        if (total.IsZero)
        {
            throw new ArgumentException("No weight is above zero.", nameof(weights));
        }
        return [.. Hand(new BigInteger(sum / coin), exact, total).Select(coins => (decimal)coins * coin)];
    }

    /// <summary>The smallest coin of a currency with that many decimals, e.g. 0.01.</summary>
    public static decimal Coin(int decimals)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(decimals);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(decimals, MostMoneyDecimals);
        return new decimal(1, 0, 0, false, (byte)decimals);
    }

    // Whole numbers of any length: a rounded division could hand out a coin too many.
    private static BigInteger[] Hand(BigInteger coins, List<BigInteger> weights, BigInteger total)
    {
        var shares = weights.Select(w => coins * w / total).ToArray();
        var left = (int)(coins - shares.Aggregate(BigInteger.Zero, (a, b) => a + b));
        var byLoss = Enumerable.Range(0, weights.Count)
            .OrderByDescending(i => coins * weights[i] % total)
            .ThenByDescending(i => weights[i])
            .ThenBy(i => i);
        foreach (var i in byLoss.Take(left))
        {
            shares[i] += 1;
        }
        return shares;
    }

    private static BigInteger InFinestUnits(decimal value)
    {
        Span<int> parts = stackalloc int[4];
        decimal.GetBits(value, parts);
        // The parts are bit patterns: a set top bit is no minus sign.
        var digits = unchecked((new BigInteger((uint)parts[2]) << 64) + (new BigInteger((uint)parts[1]) << 32) + (uint)parts[0]);
        return digits * BigInteger.Pow(10, FinestDecimals - value.Scale);
    }
}
