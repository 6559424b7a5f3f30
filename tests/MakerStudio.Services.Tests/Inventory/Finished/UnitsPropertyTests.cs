using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using Xunit.Abstractions;

namespace MakerStudio.Services.Tests.Inventory.Finished;

/// <summary>Random acts on units, sensible and not: balances are the sums of movements, never below zero, and what was refused left nothing.</summary>
public class UnitsPropertyTests(ITestOutputHelper output)
{
    private const int Acts = 400;

    [Fact]
    public async Task Units_AfterRandomActs_AreTheSumOfTheirMovements()
    {
        var start = Random.Shared.Next();
        output.WriteLine($"Random start {start}");
        var random = new Random(start);
        await using var studio = await TestStudio.NewAsync();
        var first = await studio.FilledBatchAsync();
        Guid[] batches = [first, await studio.AlsoFilledAsync("RS-7", first, 60, new DateOnly(2027, 3, 1)), await studio.AlsoFilledAsync("RS-8", first, 25)];
        Guid[] places = [Places.StudioShelf, await studio.ShopAsync(), await studio.ShopAsync("Harbour Hall", PlaceKind.Stall)];
        var (done, refused) = (0, 0);
        for (var n = 0; n < Acts; n++)
        {
            var (batch, place, count) = (batches[random.Next(3)], places[random.Next(3)], random.Next(1, 9));
            var refusal = await ActAsync(studio, random, batch, place, count);
            (done, refused) = refusal is null ? (done + 1, refused) : (done, refused + 1);
        }

        output.WriteLine($"{done} done, {refused} refused");
        Assert.True(done > Acts / 20 && refused > 0, $"{done} done, {refused} refused: the walk hardly moved.");
        var report = await studio.Get<Verify>().RunAsync();
        Assert.True(report.Agrees, $"start {start}: {string.Join('\n', report.Differences)}");
        await using var db = studio.Db();
        Assert.Equal(await db.UnitMovements.SumAsync(m => m.Change), await db.UnitBalances.SumAsync(b => b.Count));
        Assert.False(await db.UnitBalances.AnyAsync(b => b.Count < 0));
    }

    private static async Task<Refusal?> ActAsync(TestStudio studio, Random random, Guid batch, Guid place, int count)
    {
        var goods = studio.Get<FinishedGoods>();
        switch (random.Next(6))
        {
            case 0:
                var sale = SeedGoods.SaleOf(batch, count) with { PlaceId = place };
                sale.Lines[0].Reason = "The buyer chose";
                return (await studio.Get<Sales>().RecordAsync(studio.Ana, sale)).Refusal;
            case 1:
                return (await studio.Get<Consignments>().PlaceAsync(
                    studio.Ana, new PlaceUnits { PlaceId = place, Lines = [new UnitsToPlace { BatchId = batch, Count = count, NetPrice = 18.33m }] })).Refusal;
            case 2:
                var there = await studio.UnitsAsync(batch, place);
                var sold = random.Next(0, there + 1);
                return (await studio.Get<Consignments>().ReportAsync(studio.Ana, new RecordShopReport
                {
                    PlaceId = place,
                    Lines = [new ShopReported { BatchId = batch, Sold = sold, Broken = random.Next(0, there - sold + 2), NetPrice = 18.33m, CommissionPercent = 40m, PaidPerBroken = random.Next(2) * 4.51m }],
                })).Refusal;
            case 3:
                var (from, kind) = ((UnitStatus)random.Next(5), SetAsideValidator.Offered[random.Next(SetAsideValidator.Offered.Count)]);
                return (await goods.SetAsideAsync(studio.Bo, new SetAside { BatchId = batch, PlaceId = place, From = from, Kind = kind, Count = count, Reason = "Random" })).Refusal;
            case 4:
                var entries = await goods.EntriesAsync(batch);
                return (await goods.TakeBackAsync(studio.Bo, new TakeBackEntry { EntryId = entries[random.Next(entries.Count)].EntryId, Reason = "Random" })).Refusal;
            default:
                var sales = await studio.Get<Sales>().ListAsync();
                return sales.Count == 0 ? new NotFound("A sale") : (await studio.Get<Sales>().ReturnAsync(
                    studio.Bo, new ReturnUnits { SaleId = sales[random.Next(sales.Count)].Id, BatchId = batch, Count = count, RefundEach = 10m, Reason = "Random" })).Refusal;
        }
    }
}
