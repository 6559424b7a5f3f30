using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Inventory.Bench.BenchScene;

namespace MakerStudio.Services.Tests.Inventory.Bench;

public class PlanBatchTests
{
    /// <summary>Trade scenario S1: 48 × 82.0 ÷ 0.985 = 3,996, rounded up to 4,000 g.</summary>
    [Fact]
    public async Task Plan_FortyEightBottles_RoundsUpAndSplitsExactly()
    {
        await using var scene = await NewAsync();
        var (size, bottle) = await SizeAsync(scene, bottlesOnHand: 500);

        var planned = (await scene.Batches.PlanAsync(scene.Studio.Ana, new PlanBatch
        {
            FormulaVersionId = scene.FigV1, FormulaSizeId = size, PlannedUnits = 48,
        })).Expect();

        Assert.Equal("RS-1", planned.Code);
        Assert.Empty(planned.Shortages);
        var plan = (await scene.Batches.PlanOfAsync("RS-1"))!;
        Assert.Equal(Mg(4_000m), plan.TargetMilligrams);
        Assert.Equal([Mg(480m), Mg(200m), Mg(3_320m)], plan.Lines.Select(l => l.TargetMilligrams));
        Assert.Equal(Mg(82.0m), plan.FillMilligrams);
        Assert.Equal(bottle, Assert.Single(plan.Parts).MaterialId);
        Assert.Equal("Scale 2", plan.ScaleName);
    }

    [Fact]
    public async Task Plan_UnreleasedVersion_IsRefused()
    {
        await using var scene = await NewAsync();
        Guid draft;
        await using (var db = scene.Studio.Db())
        {
            var released = await db.FormulaVersions.SingleAsync();
            var version = new FormulaVersion
            {
                FormulaId = released.FormulaId, Number = 2, CureMinHours = 48, CureIdealHours = 336, CreatedById = scene.Studio.Ana.PersonId,
                CreatedAt = TestStudio.Monday, KeptAt = TestStudio.Monday,
            };
            db.FormulaVersions.Add(version);
            await db.SaveChangesAsync();
            draft = version.Id;
        }

        var outcome = await scene.Batches.PlanAsync(scene.Studio.Ana, new PlanBatch { FormulaVersionId = draft, TargetMilligrams = Mg(100m) });

        Assert.IsType<NotReleasedYet>(outcome.Refusal);
        Assert.Empty(await scene.Batches.OnTheBenchAsync());
    }

    /// <summary>Trade scenario S4, the variant: Ana reserved first, Bo is told before he weighs.</summary>
    [Fact]
    public async Task Plan_LotReservedByThePartner_WarnsTheSecondOnly()
    {
        await using var scene = await NewAsync(dpgGrams: 200m);
        var ana = (await scene.Batches.PlanAsync(scene.Studio.Ana, new PlanBatch { FormulaVersionId = scene.FigV1, TargetMilligrams = Mg(3_600m) })).Expect();
        scene.Studio.Clock.Advance(TimeSpan.FromMinutes(1));
        var bo = (await scene.Batches.PlanAsync(scene.Studio.Bo, new PlanBatch { FormulaVersionId = scene.FigV1, TargetMilligrams = Mg(3_000m) })).Expect();

        Assert.Empty(ana.Shortages);
        var shortage = Assert.Single(bo.Shortages);
        Assert.Equal(Mg(130m), shortage.ShortBy);
        Assert.Equal([ana.Code], shortage.ReservedBy);
        Assert.Equal("DPG is short 130.0 g: needs 150.0 g, 200.0 g usable, 180.0 g of it reserved before by RS-1.", shortage.ToString());
        (await scene.Batches.StartWeighingAsync(scene.Studio.Bo, new StartWeighing { BatchId = bo.BatchId })).Expect();
        var line = (await scene.Sheets.SheetAsync(bo.Code))!.Lines.Single(l => l.MaterialId == scene.Dpg);
        Assert.Equal((Mg(130m), Mg(180m)), (line.ShortBy, line.ReservedBefore));
        Assert.Empty((await scene.Batches.PlanOfAsync(ana.Code))!.Shortages);
    }

