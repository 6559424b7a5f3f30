using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services.Tests.Inventory;

public class StockTests
{
    [Fact]
    public async Task List_QuarantineReservedAndPastUse_AreNotAvailable()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await studio.LotAsync(oil, "P-1", 4700, 0.067374m);
        await studio.LotAsync(oil, "P-3", 5000, 0.070m, status: LotStatus.Quarantine);
        await studio.LotAsync(oil, "P-4", 100, 0.066m, retest: new DateOnly(2026, 10, 25));
        var batch = await BatchAsync(studio, oil, 480_000);
        await WeighAsync(studio, batch, 100_000, null);

        var row = Assert.Single(await studio.Get<Stock>().ListAsync());

        Assert.Equal((9_800_000L, 380_000L, 5_000_000L, 100_000L), (row.OnHand, row.Reserved, row.NotReleased, row.PastUse));
        Assert.Equal(100_000, row.ToFollow);
        Assert.Equal(4_220_000, row.Available);
        Assert.Equal(["P-4", "P-1", "P-3"], row.LotCodes);
        Assert.Null(row.CoverDays);
    }

    [Fact]
    public async Task List_PackagingOfUnfilledBatches_IsReserved()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var sprayer = await studio.MaterialAsync("Sprayer 24/410, black", MaterialKind.Sprayer, StockUnit.Each);
        await studio.LotAsync(sprayer, "S-2", 98, 0.42m);
        var batch = await BatchAsync(studio, oil, 480_000);
        await using (var db = studio.Db())
        {
            (await db.Batches.SingleAsync(b => b.Id == batch)).PlannedUnits = 42;
            db.BatchParts.Add(new BatchPart { BatchId = batch, MaterialId = sprayer, CountPerUnit = 2 });
            await db.SaveChangesAsync();
        }

        var row = (await studio.Get<Stock>().FindAsync(sprayer))!;

        Assert.Equal((98L, 84L, 14L), (row.OnHand, row.Reserved, row.Available));
    }

    [Fact]
    public async Task List_CoverShorterThanLeadTime_SaysOrderNow()
    {
        await using var studio = await TestStudio.NewAsync();
        var supplier = await studio.SupplierAsync();
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var lot = await studio.LotAsync(wax, "W-1", 1000, 0.006m);
        var batch = await BatchAsync(studio, wax, 700_000);
        await WeighAsync(studio, batch, 700_000, lot);
        await using (var db = studio.Db())
        {
            db.MaterialSuppliers.Add(new MaterialSupplier { MaterialId = wax, SupplierId = supplier, LeadTimeDays = 30 });
            await db.SaveChangesAsync();
        }

        var row = (await studio.Get<Stock>().FindAsync(wax))!;

        // 700 g in 60 days is 11.67 g a day: 300 g last 25.7 days, and the lead time is 30.
        Assert.Equal(25.7m, decimal.Round(row.CoverDays!.Value, 1));
        Assert.Equal(new DateOnly(2026, 10, 21), row.OrderBy);
        Assert.True(row.OrderNow);
    }

    [Fact]
    public async Task Match_ReceiptToFollow_MovesTheQuantityAndRecostsTheBatch()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var first = await studio.LotAsync(oil, "P-90", 120, 0.06737m);
        var batch = await BatchAsync(studio, oil, 300_000);
        await WeighAsync(studio, batch, 120_000, first);
        var pending = await WeighAsync(studio, batch, 180_000, null);
        Assert.Equal(-180_000, (await studio.Get<Stock>().FindAsync(oil))!.Available);
        var arrived = await studio.ReceiveAsync(await studio.SupplierAsync(), oil, 5, AmountUnit.Kilogram, 350);

        var matched = (await studio.Get<Stock>().MatchAsync(studio.Ana, new MatchPendingReceipt { PendingId = pending!.Value, LotId = arrived.LotId })).Expect();

        Assert.Equal(4_820_000, (await studio.LotRowAsync(arrived.Code)).OnHand);
        Assert.Equal(0.4734m, matched.CostAfter - matched.CostBefore);
        Assert.Empty(await studio.Get<Stock>().PendingAsync());
        await using var db = studio.Db();
        var movement = await db.Movements.OrderBy(m => m.Id).LastAsync();
        Assert.Equal((MovementKind.Use, -180_000L, (Guid?)batch), (movement.Kind, movement.Change, movement.BatchId));
        Assert.Contains("20.211 → 20.6844", (await db.Deviations.SingleAsync()).What);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Match_FilledBatch_MendsTheStoredTotals()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var batch = await BatchAsync(studio, oil, 180_000);
        var pending = await WeighAsync(studio, batch, 180_000, null);
        await using (var db = studio.Db())
        {
            db.Fills.Add(new Fill
            {
                BatchId = batch, ToFillingMilligrams = 180_000, FillMilligrams = 10_000, Filled = 18, Rejected = 1, Retained = 1, LabourMinutes = 30,
                MaterialsCost = 12.1266m, PackagingCost = 0m, LabourCost = 9m, OverheadCost = 2m, TotalCost = 23.1266m,
                PersonId = studio.Ana.PersonId, At = studio.Clock.GetUtcNow(),
            });
            await db.SaveChangesAsync();
        }

        var arrived = await studio.ReceiveAsync(await studio.SupplierAsync(), oil, 5, AmountUnit.Kilogram, 350);
        (await studio.Get<Stock>().MatchAsync(studio.Ana, new MatchPendingReceipt { PendingId = pending!.Value, LotId = arrived.LotId })).Expect();

        await using var read = studio.Db();
        var fill = await read.Fills.SingleAsync();
        Assert.Equal((12.60m, 23.60m), (fill.MaterialsCost, fill.TotalCost));
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Match_WrongMaterialTooLittleOrTwice_IsRefusedAndChangesNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var batch = await BatchAsync(studio, oil, 180_000);
        var pending = (await WeighAsync(studio, batch, 180_000, null))!.Value;
        var other = await studio.LotAsync(wax, "W-1", 1000, 0.006m);
        var small = await studio.LotAsync(oil, "P-1", 100, 0.07m);
        var held = await studio.LotAsync(oil, "P-2", 1000, 0.07m, status: LotStatus.OnHold);
        var good = await studio.LotAsync(oil, "P-3", 1000, 0.07m);
        var stock = studio.Get<Stock>();
        var before = await studio.FootprintAsync();

        Assert.IsType<Because>((await stock.MatchAsync(studio.Ana, new MatchPendingReceipt { PendingId = pending, LotId = other })).Refusal);
        Assert.IsType<HoldsLess>((await stock.MatchAsync(studio.Ana, new MatchPendingReceipt { PendingId = pending, LotId = small })).Refusal);
        Assert.IsType<Because>((await stock.MatchAsync(studio.Ana, new MatchPendingReceipt { PendingId = pending, LotId = held })).Refusal);
        Assert.Equal(before, await studio.FootprintAsync());
        Assert.Equal("P-3", Assert.Single(Assert.Single(await stock.PendingAsync()).Lots).Code);
        (await stock.MatchAsync(studio.Ana, new MatchPendingReceipt { PendingId = pending, LotId = good })).Expect();
        Assert.IsType<Because>((await stock.MatchAsync(studio.Bo, new MatchPendingReceipt { PendingId = pending, LotId = good })).Refusal);
    }

    [Fact]
    public async Task Verify_BalanceOrCostTamperedWith_ListsTheDifferences()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var lot = await studio.LotAsync(oil, "P-1", 120, 0.06737m);
        var batch = await BatchAsync(studio, oil, 300_000);
        await WeighAsync(studio, batch, 100_000, lot);
        var (agrees, said) = await VerifyCommand.RunAsync(studio.Get<Verify>());
        Assert.Equal(0, agrees);
        Assert.Contains("agrees   lots (1): on hand is the sum of their movements", said);
        Assert.Contains("by moving average, 8.08 went in and is found again", said);
        Assert.EndsWith("Every balance and every cost agrees with its movements.", said);

        await using (var line = new NpgsqlConnection(studio.OwnerConnectionString))
        {
            await line.OpenAsync();
            await using var tamper = new NpgsqlCommand("update lot_balances set on_hand = on_hand + 5000; update weighings set net_milligrams = 90000", line);
            await tamper.ExecuteNonQueryAsync();
        }

        var (code, text) = await VerifyCommand.RunAsync(studio.Get<Verify>());
        Assert.Equal(1, code);
        Assert.Contains("Lot P-1: on hand 25.0 g, its movements add up to 20.0 g.", text);
        Assert.Contains("a weighing of 90.0 g stands against 100.0 g", text);
        Assert.Contains($"The first:{Environment.NewLine}  Lot P-1: on hand 25.0 g", text);
        Assert.Contains("Look at Storeroom → lot P-1 (/storeroom/lots/P-1).", text);
        Assert.Contains("DIFFERS  weighings (1)", text);
    }

    /// <summary>A batch being weighed, with one line; rows are written straight.</summary>
    private static async Task<Guid> BatchAsync(TestStudio studio, Guid material, long target)
    {
        var version = await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (material, 100m));
        await using var db = studio.Db();
        var batch = new Batch
        {
            Code = "RS-1", FormulaVersionId = version, ScentName = "Fig", VersionNumber = 1, ProductKind = "room-spray-alcohol", State = BatchState.Weighing,
            TargetMilligrams = target, PlannedById = studio.Ana.PersonId, PlannedAt = studio.Clock.GetUtcNow(),
            Lines = { new BatchLine { Position = 1, MaterialId = material, MaterialName = "Fig fragrance oil", Fraction = 1, PlannedMilligrams = target, TargetMilligrams = target } },
        };
        db.Batches.Add(batch);
        await db.SaveChangesAsync();
        return batch.Id;
    }

    /// <summary>A recorded weighing; without a lot it is a receipt to follow at 67.37 a kg, and its id is the answer.</summary>
    private static async Task<Guid?> WeighAsync(TestStudio studio, Guid batchId, long milligrams, Guid? lotId)
    {
        await using var db = studio.Db();
        var line = await db.BatchLines.SingleAsync(l => l.BatchId == batchId);
        var lot = lotId is null ? null : await db.Lots.Include(l => l.Balance).SingleAsync(l => l.Id == lotId);
        var weighing = new Weighing
        {
            BatchId = batchId, BatchLineId = line.Id, LotId = lotId, NetMilligrams = milligrams, UnitCost = lot?.UnitCost ?? 0.06737m,
            At = studio.Clock.GetUtcNow(), PersonId = studio.Bo.PersonId, RequestId = Guid.CreateVersion7(),
        };
        db.Weighings.Add(weighing);
        if (lot is not null)
        {
            lot.Balance!.OnHand -= milligrams;
            db.Movements.Add(new Movement
            {
                LotId = lot.Id, Kind = MovementKind.Use, Change = -milligrams, OnHandAfter = lot.Balance.OnHand, UnitCost = lot.UnitCost, BatchId = batchId,
                WeighingId = weighing.Id, PersonId = studio.Bo.PersonId, At = studio.Clock.GetUtcNow(), RequestId = weighing.RequestId,
            });
            await db.SaveChangesAsync();
            return null;
        }

        await db.SaveChangesAsync();
        var pending = new PendingReceipt
        {
            MaterialId = line.MaterialId, BatchId = batchId, WeighingId = weighing.Id, Milligrams = milligrams, EstimatedUnitCost = 0.06737m,
            Reason = "jar is here, invoice is not", PersonId = studio.Bo.PersonId, At = studio.Clock.GetUtcNow(),
        };
        db.PendingReceipts.Add(pending);
        await db.SaveChangesAsync();
        return pending.Id;
    }
}
