using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Finished;

public class UnitShelfTests
{
    private static readonly Guid Batch = new("0193f2a0-0000-7000-8000-0000000000b1");
    private static readonly Guid Shop = new("0193f2a0-0000-7000-8000-0000000000c1");

    [Fact]
    public void EveryKind_HasOneRule()
    {
        Assert.Equal(Enum.GetValues<UnitMoveKind>(), UnitRules.All.Select(r => r.Kind));
        Assert.All(Enum.GetValues<UnitMoveKind>(), kind => Assert.Equal(kind, UnitRules.For(kind).Kind));
    }

    /// <summary>What leaves the units that carry the money must go to some account, and nothing else may.</summary>
    [Fact]
    public void EveryRule_BooksTheMoneyThatLeavesStock() => Assert.All(UnitRules.All, rule =>
    {
        var before = rule.From.Any(UnitRules.CarriesValue);
        var after = rule.To is { } to && UnitRules.CarriesValue(to);
        Assert.Equal(rule.From.Count > 0 && before && !after, rule.Effect is BookEffect.CostOfSales or BookEffect.Expensed or BookEffect.Kit && rule.From.Count > 0);
        Assert.Equal(!before && after, rule.Effect is BookEffect.FromBatch or BookEffect.BackFromSale or BookEffect.Found || (rule.Effect == BookEffect.Kit && rule.From.Count == 0));
    });

    [Fact]
    public void Post_FromFillingToSale()
    {
        var shelf = After(
            UnitShelf.Empty,
            new(Batch, UnitMoveKind.Filled, 46), new(Batch, UnitMoveKind.RejectedAtFilling, 1), new(Batch, UnitMoveKind.RetainedAtFilling, 1),
            new(Batch, UnitMoveKind.Place, 12, null, Shop), new(Batch, UnitMoveKind.Tester, 1), new(Batch, UnitMoveKind.Sale, 3),
            new(Batch, UnitMoveKind.Return, 1), new(Batch, UnitMoveKind.Gift, 1), new(Batch, UnitMoveKind.Breakage, 1, UnitStatus.OnHold));
        Assert.Equal(46 - 12 - 1 - 3 - 1, shelf[new(Batch, UnitPlace.Here, UnitStatus.Saleable)]);
        Assert.Equal(12, shelf[new(Batch, UnitPlace.At(Shop), UnitStatus.Saleable)]);
        Assert.Equal(1, shelf[new(Batch, UnitPlace.Here, UnitStatus.Tester)]);
        Assert.DoesNotContain(shelf.Held, h => h.Key.Status == UnitStatus.OnHold);
    }

    [Fact]
    public void Post_ConsignmentReport_NothingIsSoldBefore_S12()
    {
        var placed = After(UnitShelf.Empty, new(Batch, UnitMoveKind.Filled, 12), new(Batch, UnitMoveKind.Place, 12, null, Shop));
        Assert.Equal(BookEffect.None, UnitRules.For(UnitMoveKind.Place).Effect);
        var reported = After(placed, new(Batch, UnitMoveKind.ReportSold, 5, null, Shop), new(Batch, UnitMoveKind.ReportPaidFor, 1, UnitStatus.Saleable, Shop));
        Assert.Equal(6, reported[new(Batch, UnitPlace.At(Shop), UnitStatus.Saleable)]);
    }

    [Fact]
    public void Post_MoreThanThereIs_TakesNothing()
    {
        var shelf = After(UnitShelf.Empty, new UnitMove(Batch, UnitMoveKind.Filled, 2));
        var less = Assert.IsType<UnitMoveResult.HoldsLess>(shelf.Post(new(Batch, UnitMoveKind.Sale, 3)));
        Assert.Equal((2, 3), (less.Has, less.Wanted));
        Assert.Equal(2, shelf[new(Batch, UnitPlace.Here, UnitStatus.Saleable)]);
    }

    [Theory]
    [InlineData(UnitMoveKind.Sale, 0, null, false, "At least one unit moves.")]
    [InlineData(UnitMoveKind.Sale, 1, UnitStatus.Retained, false, "Retained units cannot take this way.")]
    [InlineData(UnitMoveKind.Sale, 1, UnitStatus.OnHold, false, "Held units cannot take this way.")]
    [InlineData(UnitMoveKind.Sale, 1, null, true, "This is done with units that are here; take them back from the shop first.")]
    [InlineData(UnitMoveKind.Place, 1, null, false, "Say which shop.")]
    [InlineData(UnitMoveKind.ReportSold, 1, null, false, "Say which shop.")]
    [InlineData(UnitMoveKind.Breakage, 1, null, false, "Say which units: saleable, on hold, or another status.")]
    [InlineData(UnitMoveKind.Release, 1, UnitStatus.Rejected, false, "Rejected units cannot take this way.")]
    public void Post_NotOneOfItsKind_SaysWhy(UnitMoveKind kind, int count, UnitStatus? status, bool atShop, string says) =>
        Assert.Equal(says, Assert.IsType<UnitMoveResult.NotAllowed>(
            UnitShelf.Empty.Post(new(Batch, kind, count, status, atShop ? Shop : null))).Says);

    [Fact]
    public void Undo_PutsUnitsBack_UnlessTheyWentOn()
    {
        UnitMove place = new(Batch, UnitMoveKind.Place, 2, null, Shop);
        var shelf = After(UnitShelf.Empty, new(Batch, UnitMoveKind.Filled, 2), place);
        var undone = Assert.IsType<UnitMoveResult.Moved>(shelf.Undo(place));
        Assert.Equal(2, undone.Shelf[new(Batch, UnitPlace.Here, UnitStatus.Saleable)]);
        var sold = After(shelf, new UnitMove(Batch, UnitMoveKind.ReportSold, 1, null, Shop));
        Assert.IsType<UnitMoveResult.HoldsLess>(sold.Undo(place));
    }

    [Fact]
    public void UnitChoice_EarliestBestBeforeFirst_PassesOverBlockedAndPast()
    {
        DateOnly today = new(2026, 11, 25);
        Guid late = Guid.NewGuid(), soon = Guid.NewGuid(), past = Guid.NewGuid(), blocked = Guid.NewGuid();
        var plan = UnitChoice.For(
            9,
            [
                new(late, "RS-2", 5, today.AddDays(60), today), new(soon, "RS-1", 3, today, today),
                new(past, "RS-0", 3, today.AddDays(-1), today), new(blocked, "RS-3", 3, today.AddDays(9), today, true),
            ],
            today);
        Assert.Equal([(soon, "RS-1", 3), (late, "RS-2", 5)], plan.Picks);
        Assert.Equal(1, plan.Missing);
        Assert.False(plan.IsMet);
        Assert.Equal([past, blocked], plan.PassedOver.Select(p => p.BatchId));
        Assert.IsType<LotRefusal.Expired>(plan.PassedOver[0].Why);
    }

    private static UnitShelf After(UnitShelf shelf, params UnitMove[] moves) =>
        moves.Aggregate(shelf, (s, move) => Assert.IsType<UnitMoveResult.Moved>(s.Post(move)).Shelf);
}
