using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Tests.Costing;

public class ApportionmentTests
{
    [Fact]
    public void Share_TiedRemainders_LargestWeightFirst() =>
        // Exact shares 2.5 and 7.5 coins: both lost half a coin, one coin is left.
        Assert.Equal([0.02m, 0.08m], Apportionment.Share(0.10m, [1m, 3m]));

    [Fact]
    public void Share_TieInSixths_IsNotDecidedByRoundingNoise() =>
        // Exact shares 0.5, 1.5 and 1 coins: the tie for the last coin goes to the heavier share.
        Assert.Equal([0m, 0.02m, 0.01m], Apportionment.Share(0.03m, [1m, 3m, 2m]));

    [Fact]
    public void Share_AllAlike_EarlierFirst() =>
        Assert.Equal([0.04m, 0.03m, 0.03m], Apportionment.Share(0.10m, [7m, 7m, 7m]));

    [Fact]
    public void Share_LostMost_GetsTheCoinThoughSmaller() =>
        // Exact shares 0.9 and 9.1 coins.
        Assert.Equal([0.01m, 0.09m], Apportionment.Share(0.10m, [9m, 91m]));

    [Fact]
    public void Share_WeightsAtTheEndsOfDecimal_StaysExact()
    {
        var shares = Apportionment.Share(
            1_000_000.00m, [decimal.MaxValue, 0.0000000000000000000000000001m, decimal.MaxValue]);
        Assert.Equal([500_000.00m, 0m, 500_000.00m], shares);
    }

    [Fact]
    public void Share_Nothing_NeedsNoWeights() => Assert.Equal([0m, 0m], Apportionment.Share(0m, [0m, 0m]));

    [Fact]
    public void Share_BadInput_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Apportionment.Share(1m, [0m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Apportionment.Share(1m, [2m, -1m]));
        Assert.Throws<ArgumentException>(() => Apportionment.Share(0.005m, [1m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Apportionment.Share(-1m, [1m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Apportionment.Share(1m, [1m], 7));
    }

    [Fact]
    public void RoundTogether_AddsUpAsPrinted_AlsoBelowZero()
    {
        Assert.Equal([0.34m, 0.33m, 0.33m], Apportionment.RoundTogether([1m / 3m, 1m / 3m, 1m / 3m]));
        Assert.Equal([1.01m, -0.34m], Apportionment.RoundTogether([1.006m, -0.336m]));
        Assert.Equal([0m, 0m], Apportionment.RoundTogether([0.002m, 0.002m]));
        Assert.Equal([1m, 0m], Apportionment.RoundTogether([0.5m, 0.4m], 0));
    }
}
