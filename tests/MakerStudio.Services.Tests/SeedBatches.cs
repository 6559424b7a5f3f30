using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests;

/// <summary>Batches that have been weighed already, for tests of curing and filling. Uses go through the ledger's tables.</summary>
internal static class SeedBatches
{
    /// <summary>RS-2, resting since now (or <paramref name="startedAt"/>), minimum 48 h.</summary>
    public static async Task<Guid> RestingBatchAsync(this TestStudio studio, DateTimeOffset? startedAt = null)
    {
        var oil = await studio.MaterialAsync("Quince & Smoke fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var version = await studio.ReleasedFormulaAsync("Quince & Smoke", "room-spray-alcohol", (oil, 100m));
        return await studio.BatchAsync("RS-2", version, "Quince & Smoke", "room-spray-alcohol", BatchState.Resting, 3_000m, startedAt, []);
    }

    /// <summary>RS-1: 480 g fragrance from two lots, 3,320 g ethanol, 200 g DPG; ready to be filled as 48 × 82.0 g.</summary>
    public static async Task<Guid> WorkedBatchAsync(this TestStudio studio, decimal packagingOnHand = 100m)
    {
        var fig = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var dpg = await studio.MaterialAsync("DPG", MaterialKind.Fixative, density: 1.02m);
        var ethanol = await studio.MaterialAsync("Ethanol 99.5 % vol, denatured", MaterialKind.CarrierBase, density: 0.79m);
        var version = await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (fig, 12m), (dpg, 5m), (ethanol, 83m));
        var p2 = await studio.LotAsync(fig, "P-2", 180m, 0.0719m);
        var p1 = await studio.LotAsync(fig, "P-1", 5_000m, 0.067374m);
        var d1 = await studio.LotAsync(dpg, "D-1", 1_440m, 0.0112m);
        var e3 = await studio.LotAsync(ethanol, "E-3", 20_000m, 0.008644m);
        var batch = await studio.BatchAsync("RS-1", version, "Fig", "room-spray-alcohol", BatchState.Ready, 4_000m, null,
            [(p2, 180m), (p1, 300m), (d1, 200m), (e3, 3_320m)]);
        await using var db = studio.Db();
        (string Name, MaterialKind Kind, string Code, decimal Cost)[] parts =
        [
            ("Bottle 100 mL", MaterialKind.Bottle, "B-4", 0.8648m), ("Sprayer", MaterialKind.Sprayer, "S-2", 0.42m),
            ("Label", MaterialKind.Label, "L-3", 0.19m), ("Carton", MaterialKind.Carton, "X-1", 0.36m),
        ];
        foreach (var part in parts)
        {
            var material = await studio.MaterialAsync(part.Name, part.Kind, StockUnit.Each);
            await studio.LotAsync(material, part.Code, packagingOnHand, part.Cost);
            db.BatchParts.Add(new BatchPart { BatchId = batch, MaterialId = material, CountPerUnit = 1 });
        }

        var row = await db.Batches.SingleAsync(b => b.Id == batch);
        (row.PlannedUnits, row.FillMilligrams, row.NominalMillilitres, row.DensityUsed, row.SizeName) = (48, 82_000, 100m, 0.815m, "100 mL");
        await db.SaveChangesAsync();
        return batch;
    }

    public static async Task<Guid> MaterialOfLotAsync(this TestStudio studio, string code)
    {
        await using var db = studio.Db();
        return await db.Lots.Where(l => l.Code == code).Select(l => l.MaterialId).SingleAsync();
    }

