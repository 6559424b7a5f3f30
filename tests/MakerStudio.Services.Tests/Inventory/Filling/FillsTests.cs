using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Filling;

public class FillsTests
{
    /// <summary>The worked batch of 4,000 g from two fragrance lots; own example, computed by hand.</summary>
    [Fact]
    public async Task Record_FortyEightFilledOneRejectOneRetain_CostsPerSaleableBottleToTheLastDigit()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync();

        var done = (await studio.Get<Fills>().RecordAsync(studio.Bo, Fill(batch))).Expect();

        Assert.Equal(46, done.Saleable);
        Assert.Equal(207.36268m, done.TotalCost);
        Assert.Equal(4.3201m, Math.Round(done.PerFilled, 4));
        Assert.Equal(4.5079m, Math.Round(done.PerSaleable!.Value, 4));

        var record = (await studio.Get<BatchRecords>().FindAsync("RS-1"))!;
        Assert.Equal(64.09228m, record.Fill!.Materials);
        Assert.Equal(88.0704m, record.Fill.Packaging);
        Assert.Equal(39.00m, record.Fill.Labour);
        Assert.Equal(16.20m, record.Fill.Overhead);
        Assert.Equal(0.984m, record.Fill.MassYield(record.WeighedMilligrams));
        await using var db = studio.Db();
        Assert.All(await db.Lots.Where(l => l.Material!.StockedIn == StockUnit.Each).Select(l => l.Balance!.OnHand).ToListAsync(), left => Assert.Equal(52, left));
        Assert.Empty(await studio.DifferencesAsync());
    }

    [Fact]
    public async Task Record_TwoPeopleAtOnce_FillsOnce()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync();
        var fills = studio.Get<Fills>();

        var outcomes = await Task.WhenAll(
            Task.Run(() => fills.RecordAsync(studio.Ana, Fill(batch))), Task.Run(() => fills.RecordAsync(studio.Bo, Fill(batch))));

        Assert.Single(outcomes, o => o is Done<FillRecorded>);
        Assert.IsType<NotReady>(Assert.Single(outcomes, o => o is Refused<FillRecorded>).Refusal);
        await using var db = studio.Db();
        Assert.Equal(1, await db.Fills.CountAsync());
        Assert.Equal(48, await db.UnitMovements.SumAsync(m => m.Change));
    }

    [Fact]
    public async Task Record_PackagingShort_NamesEachAndChangesNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync(packagingOnHand: 40);

        var refused = Assert.IsType<PackagingShort>((await studio.Get<Fills>().RecordAsync(studio.Bo, Fill(batch))).Refusal);

        Assert.Equal(4, refused.Shortages.Count);
        Assert.All(refused.Shortages, s => Assert.Equal((48, 40), (s.Needed, s.Available)));
        await using var db = studio.Db();
        Assert.Equal(0, await db.Fills.CountAsync());
        Assert.Equal(BatchState.Ready, (await db.Batches.SingleAsync()).State);
        Assert.Empty(await studio.DifferencesAsync());
    }

    [Fact]
    public async Task Record_MoreThanReachedFilling_IsRefusedWithBothNumbers()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync();
        var fills = studio.Get<Fills>();

        var over = Assert.IsType<MoreThanThereIs>((await fills.RecordAsync(studio.Bo, Fill(batch) with { ToFillingGrams = 3_900m })).Refusal);
        Assert.Equal((3_936m, 3_900m), (over.Grams, over.AvailableGrams));
        Assert.IsType<MoreThanThereIs>((await fills.RecordAsync(studio.Bo, Fill(batch) with { ToFillingGrams = 4_000.1m })).Refusal);
    }

    [Fact]
    public async Task Record_CheckWeightsBelowNominal_WarnsAndRecords()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync();

        // 100 mL × 0.815 g/mL = 81.5 g; a single pack may be 4.5 % short, 77.83 g.
        var done = (await studio.Get<Fills>().RecordAsync(studio.Bo, Fill(batch) with { CheckWeightsGrams = [81.0m, 77.0m, 82.0m] })).Expect();

        Assert.Equal(2, done.Warnings.Count);
    }

    [Fact]
    public async Task TakeIntoStock_PreBlend_BecomesALotWithItsCostAndNoLaterDateThanItsParents()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.PreBlendBatchAsync(parentExpires: new DateOnly(2027, 1, 22));

        var taken = (await studio.Get<Fills>().TakeIntoStockAsync(studio.Ana, new TakeIntoStock { BatchId = batch, Grams = 500m, LabourMinutes = 30m })).Expect();

        // 520 g × 0.07 + 0.5 h × 18.00 + 9.00 a batch = 54.40; ÷ 500 g.
        Assert.Equal("A-1", taken.LotCode);
        Assert.Equal(0.1088m, taken.UnitCost);
        Assert.Equal(new DateOnly(2027, 1, 22), taken.UseBy);
        await using var db = studio.Db();
        Assert.Equal(500_000, (await db.LotBalances.SingleAsync(b => db.Lots.Any(l => l.Id == b.LotId && l.Code == "A-1"))).OnHand);
        Assert.Empty(await studio.DifferencesAsync());
    }

    private static RecordFill Fill(Guid batch) => new()
    {
        BatchId = batch, ToFillingGrams = 3_940m, FillGrams = 82.0m, Filled = 48, Rejected = 1, Retained = 1, LabourMinutes = 130m,
    };
}
