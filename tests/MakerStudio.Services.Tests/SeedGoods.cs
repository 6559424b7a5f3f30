using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests;

/// <summary>Finished goods for tests of what comes after filling: the worked batch filled, shops, counts.</summary>
internal static class SeedGoods
{
    /// <summary>RS-1, 48 filled, 1 rejected, 1 retained: 46 on the studio's shelf at 4.5079 each.</summary>
    public static async Task<Guid> FilledBatchAsync(this TestStudio studio)
    {
        var batch = await studio.WorkedBatchAsync();
        (await studio.Get<Fills>().RecordAsync(studio.Bo, new RecordFill
        {
            BatchId = batch, ToFillingGrams = 3_940m, FillGrams = 82.0m, Filled = 48, Rejected = 1, Retained = 1, LabourMinutes = 130m,
        })).Expect();
        return batch;
    }

    /// <summary>Another filled batch of the same product, its rows written straight.</summary>
    public static async Task<Guid> AlsoFilledAsync(this TestStudio studio, string code, Guid like, int saleable, DateOnly? bestBefore = null, decimal unitCost = 4m)
    {
        await using var db = studio.Db();
        var first = await db.Batches.AsNoTracking().SingleAsync(b => b.Id == like);
        return await studio.FilledOfAsync(code, first.FormulaVersionId, first.ScentName, first.ProductKind, first.SizeName, saleable, bestBefore, unitCost);
    }

    /// <summary>A filled batch of a formula in a size, its rows written straight; all it cost is overhead.</summary>
    public static async Task<Guid> FilledOfAsync(
        this TestStudio studio, string code, Guid version, string scent, string kind, string? size, int saleable, DateOnly? bestBefore = null, decimal unitCost = 4m)
    {
        await using var db = studio.Db();
        var now = studio.Clock.GetUtcNow();
        var batch = new Batch
        {
            Code = code, FormulaVersionId = version, ScentName = scent, VersionNumber = 1, ProductKind = kind, State = BatchState.Filled,
            SizeName = size, CureMinHours = 48, CureIdealHours = 336, TolerancePercent = 0.5m, ToleranceDivisions = 2, TargetMilligrams = 1_000_000,
            ReadabilityMilligrams = 100, PlannedById = studio.Ana.PersonId, PlannedAt = now, ClockStartedAt = now, FilledAt = now, BestBefore = bestBefore,
        };
        db.Batches.Add(batch);
        db.Fills.Add(new Fill { BatchId = batch.Id, Filled = saleable, ToFillingMilligrams = 1_000_000, FillMilligrams = 1, TotalCost = saleable * unitCost, OverheadCost = saleable * unitCost, PersonId = studio.Bo.PersonId, At = now });
        db.UnitMovements.Add(new UnitMovement
        {
            EntryId = Guid.CreateVersion7(), Kind = UnitMoveKind.Filled, BatchId = batch.Id, PlaceId = Places.StudioShelf, Status = UnitStatus.Saleable, Change = saleable,
            PersonId = studio.Bo.PersonId, At = now, RequestId = Guid.CreateVersion7(),
        });
        await db.SaveChangesAsync();
        return batch.Id;
    }

    /// <summary>Tollgate House, 40 % commission, pays our cost for what breaks.</summary>
    public static async Task<Guid> ShopAsync(this TestStudio studio, string name = "Tollgate House", PlaceKind kind = PlaceKind.Consignment) =>
        (await studio.Get<Places>().AddAsync(studio.Ana, new AddPlace { Name = name, Kind = kind, CommissionPercent = 40m, PaysBroken = true })).Expect().PlaceId;

    public static async Task<int> UnitsAsync(this TestStudio studio, Guid batch, Guid? place = null, UnitStatus status = UnitStatus.Saleable)
    {
        await using var db = studio.Db();
        return await db.UnitBalances.Where(b => b.BatchId == batch && b.PlaceId == (place ?? Places.StudioShelf) && b.Status == status).SumAsync(b => b.Count);
    }

    public static RecordSale SaleOf(Guid batch, int quantity, decimal tag = 22m) =>
        new() { Channel = "Stall", TaxPercent = 20m, Lines = [new SoldLine { BatchId = batch, Quantity = quantity, Tag = tag }] };
}