    [Fact]
    public async Task Plan_OnlyQuarantinedAndExpiredLots_CountsNoneOfThem()
    {
        await using var scene = await NewAsync(dpgGrams: 50m);
        await scene.Studio.LotAsync(scene.Dpg, "D-2", 500m, 0.01m, status: LotStatus.Quarantine);
        await scene.Studio.LotAsync(scene.Dpg, "D-3", 500m, 0.01m, retest: new DateOnly(2026, 10, 25));

        var planned = (await scene.Batches.PlanAsync(scene.Studio.Ana, new PlanBatch { FormulaVersionId = scene.FigV1, TargetMilligrams = Mg(4_000m) })).Expect();

        Assert.Equal((Mg(50m), Mg(150m)), (Assert.Single(planned.Shortages).Usable, planned.Shortages[0].ShortBy));
    }

    [Fact]
    public async Task ChangeTarget_WhilePlanned_SplitsAgainAndLaterIsRefused()
    {
        await using var scene = await NewAsync();
        var planned = (await scene.Batches.PlanAsync(scene.Studio.Ana, new PlanBatch { FormulaVersionId = scene.FigV1, TargetMilligrams = Mg(4_000m) })).Expect();

        (await scene.Batches.ChangeTargetAsync(scene.Studio.Ana, new ChangeTarget { BatchId = planned.BatchId, TargetMilligrams = 1_000_001 })).Expect();
        var lines = (await scene.Batches.PlanOfAsync(planned.Code))!.Lines;
        Assert.Equal(1_000_001, lines.Sum(l => l.TargetMilligrams));
        Assert.Equal(1_000_001, lines.Sum(l => l.PlannedMilligrams));

        (await scene.Batches.StartWeighingAsync(scene.Studio.Ana, new StartWeighing { BatchId = planned.BatchId })).Expect();
        var late = await scene.Batches.ChangeTargetAsync(scene.Studio.Ana, new ChangeTarget { BatchId = planned.BatchId, TargetMilligrams = Mg(500m) });
        Assert.IsType<NotNow>(late.Refusal);
    }

    [Fact]
    public async Task Discard_HalfWeighed_KeepsTheUseAndFreesTheRest()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();

        Assert.IsType<NotAcceptable>((await scene.Batches.DiscardAsync(scene.Studio.Bo, new DiscardBatch { BatchId = sheet.BatchId })).Refusal);
        (await scene.Batches.DiscardAsync(scene.Studio.Bo, new DiscardBatch { BatchId = sheet.BatchId, Reason = "Jar fell over" })).Expect();

        Assert.Equal(Mg(1_520m), await scene.OnHandAsync(scene.P1));
        await using var db = scene.Studio.Db();
        Assert.Empty(await Outstanding.OfAsync(db));
        Assert.IsType<NotWeighing>((await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 200m)).Refusal);
    }

    [Fact]
    public async Task TakeOver_ByThePartner_MovesTheRightToRecord()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync(scene.Studio.Ana);

        var refused = await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m, scene.Studio.Bo);
        Assert.Equal("Ana", Assert.IsType<WeighedByPartner>(refused.Refusal).Partner);
        (await scene.Batches.TakeOverAsync(scene.Studio.Bo, new TakeOver { BatchId = sheet.BatchId })).Expect();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m, scene.Studio.Bo)).Expect();
        Assert.IsType<WeighedByPartner>((await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 200m, scene.Studio.Ana)).Refusal);
    }

    private static async Task<(Guid Size, Guid Bottle)> SizeAsync(BenchScene scene, decimal bottlesOnHand)
    {
        var bottle = await scene.Studio.MaterialAsync("Bottle 100 mL", MaterialKind.Bottle, StockUnit.Each);
        await scene.Studio.LotAsync(bottle, "B-1", bottlesOnHand, 0.8648m);
        await using var db = scene.Studio.Db();
        var size = new FormulaSize { FormulaId = (await db.Formulas.SingleAsync()).Id, Name = "100 mL", NominalMillilitres = 100m, OverfillMilligrams = 500 };
        size.Parts.Add(new FormulaSizePart { MaterialId = bottle, CountPerUnit = 1 });
        db.FormulaSizes.Add(size);
        await db.SaveChangesAsync();
        return (size.Id, bottle);
    }
}