    /// <summary>A-1: a ready pre-blend of 520 g from one parent lot.</summary>
    public static async Task<Guid> PreBlendBatchAsync(this TestStudio studio, DateOnly parentExpires)
    {
        var cedar = await studio.MaterialAsync("Cedar leaf oil", MaterialKind.EssentialOil, density: 0.91m);
        var accord = await studio.MaterialAsync("Hearth accord", MaterialKind.PreBlend);
        var lot = await studio.LotAsync(cedar, "N-7", 1_000m, 0.07m, expires: parentExpires);
        var version = await studio.ReleasedFormulaAsync("Hearth accord", "pre-blend", (cedar, 100m));
        await using (var db = studio.Db())
        {
            var formula = await db.Formulas.SingleAsync();
            formula.MakesMaterialId = accord;
            await db.SaveChangesAsync();
        }

        return await studio.BatchAsync("A-1", version, "Hearth accord", "pre-blend", BatchState.Ready, 520m, null, [(lot, 520m)]);
    }

    /// <summary>RS-5, ready: all of it weighed from one lot, of a formula of its own.</summary>
    public static async Task<Guid> SprayOfAsync(this TestStudio studio, string lotCode, decimal grams)
    {
        Guid material, lot;
        await using (var db = studio.Db())
        {
            (material, lot) = await db.Lots.Where(l => l.Code == lotCode).Select(l => new ValueTuple<Guid, Guid>(l.MaterialId, l.Id)).SingleAsync();
        }

        var version = await studio.ReleasedFormulaAsync("Hearth", "room-spray-alcohol", (material, 100m));
        return await studio.BatchAsync("RS-5", version, "Hearth", "room-spray-alcohol", BatchState.Ready, grams, null, [(lot, grams)]);
    }

    private static async Task<Guid> BatchAsync(
        this TestStudio studio, string code, Guid versionId, string scent, string kind, BatchState state, decimal grams,
        DateTimeOffset? startedAt, (Guid Lot, decimal Grams)[] uses)
    {
        await using var db = studio.Db();
        var now = studio.Clock.GetUtcNow();
        var batch = new Batch
        {
            Code = code, FormulaVersionId = versionId, ScentName = scent, VersionNumber = 1, ProductKind = kind, State = state,
            CureMinHours = 48, CureIdealHours = 336, TolerancePercent = 0.5m, ToleranceDivisions = 2, ExpectedLossPercent = 1.5m,
            TargetMilligrams = Mass.FromGrams(grams).Milligrams, ReadabilityMilligrams = 100, ScaleId = TestStudio.ScaleId,
            PlannedById = studio.Ana.PersonId, PlannedAt = now, ClockStartedAt = startedAt ?? now, ClockStartedById = studio.Bo.PersonId,
            ReadyAt = state == BatchState.Ready ? now : null, ReadyById = state == BatchState.Ready ? studio.Ana.PersonId : null,
        };
        db.Batches.Add(batch);
        var position = 0;
        foreach (var (lotId, used) in uses)
        {
            var lot = await db.Lots.Include(l => l.Material).Include(l => l.Balance).SingleAsync(l => l.Id == lotId);
            var milligrams = Mass.FromGrams(used).Milligrams;
            var line = new BatchLine
            {
                BatchId = batch.Id, Position = ++position, MaterialId = lot.MaterialId, MaterialName = lot.Material!.Name, Fraction = used / grams,
                PlannedMilligrams = milligrams, TargetMilligrams = milligrams, DoneAt = now,
            };
            var weighing = new Weighing
            {
                BatchId = batch.Id, BatchLineId = line.Id, LotId = lotId, NetMilligrams = milligrams, UnitCost = lot.UnitCost, At = now,
                PersonId = studio.Bo.PersonId, RequestId = Guid.CreateVersion7(),
            };
            lot.Balance!.OnHand -= milligrams;
            db.AddRange(line, weighing, new Movement
            {
                LotId = lotId, Kind = MovementKind.Use, Change = -milligrams, OnHandAfter = lot.Balance.OnHand, UnitCost = lot.UnitCost, BatchId = batch.Id,
                WeighingId = weighing.Id, PersonId = studio.Bo.PersonId, At = now, RequestId = Guid.CreateVersion7(),
            });
        }

        await db.SaveChangesAsync();
        return batch.Id;
    }
}
