using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class FlammableOnHandTests
{
    private static readonly LiquidHolding Ethanol = new("N-1 ethanol", Mass.FromGrams(20_000), FlammableCategory.Category2, new Density(0.79m), 26.81);
    private static readonly LiquidHolding Spray = new("RS-1 room spray", Mass.FromGrams(7_900), FlammableCategory.Category2, null);
    private static readonly LiquidHolding Limonene = new("N-2 orange oil", Mass.FromGrams(842), FlammableCategory.Category3, new Density(0.842m));
    private static readonly LiquidHolding Unclassed = new("P-1 fig accord", Mass.FromGrams(500), null, new Density(0.98m));

    [Fact]
    public void Of_SumsByCategory_WorstFirstUnknownLast()
    {
        FlammableOnHand found = FlammableOnHand.Of([Unclassed, Limonene, Spray, Ethanol], []);
        Assert.Equal([FlammableCategory.Category2, FlammableCategory.Category3, null], found.Sums.Select(sum => sum.Category));
        Assert.Equal(27_900m, found.Sums[0].Mass.Grams);
        Assert.Equal(["RS-1 room spray"], found.Sums[0].WithoutDensity);
        Assert.Equal(20_000 * 26.81, found.Kilojoules, 6);
        Assert.Equal(3, found.HeatUnknown.Count);
    }

    [Fact]
    public void Limit_ByMass_CountsWhatIsUnknownAsUnknown()
    {
        FlammableLimit limit = FlammableLimit.ByMass("Insurer", [FlammableCategory.Category2], Mass.FromGrams(30_000));
        LimitStanding standing = FlammableOnHand.Of([Ethanol, Spray, Unclassed], [limit]).Standings[0];
        Assert.Equal(0.93m, standing.Share);
        Assert.False(standing.IsOver);
        Assert.False(standing.IsSurelyWithin);
        Assert.Equal(["P-1 fig accord"], standing.LeftOut);
        Assert.True(FlammableOnHand.Of([Ethanol, Spray], [limit]).Standings[0].IsSurelyWithin);
    }

    [Fact]
    public void Limit_ByVolume_NamesWhatHasNoDensity()
    {
        FlammableLimit limit = FlammableLimit.ByVolume("Cabinet", [FlammableCategory.Category2], Volume.FromMillilitres(20_000));
        LimitStanding standing = FlammableOnHand.Of([Ethanol, Spray], [limit]).Standings[0];
        Assert.True(standing.IsOver);
        Assert.Equal(["RS-1 room spray"], standing.LeftOut);
    }

    /// <summary>Unclassed stock may count, so it stays named; stock of a class the limit does not count is not asked for a density.</summary>
    [Fact]
    public void Limit_ByVolume_NamesWhatHasNoClassAndNothingElse()
    {
        FlammableLimit limit = FlammableLimit.ByVolume("Cabinet", [FlammableCategory.Category2], Volume.FromMillilitres(40_000));
        Assert.True(FlammableOnHand.Of([Ethanol, Limonene with { Density = null }], [limit]).Standings[0].IsSurelyWithin);
        LimitStanding standing = FlammableOnHand.Of([Ethanol, Unclassed], [limit]).Standings[0];
        Assert.Equal(["P-1 fig accord"], standing.LeftOut);
        Assert.False(standing.IsSurelyWithin);
    }

    [Fact]
    public void Limit_ExactlyReached_IsWithin()
    {
        FlammableLimit limit = FlammableLimit.ByMass("Insurer", [FlammableCategory.Category2], Mass.FromGrams(20_000));
        LimitStanding standing = FlammableOnHand.Of([Ethanol, Limonene], [limit]).Standings[0];
        Assert.Equal(1m, standing.Share);
        Assert.False(standing.IsOver);
        Assert.True(standing.IsSurelyWithin);
    }

    [Fact]
    public void Suggestions_CarryTheirStatus()
    {
        Assert.All(FlammableLimitSuggestions.All, limit => Assert.NotNull(limit.Source));
        Assert.Contains(FlammableLimitSuggestions.All, limit => limit.Source!.Caution is not null);
        Assert.Throws<ArgumentOutOfRangeException>(() => FlammableLimit.ByMass("none", [], Mass.Zero));
    }
}
