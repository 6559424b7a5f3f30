using MakerStudio.Core.Finished;

namespace MakerStudio.Core.Tests.Finished;

public class KitPlanTests
{
    private static KitOffer Offer(string code, int count, decimal cost) => new(Guid.NewGuid(), code, count, cost);

    /// <summary>Trade, section H: sets are limited to 9 when 9 candles are ready.</summary>
    [Fact]
    public void For_NineCandles_AllowsNineSetsAndNamesThem()
    {
        var plan = KitPlan.For(12, [new("Spray", 1, [Offer("RS-1", 40, 4.51m)]), new("Candle", 1, [Offer("CN-1", 9, 6m)]), new("Box", 1, [Offer("X-1", 50, 1.2m)])]);

        Assert.Equal((9, false, "Candle"), (plan.Possible, plan.IsMet, plan.Scarcest!.Name));
        Assert.Empty(plan.Groups);
    }

    [Fact]
    public void For_TwoBatchesOfOneThing_EachKitKeepsItsOwnCodes()
    {
        var plan = KitPlan.For(9, [new("Spray", 2, [Offer("RS-1", 7, 4m), Offer("RS-2", 20, 5m)]), new("Box", 1, [Offer("X-1", 50, 1.25m)])]);

        Assert.Equal([3, 1, 5], plan.Groups.Select(g => g.Kits));
        Assert.Equal([9.25m, 10.25m, 11.25m], plan.Groups.Select(g => g.UnitCost));
        Assert.Equal(["RS-1", "RS-2", "X-1"], plan.Groups[1].Contents.Select(c => c.Code));
        Assert.Equal(18, plan.Groups.Sum(g => g.Kits * g.Contents.Where(c => c.Need == 0).Sum(c => c.Count)));
    }

    [Fact]
    public void For_NothingInIt_Throws() => Assert.Throws<ArgumentException>(() => KitPlan.For(1, []));
}
