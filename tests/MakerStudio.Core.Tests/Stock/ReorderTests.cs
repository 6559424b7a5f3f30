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

    [Fact]
    public void Advise_AtThePoint_OrdersUpToTheCover_InWholePacks()
    {
        // Own sums: 80 g a day, 10 days' lead and 500 g safety make 1,300 g; 60 more days make 6,100 g.
        var state = State(900m, 400m, minimum: 1000m, pack: 1000m);
        var advice = Reorder.Advise(state);
        Assert.Equal(StockAmount.OfGrams(1300m), advice.Point);
        Assert.True(advice.IsDue);
        Assert.Equal(StockAmount.OfGrams(5000m), advice.Quantity);
        Assert.Equal(0, advice.DaysLeft);
        Assert.False(advice.ArrivesTooLate);
        Assert.True(Reorder.Advise(State(799m, 0m)).ArrivesTooLate);
        Assert.Equal(StockAmount.OfGrams(4800m), Reorder.Advise(state with { Pack = StockAmount.OfGrams(0) }).Quantity);
        Assert.Equal(StockAmount.OfGrams(25_000m), Reorder.Advise(state with { Minimum = StockAmount.OfGrams(25_000m) }).Quantity);
    }

    [Fact]
    public void Advise_NotDue_SaysInHowManyDays()
    {
        var advice = Reorder.Advise(State(2100m, 0m));
        Assert.False(advice.IsDue);
        Assert.True(advice.Quantity.IsZero);
        Assert.Equal(10, advice.DaysLeft);
        Assert.Null(Reorder.Advise(State(2100m, 0m) with { Use = new DailyUse(0m, StockUnit.Gram) }).DaysLeft);
    }

    [Fact]
    public void CoverMonths_AndSafety()
    {
        Assert.Equal(1m, Reorder.CoverMonths(StockAmount.OfGrams(2435m), new DailyUse(80m, StockUnit.Gram)));
        // Own sums: 120 g × 14 days − 80 g × 10 days.
        Assert.Equal(StockAmount.OfGrams(880m), Reorder.SafetySuggestion(new(80m, StockUnit.Gram), 10, new(120m, StockUnit.Gram), 14));
        Assert.True(Reorder.SafetySuggestion(new(80m, StockUnit.Gram), 10, new(80m, StockUnit.Gram), 9).IsZero);
    }

    private static ReorderState State(decimal available, decimal onOrder, decimal minimum = 0m, decimal pack = 0m) => new(
        StockAmount.OfGrams(available), StockAmount.OfGrams(onOrder), new DailyUse(80m, StockUnit.Gram), 10, StockAmount.OfGrams(500m), 60,
        StockAmount.OfGrams(minimum), StockAmount.OfGrams(pack));
}
