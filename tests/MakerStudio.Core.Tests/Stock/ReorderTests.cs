using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Stock;

public class ReorderTests
{
    [Fact]
    public void Point_DailyUseTimesLeadPlusSafety() =>
        Assert.Equal(
            StockAmount.OfGrams(1_300m),
            Reorder.Point(new DailyUse(80m, StockUnit.Gram), 10, StockAmount.OfGrams(500)));

    [Fact]
    public void Point_PartOfABottle_RoundsUp() =>
        Assert.Equal(
            StockAmount.OfPieces(26),
            Reorder.Point(DailyUse.Over(StockAmount.OfPieces(48), 30), 10, StockAmount.OfPieces(10)));

    [Fact]
    public void Point_ThirdOfAPiece_RoundsUp() =>
        Assert.Equal(
            StockAmount.OfPieces(4),
            Reorder.Point(DailyUse.Over(StockAmount.OfPieces(1), 3), 10, StockAmount.OfPieces(0)));

    [Fact]
    public void IsDue_AtThePoint_NotAboveIt()
    {
        var point = StockAmount.OfPieces(26);
        Assert.True(Reorder.IsDue(StockAmount.OfPieces(26), point));
        Assert.False(Reorder.IsDue(StockAmount.OfPieces(27), point));
    }

    [Fact]
    public void CoverDays_NothingUsed_IsUnknown_NothingLeft_IsZero()
    {
        var idle = new DailyUse(0, StockUnit.Gram);
        var busy = new DailyUse(80m, StockUnit.Gram);
        Assert.Null(Reorder.CoverDays(StockAmount.OfGrams(100), idle));
        Assert.Equal(1.25m, Reorder.CoverDays(StockAmount.OfGrams(100), busy));
        Assert.Equal(0m, Reorder.CoverDays(StockAmount.OfGrams(0), busy));
        Assert.Equal(0m, Reorder.CoverDays(StockAmount.OfGrams(-5), busy));
    }

    [Fact]
    public void MixedUnits_Throw()
    {
        var grams = new DailyUse(80m, StockUnit.Gram);
        Assert.Throws<InvalidOperationException>(() => Reorder.CoverDays(StockAmount.OfPieces(1), grams));
        Assert.Throws<InvalidOperationException>(() => Reorder.Point(grams, 1, StockAmount.OfPieces(1)));
    }
}
