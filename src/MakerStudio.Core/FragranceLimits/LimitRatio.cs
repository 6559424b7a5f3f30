namespace MakerStudio.Core.FragranceLimits;

/// <summary>A share over its limit: at most 1 is within. One way of rounding for all of them.</summary>
internal static class LimitRatio
{
    /// <summary>Stands for any use of what must not be used at all, and for all that is further beyond.</summary>
    internal const decimal FarBeyond = 1_000_000_000m;

    /// <summary>Fractions of a formula are kept to 12 decimals; this keeps their last digit from deciding.</summary>
    internal const int Digits = 8;

    /// <summary>Sums are kept to this, so that the order of lines changes no digit of them.</summary>
    internal const int SumDigits = 12;

    private const decimal Whole = 100m;

    /// <param name="percent">0 or more.</param>
    /// <param name="limit">0 or more, per cent.</param>
    internal static decimal Of(decimal percent, decimal limit)
    {
        decimal share = Rounded(percent);
        return share <= 0 ? 0
            : limit <= 0 || share / FarBeyond >= limit ? FarBeyond
            : share / limit;
    }

    internal static bool IsWithin(decimal ratio) => Rounded(ratio) <= 1;

    internal static decimal Sum(IEnumerable<decimal> values) => decimal.Round(values.Sum(), SumDigits);

    internal static decimal Rounded(decimal value) => decimal.Round(value, Digits);

    /// <summary>The share at which a limit is just reached: 100 × limit ÷ content, not above 100.</summary>
    /// <param name="content">Per cent of the substance in the material.</param>
    internal static decimal MostUse(decimal content, decimal limit) => limit >= content ? Whole : Whole * limit / content;
}
