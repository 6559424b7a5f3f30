using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Stock;

/// <summary>Something liquid in the storeroom or among finished stock.</summary>
/// <param name="Category">Null where its class is not known.</param>
/// <param name="Density">Needed for limits by volume; null where not known.</param>
/// <param name="NetKilojoulesPerGram">Heat of combustion; null where not known.</param>
public sealed record LiquidHolding(string Name, Mass Mass, FlammableCategory? Category, Density? Density, double? NetKilojoulesPerGram = null);

/// <summary>A limit the studio enters: what it counts, and the most, by mass or by volume.</summary>
public sealed record FlammableLimit
{
    private FlammableLimit(string name, IReadOnlyList<FlammableCategory> counts, Mass? mass, Volume? volume, Source? source) =>
        (Name, Counts, Mass, Volume, Source) = (name, counts, mass, volume, source);

    public string Name { get; }

    public IReadOnlyList<FlammableCategory> Counts { get; }

    public Mass? Mass { get; }

    public Volume? Volume { get; }

    /// <summary>Null for a limit of the studio's own, from its insurer, say.</summary>
    public Source? Source { get; }

    /// <exception cref="ArgumentOutOfRangeException">Not above zero.</exception>
    public static FlammableLimit ByMass(string name, IReadOnlyList<FlammableCategory> counts, Mass most, Source? source = null) =>
        most > Quantities.Mass.Zero
            ? new(name, counts, most, null, source)
            : throw new ArgumentOutOfRangeException(nameof(most), "A limit is above zero.");

    /// <exception cref="ArgumentOutOfRangeException">Not above zero.</exception>
    public static FlammableLimit ByVolume(string name, IReadOnlyList<FlammableCategory> counts, Volume most, Source? source = null) =>
        most > Quantities.Volume.Zero
            ? new(name, counts, null, most, source)
            : throw new ArgumentOutOfRangeException(nameof(most), "A limit is above zero.");
}

/// <param name="Category">Null for what is not classified yet.</param>
/// <param name="Volume">Of those whose density is known.</param>
/// <param name="WithoutDensity">Those left out of the volume.</param>
public sealed record FlammableSum(FlammableCategory? Category, Mass Mass, Volume Volume, IReadOnlyList<string> WithoutDensity);

/// <param name="Share">Of the limit: above 1 is over it.</param>
/// <param name="LeftOut">Holdings that may count and could not be counted: no class, or no density.</param>
public sealed record LimitStanding(FlammableLimit Limit, decimal Share, IReadOnlyList<string> LeftOut)
{
    public bool IsOver => Share > 1;

    /// <summary>Under it for certain: nothing is left out.</summary>
    public bool IsSurelyWithin => Share <= 1 && LeftOut.Count == 0;
}

/// <param name="Kilojoules">Heat of burning everything whose heat is known.</param>
public sealed record FlammableOnHand(
    IReadOnlyList<FlammableSum> Sums, IReadOnlyList<LimitStanding> Standings, double Kilojoules, IReadOnlyList<string> HeatUnknown)
{
    public static FlammableOnHand Of(IReadOnlyList<LiquidHolding> holdings, IReadOnlyList<FlammableLimit> limits)
    {
        ArgumentNullException.ThrowIfNull(holdings);
        ArgumentNullException.ThrowIfNull(limits);
        return new(
            [.. holdings.GroupBy(holding => holding.Category).OrderBy(group => group.Key ?? (FlammableCategory)int.MaxValue)
                .Select(group => SumOf(group.Key, [.. group]))],
            [.. limits.Select(limit => StandingOf(limit, holdings))],
            holdings.Sum(holding => (double)holding.Mass.Grams * (holding.NetKilojoulesPerGram ?? 0)),
            [.. holdings.Where(holding => holding.NetKilojoulesPerGram is null).Select(holding => holding.Name)]);
    }

    private static FlammableSum SumOf(FlammableCategory? category, IReadOnlyList<LiquidHolding> holdings) => new(
        category, holdings.Select(holding => holding.Mass).Sum(), VolumeOf(holdings), WithoutDensity(holdings));

    private static LimitStanding StandingOf(FlammableLimit limit, IReadOnlyList<LiquidHolding> holdings)
    {
        LiquidHolding[] counted = [.. holdings.Where(holding => holding.Category is { } category && limit.Counts.Contains(category))];
        string[] unclassed = [.. holdings.Where(holding => holding.Category is null).Select(holding => holding.Name)];
        return limit.Mass is { } most
            ? new(limit, counted.Select(holding => holding.Mass).Sum().Grams / most.Grams, unclassed)
            : new(limit, VolumeOf(counted).Millilitres / limit.Volume!.Value.Millilitres, [.. unclassed, .. WithoutDensity(counted)]);
    }

    private static Volume VolumeOf(IReadOnlyList<LiquidHolding> holdings) => holdings
        .Where(holding => holding.Density is not null)
        .Aggregate(Volume.Zero, (sum, holding) => sum + holding.Density!.Value.VolumeOf(holding.Mass));

    private static string[] WithoutDensity(IReadOnlyList<LiquidHolding> holdings) =>
        [.. holdings.Where(holding => holding.Density is null).Select(holding => holding.Name)];
}
