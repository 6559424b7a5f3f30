using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
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

    /// <summary>What the form shows before the press is what the record holds after it, to the last digit.</summary>
    [Fact]
    public async Task Preview_WorkedBatch_EqualsWhatIsRecorded()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync(packagingOnHand: 30);
        var bottle = await studio.MaterialOfLotAsync("B-4");
        await studio.LotAsync(bottle, "B-5", 30m, 0.9m);
        var fills = studio.Get<Fills>();
        var typed = Fill(batch) with { Filled = 25, CheckWeightsGrams = [82.0m, 81.8m] };

        var form = (await fills.FormAsync("RS-1"))!;
        var preview = FillPreview.Of(form, typed);
        var bottles = Assert.Single(preview.Parts, p => p.Unit == "Bottle 100 mL");
        var done = (await fills.RecordAsync(studio.Bo, typed)).Expect();

        Assert.True(form.CanFill);
        Assert.Equal(0.5m, form.Overfill!.Value.Grams);
        Assert.Equal(81.5m, form.NominalMass!.Value.Grams);
        Assert.Equal((25, 60, 0), (bottles.Needed, bottles.Usable, bottles.Missing));
        Assert.Equal(done.TotalCost, preview.Sheet!.Total);
        Assert.Equal(done.PerSaleable, preview.Sheet.PerSaleable);
        Assert.Equal(64.09228m / 4_000m, form.Costs.PerGram);
        var record = (await studio.Get<BatchRecords>().FindAsync("RS-1"))!;
        Assert.Equal(record.Fill!.MassYield(record.WeighedMilligrams), preview.MassYield);
        Assert.Equal(1_890m, preview.Left!.Value.Grams);
        Assert.Equal(60m, preview.Lost!.Value.Grams);
    }

    [Fact]
    public async Task Preview_NotEnoughTypedYet_ShowsWhatIsKnownAndNoCost()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync(packagingOnHand: 40);
        var form = (await studio.Get<Fills>().FormAsync("RS-1"))!;

        Assert.Null(FillPreview.Of(form, new RecordFill { BatchId = batch }).Sheet);
        Assert.Null(FillPreview.Of(form, Fill(batch) with { Rejected = 40, Retained = 9 }).Sheet);
        Assert.Null(FillPreview.Of(form, Fill(batch) with { Filled = int.MaxValue, FillGrams = decimal.MaxValue }).InUnits);
        Assert.All(FillPreview.Of(form, Fill(batch)).Parts, p => Assert.Equal((48, 40, 8), (p.Needed, p.Usable, p.Missing)));
    }

    [Fact]
    public async Task Keep_Reload_BringsBackWhatWasTypedUntilItIsRecorded()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync();
        var fills = studio.Get<Fills>();
        var typed = Fill(batch) with { CheckWeightsGrams = [82.1m, 81.9m], Note = "Pump 2" };

        (await fills.KeepAsync(studio.Bo, new KeepFill { Typed = typed with { Filled = null } })).Expect();
        (await fills.KeepAsync(studio.Ana, new KeepFill { Typed = typed })).Expect();

        var draft = (await fills.FormAsync("RS-1"))!.Draft!;
        Assert.Equal("Ana", draft.KeptBy);
        Assert.Equal(48, draft.Typed.Filled);
        Assert.Equal([82.1m, 81.9m], draft.Typed.CheckWeightsGrams);
        Assert.NotEqual(typed.RequestId, draft.Typed.RequestId);

        (await fills.RecordAsync(studio.Ana, draft.Typed)).Expect();
        Assert.Null((await fills.FormAsync("RS-1"))!.Draft);
        Assert.IsType<NotReady>((await fills.KeepAsync(studio.Bo, new KeepFill { Typed = typed })).Refusal);
    }

    [Fact]
    public async Task Finished_Pages_ShowEveryBatchOnceNewestFirst()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync();
        (await studio.Get<Fills>().RecordAsync(studio.Bo, Fill(batch))).Expect();
        await using (var db = studio.Db())
        {
            // Two more made in the same instant as the first: the code decides between them.
            var first = await db.Batches.AsNoTracking().SingleAsync();
            foreach (var code in new[] { "RS-2", "RS-3" })
            {
                db.Batches.Add(new Batch
                {
                    Code = code, FormulaVersionId = first.FormulaVersionId, ScentName = "Fig", VersionNumber = 1, ProductKind = first.ProductKind,
                    State = BatchState.Closed, TargetMilligrams = 1, ReadabilityMilligrams = 1, PlannedById = first.PlannedById, PlannedAt = first.PlannedAt,
                    ClockStartedAt = first.ClockStartedAt, FilledAt = first.FilledAt, CureIdealHours = 1,
                });
            }

            await db.SaveChangesAsync();
        }

        var records = studio.Get<BatchRecords>();
        List<string> seen = [];
        for (var page = await records.FinishedAsync(take: 1); page is [var row]; page = await records.FinishedAsync(row, 1))
        {
            seen.Add(row.Code);
        }

        Assert.Equal(["RS-3", "RS-2", "RS-1"], seen);
        var worked = (await records.FinishedAsync()).Single(r => r.Code == "RS-1");
        Assert.Equal((46, 1, 1, 207.36268m), (worked.Saleable, worked.Retained, worked.Rejected, worked.TotalCost));
    }

    [Fact]
    public async Task Finished_PreBlend_NamesTheLotItBecame()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.PreBlendBatchAsync(parentExpires: new DateOnly(2027, 1, 22));
        (await studio.Get<Fills>().TakeIntoStockAsync(studio.Ana, new TakeIntoStock { BatchId = batch, Grams = 500m, LabourMinutes = 30m })).Expect();

        var row = Assert.Single(await studio.Get<BatchRecords>().FinishedAsync());
        Assert.Equal(("A-1", 0, "A-1"), (row.Code, row.Filled, row.MadeLot));
        Assert.Null(row.TotalCost);
        var made = (await studio.Get<BatchRecords>().FindAsync("A-1"))!.MadeLot!;
        Assert.Equal(("Hearth accord", 0.1088m, 500_000L), (made.Material, made.UnitCost, made.Milligrams));
    }

    private static RecordFill Fill(Guid batch) => new()
    {
        BatchId = batch, ToFillingGrams = 3_940m, FillGrams = 82.0m, Filled = 48, Rejected = 1, Retained = 1, LabourMinutes = 130m,
    };
}
