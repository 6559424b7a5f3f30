using System.Globalization;

namespace MakerStudio.Web.Shell.Drawings;

/// <summary>One tick of a graduated rule.</summary>
/// <param name="At">In the rule's unit.</param>
/// <param name="Major">Long, and labelled.</param>
public readonly record struct Tick(decimal At, bool Major);

/// <summary>A graduated rule from <paramref name="From"/> to <paramref name="To"/>: real units, never decoration.</summary>
/// <param name="Major">Distance of labelled ticks, above 0.</param>
/// <param name="Parts">Small divisions in one labelled one, 1 to 10.</param>
public sealed record Rule(decimal From, decimal To, decimal Major, int Parts)
{
    /// <summary>No rule is drawn finer than this; the step is doubled until it fits.</summary>
    private const int MostTicks = 120;

    /// <summary>Where counting of the ticks starts; labelled ticks lie whole steps from here.</summary>
    public decimal Zero { get; init; }

    private static readonly (decimal Step, int Parts)[] Round = [(1m, 10), (2m, 4), (5m, 5), (10m, 10)];

    /// <summary>A rule from 0 whose end and steps are 1, 2 or 5 times a power of ten, with 3 to 6 labelled steps.</summary>
    /// <param name="atLeast">The largest value it must hold; 0 or less gives a rule to 1.</param>
    public static Rule UpTo(decimal atLeast)
    {
        var needed = atLeast <= 0 ? 1m : atLeast;
        var (step, parts) = RoundStep(needed / 5m);
        return new Rule(0m, decimal.Ceiling(needed / step) * step, step, parts);
    }

    /// <summary>A rule from 0 to exactly <paramref name="end"/>, for a share or a vessel that is full there.</summary>
    public static Rule Exactly(decimal end)
    {
        var (step, parts) = RoundStep((end <= 0 ? 1m : end) / 5m);
        return new Rule(0m, end <= 0 ? 1m : end, step, parts);
    }

    /// <summary>A rule with round steps that holds both, with 3 to 7 labelled steps; from 0 where the values come near it, and through it where they lie on both sides.</summary>
    /// <param name="most">Not below <paramref name="least"/>; a single value gets a little room on both sides.</param>
    public static Rule Around(decimal least, decimal most)
    {
        if (least < 0)
        {
            var (below, divisions) = RoundStep((Math.Max(0m, most) - least) / 5m);
            return new Rule(decimal.Floor(least / below) * below, decimal.Ceiling(Math.Max(0m, most) / below) * below, below, divisions);
        }

        if (most <= 0 || least < most * NearZero)
        {
            return UpTo(most);
        }

        var room = Math.Max(most - least, most * LeastRoom);
        var (step, parts) = RoundStep(room / 4m);
        var from = decimal.Floor((least - (room / 8m)) / step) * step;
        return new Rule(Math.Max(0m, from), decimal.Ceiling((most + (room / 8m)) / step) * step, step, parts);
    }

    /// <summary>Values that begin under this part of the largest are drawn from 0.</summary>
    private const decimal NearZero = 0.5m;

    /// <summary>What is drawn spans at least this part of its largest value, so that a rounding is no mountain.</summary>
    private const decimal LeastRoom = 0.1m;

    private static (decimal Step, int Parts) RoundStep(decimal least)
    {
        var power = 1m;
        while (power > least) power /= 10m;
        while (power * 10m <= least) power *= 10m;
        var (times, parts) = Round.First(r => r.Step * power >= least);
        return (times * power, parts);
    }

    public IEnumerable<Tick> Ticks()
    {
        var step = Major / Parts;
        while ((To - From) / step > MostTicks) step *= 2;
        var first = Zero + (decimal.Ceiling((From - Zero) / step) * step);
        for (var at = first; at <= To; at += step)
        {
            yield return new Tick(at, (at - Zero) % Major == 0);
        }
    }

    /// <summary>Where a value lies, as a share of the rule's length; values outside lie on its ends.</summary>
    public decimal Share(decimal at) => Math.Clamp((at - From) / (To - From), 0m, 1m);

    /// <summary>The same as a css or svg length.</summary>
    public string Percent(decimal at) => Css(Share(at) * 100m) + "%";

    /// <summary>The length between two values as a css or svg length.</summary>
    public string Width(decimal start, decimal end) => Css((Share(end) - Share(start)) * 100m) + "%";

    internal static string Css(decimal value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
