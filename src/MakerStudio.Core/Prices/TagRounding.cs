using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Prices;

/// <summary>How a worked-out price becomes a tag: always up, so that a tag never falls below the price that is safe.</summary>
public sealed record TagRounding
{
    /// <summary>Common practice, no source.</summary>
    public static readonly IReadOnlyList<decimal> UsualEndings = [0.00m, 0.50m, 0.90m, 0.95m, 0.99m];

    /// <param name="moneyDecimals">Decimals of the coin, 0 to 6.</param>
    /// <param name="ending">What the tag ends in, from 0, below 1, in whole coins; null for any coin.</param>
    /// <exception cref="ArgumentException">The ending is outside its range or finer than the coin.</exception>
    public TagRounding(int moneyDecimals = 2, decimal? ending = null)
    {
        Coin = Apportionment.Coin(moneyDecimals);
        if (ending is < 0 or >= 1 || (ending ?? 0) % Coin != 0)
        {
            throw new ArgumentException("A price ending lies from 0 to below 1 and is no finer than the coin.", nameof(ending));
        }

        MoneyDecimals = moneyDecimals;
        Ending = ending;
    }

    public int MoneyDecimals { get; }

    public decimal? Ending { get; }

    public decimal Coin { get; }

    /// <summary>The lowest tag with the ending that is not below the price.</summary>
    public decimal Up(decimal price)
    {
        if (Ending is not { } ending)
        {
            return decimal.Ceiling(price / Coin) * Coin;
        }

        var tag = decimal.Floor(price) + ending;
        return tag >= price ? tag : tag + 1m;
    }

    /// <summary>
    /// The lowest tag t with the ending for which t × factor reaches the target. Compared multiplied out: a division
    /// that does not come out would at times cost or give a coin.
    /// </summary>
    /// <param name="factor">Above 0.</param>
    internal decimal Lowest(decimal factor, decimal target)
    {
        var tag = Math.Max(0m, decimal.Floor(target / factor / Coin) - 1m) * Coin;
        while (tag * factor < target)
        {
            tag += Coin;
        }

        return Up(tag);
    }
}
