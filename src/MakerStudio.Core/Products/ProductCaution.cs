using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Products;

/// <summary>A caution for whoever uses the product, in our own words.</summary>
/// <param name="Text">Ends with a full stop; stands on the label as it is.</param>
/// <param name="IsFireSafety">One of those that a candle's fire-safety label opens with the alert triangle and WARNING in the US.</param>
public sealed record ProductCaution(string Text, Citation From, bool IsFireSafety = false)
{
    private static readonly Citation Practice = new("Usual care with the product", DataStatus.CommonPractice);

    private static readonly Citation CandleRules = new("ASTM F2058 and EN 15494 (what they ask for; wording our own)", DataStatus.Memory);

    /// <summary>What the trade usually says; no source stands behind it.</summary>
    internal static ProductCaution Usual(string text) => new(text, Practice);

    /// <summary>One of the three things a candle's fire-safety label says.</summary>
    internal static ProductCaution OfCandles(string text) => new(text, CandleRules, true);
}
