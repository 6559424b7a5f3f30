using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Filling;

/// <summary>
/// The tolerable negative error of a prepackage, Directive 76/211/EEC, Annex I 2.4. No pack may fall short of nominal by
/// more than twice this, only a few by more than once, and the average by nothing. Volumes count at 20 °C.
/// </summary>
public static class EuTolerableError
{
    /// <summary>g or mL.</summary>
    public const decimal Lowest = 5;

    /// <summary>g or mL.</summary>
    public const decimal Highest = 10_000;

    /// <summary>Up to it the table was read; beyond, from memory.</summary>
    private const decimal ReadUpTo = 1000;

    /// <summary>Errors of the per cent bands are rounded up to this, g or mL (the rounding rule from memory).</summary>
    private const decimal Step = 0.1m;

    /// <summary>In g or mL, as the nominal content is; null outside 5 to 10,000.</summary>
    public static Sourced<decimal>? Of(decimal nominal)
    {
        decimal? error = nominal switch
        {
            < Lowest or > Highest => null,
            <= 50 => RoundedUp(nominal * 0.09m),
            <= 100 => 4.5m,
            <= 200 => RoundedUp(nominal * 0.045m),
            <= 300 => 9m,
            <= 500 => RoundedUp(nominal * 0.03m),
            <= 1000 => 15m,
            _ => RoundedUp(nominal * 0.015m),
        };
        return error is { } found
            ? new(found, new("Directive 76/211/EEC, Annex I 2.4", nominal <= ReadUpTo ? DataStatus.Read : DataStatus.Memory))
            : null;
    }

    private static decimal RoundedUp(decimal error) => decimal.Ceiling(error / Step) * Step;
}
