using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Filling;

/// <summary>What a handful of weighed packs says about a filling.</summary>
/// <param name="Mean">Grams, not rounded.</param>
/// <param name="OverNominal">Mean less nominal as a fraction of nominal: what is given away. Below zero when packs are short.</param>
/// <param name="BelowLimit">How many lie below <paramref name="Least"/>.</param>
/// <param name="Least">The shortfall a single pack may have.</param>
public sealed record CheckWeightSummary(
    int Count, decimal Mean, Mass Lowest, Mass? Nominal, decimal? OverNominal, Mass? Least, int BelowLimit)
{
    /// <summary>In an average-quantity system the mean may not lie below nominal; common practice, no source.</summary>
    public bool IsMeanShort => OverNominal < 0;

    /// <summary>Cost of what every pack holds over its nominal content; 0 when the mean is not above it.</summary>
    /// <param name="packs">0 or more.</param>
    /// <param name="costPerGram">0 or more.</param>
    public decimal GivenAway(int packs, decimal costPerGram) =>
        Nominal is { } nominal && Mean > nominal.Grams ? (Mean - nominal.Grams) * packs * costPerGram : 0m;
}

/// <summary>Judges check weights against the nominal content.</summary>
public static class CheckWeights
{
    /// <param name="weights">Net, at least one.</param>
    /// <param name="nominal">Content on the label as a mass; null when it is not known.</param>
    /// <param name="shortfallFraction">How far one pack may fall short, 0 to 1; see Products.</param>
    /// <exception cref="ArgumentException">No weight is given.</exception>
    public static CheckWeightSummary Of(IReadOnlyList<Mass> weights, Mass? nominal, decimal shortfallFraction)
    {
        ArgumentNullException.ThrowIfNull(weights);
        if (weights.Count == 0)
        {
            throw new ArgumentException("There is nothing to judge without a weight.", nameof(weights));
        }

        var mean = weights.Average(w => w.Grams);
        var least = nominal?.Times(1 - shortfallFraction);
        return new CheckWeightSummary(
            weights.Count, mean, weights.Min(), nominal, nominal is { } n ? (mean - n.Grams) / n.Grams : null,
            least, least is { } limit ? weights.Count(w => w < limit) : 0);
    }
}
