using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Alcoholometry;

/// <summary>Whether R 22 may speak about a liquid.</summary>
public abstract record AlcoholReading
{
    public sealed record Applies(EthanolStrength Strength) : AlcoholReading;

    public sealed record DoesNotApply(string Why) : AlcoholReading;
}

/// <summary>R 22 is for ethanol and water between −20 and 40 °C, and says so about anything else.</summary>
public static class EthanolWaterScope
{
    /// <summary>
    /// Share by weight of other things still taken for a trace. Own threshold: the tert-butyl alcohol of US SDA 40-B,
    /// about 0.13 %, passes; it moves a density by less than 0.01 %.
    /// </summary>
    public const double TraceShare = 0.002;

    /// <summary>The strength of a liquid as R 22 sees it, or why it does not apply.</summary>
    /// <param name="ethanol">Shares by weight of one total, 0 or more each.</param>
    public static AlcoholReading Of(double ethanol, double water, double other)
    {
        double total = ethanol + water + other;
        if (!(ethanol >= 0 && water >= 0 && other >= 0 && total > 0 && double.IsFinite(total)))
        {
            throw new ArgumentOutOfRangeException(nameof(ethanol), "Shares are 0 or more, and not all 0.");
        }

        if (ethanol + water <= 0)
        {
            return new AlcoholReading.DoesNotApply("There is no ethanol and no water in it. The alcohol tables do not apply.");
        }

        return other / total > TraceShare
            ? new AlcoholReading.DoesNotApply(FormattableString.Invariant(
                $"The alcohol tables hold for ethanol and water only, and {100 * other / total:0.##} % of this is something else."))
            : new AlcoholReading.Applies(EthanolStrength.FromMassFraction(ethanol / (ethanol + water)));
    }

    /// <summary>Why R 22 does not apply at a temperature; null where it does.</summary>
    public static string? WhyNotAt(Celsius at) => R22.IsInRange((double)at.Degrees)
        ? null
        : FormattableString.Invariant($"The alcohol tables hold from −20 to 40 °C, and this is at {at.Degrees:0.##} °C.");
}
