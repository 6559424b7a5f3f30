using MakerStudio.Core.Blending;

namespace MakerStudio.Core.Costing;

/// <summary>
/// Shares a sum of money out in whole smallest coins so that the shares add up to the sum exactly.
/// </summary>
public static class Apportionment
{
    /// <summary>Most decimals a currency or a price list may use; ISO 4217 itself goes to 4 (from memory).</summary>
    public const int MostMoneyDecimals = 6;

    /// <summary>
    /// By <see cref="LargestRemainder"/>: every share is cut down to a whole coin, and the coins left over go one each
    /// to the shares that lost most. Where two lost the same, the heavier share is first, then the earlier one. Every
    /// share ends less than one coin from its exact proportion.
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
        var shares = new decimal[weights.Count];
        if (sum == 0)
        {
            return shares;
        }
        var heaviestFirst = Enumerable.Range(0, weights.Count).OrderByDescending(i => weights[i]).ToArray();
        var coins = LargestRemainder.Share((long)(sum / coin), [.. heaviestFirst.Select(i => weights[i])]);
        foreach (var (i, count) in heaviestFirst.Zip(coins))
        {
            shares[i] = count * coin;
        }
        return shares;
    }

    /// <summary>
    /// Rounds amounts to whole coins so that they add up to their rounded sum: each is cut down, and the coins left
    /// over go to those that lost most, the earlier first. For tables whose lines must add up as printed.
    /// </summary>
    /// <param name="amounts">Of any sign.</param>
    /// <param name="decimals">Decimals of the coin, 0 to 6.</param>
    /// <param name="sum">
    /// What they are to add up to, where that is printed elsewhere; a few coins from their sum at most. Coins beyond one
    /// for each amount go round once more.
    /// </param>
    public static IReadOnlyList<decimal> RoundTogether(IReadOnlyList<decimal> amounts, int decimals = 2, decimal? sum = null)
    {
        ArgumentNullException.ThrowIfNull(amounts);
        var coin = Coin(decimals);
        var rounded = amounts.Select(a => decimal.Floor(a / coin) * coin).ToArray();
        var open = (int)((decimal.Round(sum ?? amounts.Sum(), decimals, MidpointRounding.AwayFromZero) - rounded.Sum()) / coin);
        if (rounded.Length == 0)
        {
            return rounded;
        }

        var rounds = (int)Math.Floor((decimal)open / rounded.Length);
        var first = Enumerable.Range(0, rounded.Length).OrderByDescending(i => amounts[i] - rounded[i]).Take(open - rounds * rounded.Length).ToHashSet();
        return [.. rounded.Select((amount, i) => amount + coin * (rounds + (first.Contains(i) ? 1 : 0)))];
    }

    /// <summary>The smallest coin of a currency with that many decimals, e.g. 0.01.</summary>
    public static decimal Coin(int decimals)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(decimals);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(decimals, MostMoneyDecimals);
        return new decimal(1, 0, 0, false, (byte)decimals);
    }
}
