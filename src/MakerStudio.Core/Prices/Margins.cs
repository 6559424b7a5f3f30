namespace MakerStudio.Core.Prices;

/// <summary>
/// Margin and markup of a net price over its cost, as fractions. Margin is measured on the price, markup on the cost:
/// a markup of 60 % is a margin of 37.5 %. Nothing is rounded.
/// </summary>
public static class Margins
{
    /// <summary>Wholesale over cost, and retail over wholesale. Common practice, no source.</summary>
    public const decimal KeystoneStep = 2m;

    /// <summary>(net − cost) ÷ net; null when the price is nothing.</summary>
    public static decimal? Margin(decimal net, decimal cost) => net == 0 ? null : (net - cost) / net;

    /// <summary>(net − cost) ÷ cost; null when the cost is nothing.</summary>
    public static decimal? Markup(decimal net, decimal cost) => cost == 0 ? null : (net - cost) / cost;

    /// <param name="margin">From 0, below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The margin is outside its range.</exception>
    public static decimal NetAtMargin(decimal cost, decimal margin)
    {
        RequireMargin(margin);
        return cost / (1m - margin);
    }

    /// <param name="markup">0 or more.</param>
    public static decimal NetAtMarkup(decimal cost, decimal markup) => cost * (1m + markup);

    /// <summary>Markup / (1 + markup).</summary>
    public static decimal MarginOfMarkup(decimal markup) => markup / (1m + markup);

    /// <summary>Margin / (1 − margin).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The margin is outside its range.</exception>
    public static decimal MarkupOfMargin(decimal margin)
    {
        RequireMargin(margin);
        return margin / (1m - margin);
    }

    /// <summary>Twice the cost to shops, and twice that to people; both net.</summary>
    public static (decimal Wholesale, decimal Retail) Keystone(decimal cost) => (cost * KeystoneStep, cost * KeystoneStep * KeystoneStep);

    private static void RequireMargin(decimal margin)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(margin, 0m);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(margin, 1m);
    }
}
