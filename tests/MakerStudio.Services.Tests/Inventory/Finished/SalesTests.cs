using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using static MakerStudio.Services.Tests.SeedGoods;

namespace MakerStudio.Services.Tests.Inventory.Finished;

public class SalesTests
{
    [Fact]
    public async Task Record_TagWithTaxInside_KeepsNetAndCostOfEach()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();

        var sold = (await studio.Get<Sales>().RecordAsync(studio.Bo, SaleOf(batch, 3) with { Fees = 1.155m })).Expect();

        // 3 × 22.00 with 20 % inside is 55.00 net.
        Assert.Equal(("SL-1", 3, 55m, 66m, "RS-1 × 3"), (sold.Code, sold.Units, sold.Net, sold.Paid, sold.Batches));
        Assert.Equal(43, await studio.UnitsAsync(batch));
        var view = (await studio.Get<Sales>().FindAsync("SL-1"))!;
        Assert.Equal(55m, decimal.Round(view.Sale.Net, 6));
        Assert.Equal(4.5079m, decimal.Round(Assert.Single(view.Lines).UnitCost!.Value, 4));
        Assert.Equal(1.155m, view.Sale.Fees);
    }

    [Fact]
    public async Task Record_ByProduct_TakesTheBatchThatExpiresFirst()
    {
        await using var studio = await TestStudio.NewAsync();
        var late = await studio.FilledBatchAsync();
        var soon = await studio.AlsoFilledAsync("RS-7", late, 4, new DateOnly(2027, 3, 1));
        await using var db = studio.Db();
        var formula = await db.FormulaVersions.Select(v => v.FormulaId).FirstAsync();
        var sale = new RecordSale { Lines = [new SoldLine { FormulaId = formula, SizeName = "100 mL", Quantity = 6, Tag = 22m }] };

        var sold = (await studio.Get<Sales>().RecordAsync(studio.Bo, sale)).Expect();

        Assert.Equal("RS-7 × 4, RS-1 × 2", sold.Batches);
        Assert.Equal((0, 44), (await studio.UnitsAsync(soon), await studio.UnitsAsync(late)));
    }

    [Fact]
    public async Task Record_AnotherBatchThanTheFirst_NeedsAReason()
    {
        await using var studio = await TestStudio.NewAsync();
        var late = await studio.FilledBatchAsync();
        await studio.AlsoFilledAsync("RS-7", late, 4, new DateOnly(2027, 3, 1));
        var sale = SaleOf(late, 1);

        var refused = Assert.IsType<NotFirst>((await studio.Get<Sales>().RecordAsync(studio.Bo, sale)).Refusal);
        Assert.Equal(("RS-1", "RS-7"), (refused.Code, refused.Suggested));

        sale.Lines[0].Reason = "The buyer chose the newer one";
        (await studio.Get<Sales>().RecordAsync(studio.Bo, sale)).Expect();
        Assert.Equal(45, await studio.UnitsAsync(late));
    }

    [Fact]
    public async Task Record_PastBestBefore_NeedsAReasonAndOnHoldHasNone()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        (await studio.Get<FinishedGoods>().SetBestBeforeAsync(studio.Ana, new SetBestBefore { BatchId = batch, BestBefore = new DateOnly(2026, 10, 25) })).Expect();
        Assert.IsType<LotRefusal.Expired>(Assert.IsType<NotToBeSold>((await studio.Get<Sales>().RecordAsync(studio.Bo, SaleOf(batch, 1))).Refusal).Why);
        var reasoned = SaleOf(batch, 1);
        reasoned.Lines[0].Reason = "Told the buyer; half price";
        (await studio.Get<Sales>().RecordAsync(studio.Bo, reasoned)).Expect();

        await using (var db = studio.Db())
        {
            await db.Batches.ExecuteUpdateAsync(s => s.SetProperty(b => b.HeldReason, "Haze"));
        }

        reasoned.RequestId = Guid.CreateVersion7();
        Assert.IsType<LotRefusal.NotReleased>(Assert.IsType<NotToBeSold>((await studio.Get<Sales>().RecordAsync(studio.Bo, reasoned)).Refusal).Why);
    }

    /// <summary>As trade scenario S4, with the last unit: two people sell it at once, exactly one does.</summary>
    [Fact]
    public async Task Record_TwoPeopleOnTheLastUnit_ExactlyOneSellsItEachTime()
    {
        await using var studio = await TestStudio.NewAsync();
        var first = await studio.FilledBatchAsync();
        var sales = studio.Get<Sales>();
        for (var n = 0; n < 60; n++)
        {
            // A size of its own, so that no other batch could stand in.
            var last = await studio.AlsoFilledAsync($"RS-{n + 100}", first, 1);
            await using (var db = studio.Db())
            {
                await db.Batches.Where(b => b.Id == last).ExecuteUpdateAsync(s => s.SetProperty(b => b.SizeName, $"{n} mL"));
            }

            using var gun = new Barrier(2);
            Task<Outcome<SaleRecorded>> Sell(Actor who) => Task.Run(() =>
            {
                gun.SignalAndWait();
                return sales.RecordAsync(who, SaleOf(last, 1));
            });

            var outcomes = await Task.WhenAll(Sell(studio.Ana), Sell(studio.Bo));

            Assert.Single(outcomes, o => o is Done<SaleRecorded>);
            Assert.Equal(0, Assert.IsType<UnitsShort>(Assert.Single(outcomes, o => o is Refused<SaleRecorded>).Refusal).There);
            Assert.Equal(0, await studio.UnitsAsync(last));
        }

        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Record_SameRequest32TimesAtOnce_SellsOnce()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var sale = SaleOf(batch, 2);

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 32).Select(_ => Task.Run(() => studio.Get<Sales>().RecordAsync(studio.Bo, sale))));

        Assert.Equal("SL-1", Assert.Single(outcomes.Select(o => o.Expect().Code).Distinct()));
        Assert.Equal(44, await studio.UnitsAsync(batch));
        Assert.Single(await studio.Get<Sales>().ListAsync());
    }

    [Fact]
    public async Task Balance_BelowZero_IsRefusedByTheDatabaseToo()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        await using var connection = new NpgsqlConnection(studio.AppConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand($"""
            insert into unit_movements (entry_id, kind, batch_id, place_id, status, change, person_id, at, request_id)
            values (gen_random_uuid(), 'Sale', '{batch}', '{Places.StudioShelf}', 'Saleable', -47, gen_random_uuid(), now(), gen_random_uuid())
            """, connection);

        var refused = await Assert.ThrowsAsync<PostgresException>(() => command.ExecuteNonQueryAsync());

        Assert.Equal("units_never_negative", refused.ConstraintName);
        Assert.Equal(46, await studio.UnitsAsync(batch));
    }

    [Fact]
    public async Task Return_OneOfThree_WaitsOnHoldAndNoMoreThanWentOutComesBack()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var sales = studio.Get<Sales>();
        var sold = (await sales.RecordAsync(studio.Bo, SaleOf(batch, 3))).Expect();
        var back = new ReturnUnits { SaleId = sold.SaleId, BatchId = batch, Count = 1, RefundEach = 22m, Reason = "Sprayer leaks" };

        (await sales.ReturnAsync(studio.Ana, back)).Expect();

        Assert.Equal((43, 1), (await studio.UnitsAsync(batch), await studio.UnitsAsync(batch, status: UnitStatus.OnHold)));
        Assert.Equal(2, Assert.IsType<UnitsShort>((await sales.ReturnAsync(studio.Ana, back with { RequestId = Guid.CreateVersion7(), Count = 3 })).Refusal).There);
        Assert.Equal(2, Assert.Single(await studio.Get<FinishedGoods>().HoldersAsync("RS-1")).Units);
        var rows = await sales.ListAsync();
        Assert.Equal(2 * 22m / 1.2m, rows.Sum(s => s.Net), 6);
        Assert.IsType<Because>((await studio.Get<FinishedGoods>().TakeBackAsync(studio.Ana, new TakeBackEntry { EntryId = sold.SaleId, Reason = "Wrong" })).Refusal);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Dispatch_OfASaleTakenBack_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var sales = studio.Get<Sales>();
        var sold = (await sales.RecordAsync(studio.Bo, SaleOf(batch, 3))).Expect();
        (await sales.DispatchAsync(studio.Bo, new DispatchSale { SaleId = sold.SaleId, Carrier = "Post", Tracking = "QY1" })).Expect();
        Assert.Equal("QY1", Assert.Single((await sales.FindAsync("SL-1"))!.Dispatches).Tracking);
        (await studio.Get<FinishedGoods>().TakeBackAsync(studio.Ana, new TakeBackEntry { EntryId = sold.SaleId, Reason = "Wrong" })).Expect();

        Assert.IsType<Because>((await sales.DispatchAsync(studio.Bo, new DispatchSale { SaleId = sold.SaleId })).Refusal);
        Assert.Equal(46, await studio.UnitsAsync(batch));
    }

    [Fact]
    public async Task SetAside_EachWay_MovesOrBooksOutAndCanBeTakenBack()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var goods = studio.Get<FinishedGoods>();
        SetAside Aside(UnitMoveKind kind, int count, UnitStatus from = UnitStatus.Saleable) =>
            new() { BatchId = batch, PlaceId = Places.StudioShelf, Kind = kind, From = from, Count = count, Reason = "Harbour Hall" };

        (await goods.SetAsideAsync(studio.Ana, Aside(UnitMoveKind.Tester, 2))).Expect();
        var gift = (await goods.SetAsideAsync(studio.Ana, Aside(UnitMoveKind.Gift, 1))).Expect();
        (await goods.SetAsideAsync(studio.Ana, Aside(UnitMoveKind.Breakage, 3))).Expect();
        (await goods.SetAsideAsync(studio.Ana, Aside(UnitMoveKind.Discard, 1, UnitStatus.Tester))).Expect();

        Assert.Equal((40, 1), (await studio.UnitsAsync(batch), await studio.UnitsAsync(batch, status: UnitStatus.Tester)));
        (await goods.TakeBackAsync(studio.Ana, new TakeBackEntry { EntryId = gift.EntryId, Reason = "Not given after all" })).Expect();
        Assert.Equal(41, await studio.UnitsAsync(batch));
        Assert.IsType<NotAcceptable>((await goods.SetAsideAsync(studio.Ana, Aside(UnitMoveKind.Gift, 1, UnitStatus.Rejected))).Refusal);
        Assert.IsType<UnitsShort>((await goods.SetAsideAsync(studio.Ana, Aside(UnitMoveKind.Hold, 42))).Refusal);
        Assert.Contains((await goods.EntriesAsync(batch)), e => e.IsTakenBack && e.Kinds.Contains(UnitMoveKind.Gift));
    }

    [Fact]
    public async Task Record_AtAStall_SellsWhatWasBroughtThere()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var stall = await studio.ShopAsync("Harbour Hall", PlaceKind.Stall);
        (await studio.Get<Consignments>().PlaceAsync(studio.Ana, new PlaceUnits { PlaceId = stall, Lines = [new UnitsToPlace { BatchId = batch, Count = 8 }] })).Expect();

        (await studio.Get<Sales>().RecordAsync(studio.Ana, SaleOf(batch, 5) with { PlaceId = stall })).Expect();
        (await studio.Get<FinishedGoods>().SetAsideAsync(studio.Ana, new SetAside { BatchId = batch, PlaceId = stall, Kind = UnitMoveKind.Breakage, Count = 1, Reason = "Fell" })).Expect();

        Assert.Equal((38, 2), (await studio.UnitsAsync(batch), await studio.UnitsAsync(batch, stall)));
        Assert.Equal("Buyers at Harbour Hall", Assert.Single(await studio.Get<FinishedGoods>().HoldersAsync("RS-1")).Who);
    }
}
