using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Blending;

/// <summary>What a candle's fragrance share is a share of. The two differ by a tenth of the load and are often mixed up.</summary>
public enum WaxShareBasis
{
    OfWax,
    OfTotal,
}

/// <summary>a = share of wax, b = share of total: b = a/(1 + a), a = b/(1 − b).</summary>
public static class WaxShare
{
    /// <param name="ofWax">0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 0.</exception>
    public static decimal OfTotal(decimal ofWax)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ofWax);
        return ofWax / (1 + ofWax);
    }

    /// <param name="ofTotal">0 or more, below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 0, or nothing left for wax.</exception>
    public static decimal OfWax(decimal ofTotal)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ofTotal);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(ofTotal, 1);
        return ofTotal / (1 - ofTotal);
    }
}

/// <summary>What to weigh into one container. Wax and addition sum exactly to the total.</summary>
public sealed record CandleFill(Mass Total, Mass Wax, Mass Addition, IReadOnlyList<WorkingStep> Workings)
{
    private const string Rule = "Candle fill";
    private static readonly Source MassBalance = new("mass balance; the density is the one entered", DataStatus.Derived);

    /// <param name="fill">Volume filled, at the temperature and state of the density.</param>
    /// <param name="density">
    /// Of what is poured, or of the set candle where the fill is measured to its set level: liquid wax is lighter by 5 to 15 %.
    /// </param>
    /// <param name="share">Of fragrance and the like, 0 or more; of total below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is out of range or the volume below zero.</exception>
    public static CandleFill Of(Volume fill, Density density, decimal share, WaxShareBasis basis)
    {
        if (fill < Volume.Zero)
        {
            throw new ArgumentOutOfRangeException(nameof(fill), "A volume is 0 or more.");
        }

        decimal ofTotal = basis == WaxShareBasis.OfWax ? WaxShare.OfTotal(share) : share;
        _ = WaxShare.OfWax(ofTotal);
        Mass total = density.MassOf(fill);
        Mass addition = total.Times(ofTotal);
        return new(total, total - addition, addition,
        [
            new(Rule, $"{fill.Millilitres:0.##} mL at {density.GramsPerMillilitre:0.####} g/mL weighs {total.Grams:0.00} g.", MassBalance),
            new(Rule, $"{100 * WaxShare.OfWax(ofTotal):0.00} % of the wax is {100 * ofTotal:0.00} % of the total: {addition.Grams:0.00} g, and {(total - addition).Grams:0.00} g of wax.", MassBalance),
        ]);
    }
}

/// <summary>Scented dry matter: oil and fixative counted on the dry weight, as is common practice.</summary>
public sealed record DryFill(Mass Dry, Mass Oil, Mass Fixative)
{
    public Mass Total => Dry + Oil + Fixative;

    /// <summary>Oil's share of everything, which certificate limits count from.</summary>
    public decimal OilOfTotal => Total.IsZero ? 0 : Oil.Grams / Total.Grams;

    /// <param name="oilOfDry">0 or more; usual 0.02 to 0.05 (common practice, no source).</param>
    /// <param name="fixativeOfDry">0 or more; usual 0.05 to 0.10 (common practice, no source).</param>
    /// <exception cref="ArgumentOutOfRangeException">A share is below zero.</exception>
    public static DryFill Of(Mass dry, decimal oilOfDry, decimal fixativeOfDry)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(oilOfDry);
        ArgumentOutOfRangeException.ThrowIfNegative(fixativeOfDry);
        return new(dry, dry.Times(oilOfDry), dry.Times(fixativeOfDry));
    }
}
