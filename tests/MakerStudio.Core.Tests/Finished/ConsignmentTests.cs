using System.Globalization;
using MakerStudio.Core.Finished;

namespace MakerStudio.Core.Tests.Finished;

public class ConsignmentTests
{
    private static readonly ConsignmentTerms Terms = new(18.33m, 0.40m, 4.51m);

    [Fact]
    public void Settle_S12()
    {
        var settled = Assert.IsType<ConsignmentResult.Settled>(Consignment.Settle(12, Terms, new(5, 1, 0, 6)));
        Assert.Equal(54.99m, settled.Revenue);
        Assert.Equal(4.51m, settled.ForBroken);
        Assert.Equal(36.66m, settled.Commission);
        Assert.Equal(6, settled.Left);
        Assert.Equal("5 sold × 18.33 × 60 %: 54.99.", settled.Workings[0].Says(CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Settle_NothingReported_NothingIsSold()
    {
        var settled = Assert.IsType<ConsignmentResult.Settled>(Consignment.Settle(12, Terms, new(0, 0, 0)));
        Assert.Equal((0m, 0m, 12), (settled.Revenue, settled.ForBroken, settled.Left));
    }

    [Fact]
    public void Settle_MoreThanPlaced() =>
        Assert.Equal(new ConsignmentResult.MoreThanPlaced(12, 13), Consignment.Settle(12, Terms, new(11, 1, 1)));

    [Fact]
    public void Settle_CountDoesNotFit_AsksFirst() =>
        Assert.Equal(new ConsignmentResult.DoesNotAddUp(6, 5), Consignment.Settle(12, Terms, new(5, 1, 0, 5)));

    [Fact]
    public void Settle_BadInput_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Consignment.Settle(12, Terms, new(-1, 0, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Consignment.Settle(12, Terms with { Commission = 1m }, new(1, 0, 0)));
    }
}
