using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory.Bench;

/// <summary>Fig v3 of the worked examples on the bench: fragrance 12 %, DPG 5 %, ethanol 83 %, with lots P-1, D-1 and E-3.</summary>
internal sealed class BenchScene : IAsyncDisposable
{
    private BenchScene(TestStudio studio) => Studio = studio;

    public TestStudio Studio { get; }
    public Batches Batches => Studio.Get<Batches>();
    public WeighSheets Sheets => Studio.Get<WeighSheets>();
    public Guid Fragrance { get; private set; }
    public Guid Dpg { get; private set; }
    public Guid Ethanol { get; private set; }
    public Guid P1 { get; private set; }
    public Guid D1 { get; private set; }
    public Guid E3 { get; private set; }
    public Guid FigV1 { get; private set; }

    public static async Task<BenchScene> NewAsync(decimal fragranceGrams = 2_000m, decimal dpgGrams = 1_000m, decimal ethanolGrams = 20_000m)
    {
        var scene = new BenchScene(await TestStudio.NewAsync());
        var studio = scene.Studio;
        scene.Fragrance = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        scene.Dpg = await studio.MaterialAsync("DPG", MaterialKind.Fixative, density: 1.02m);
        scene.Ethanol = await studio.MaterialAsync("Ethanol 99.5 % vol", MaterialKind.Solvent, density: 0.79m);
        scene.P1 = await studio.LotAsync(scene.Fragrance, "P-1", fragranceGrams, 0.067374m, opened: new DateOnly(2026, 10, 1));
        scene.D1 = await studio.LotAsync(scene.Dpg, "D-1", dpgGrams, 0.0112m, opened: new DateOnly(2026, 10, 1));
        scene.E3 = await studio.LotAsync(scene.Ethanol, "E-3", ethanolGrams, 0.008644m, opened: new DateOnly(2026, 10, 1));
        scene.FigV1 = await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (scene.Fragrance, 12m), (scene.Dpg, 5m), (scene.Ethanol, 83m));
        return scene;
    }

    /// <summary>A batch of Fig being weighed by this person.</summary>
    public async Task<WeighSheet> WeighingAsync(Actor? by = null, decimal grams = 4_000m, Guid? version = null)
    {
        var actor = by ?? Studio.Bo;
        var planned = (await Batches.PlanAsync(actor, new PlanBatch
        {
            FormulaVersionId = version ?? FigV1, TargetMilligrams = Mg(grams), ScaleId = TestStudio.ScaleId,
        })).Expect();
        (await Batches.StartWeighingAsync(actor, new StartWeighing { BatchId = planned.BatchId })).Expect();
        return (await Sheets.SheetAsync(planned.Code))!;
    }

    public Task<WeighSheet?> AgainAsync(WeighSheet sheet) => Sheets.SheetAsync(sheet.Code);

    /// <summary>A reading on the line of a material; the caller may set answers on it.</summary>
    public static RecordWeighing Reading(WeighSheet sheet, Guid material, Guid? lot, decimal grams) => new()
    {
        BatchId = sheet.BatchId, LineId = sheet.Lines.Single(l => l.MaterialId == material).LineId, LotId = lot, NetMilligrams = Mg(grams),
    };

    public Task<Outcome<Recorded>> WeighAsync(WeighSheet sheet, Guid material, Guid lot, decimal grams, Actor? by = null) =>
        Sheets.RecordAsync(by ?? Studio.Bo, Reading(sheet, material, lot, grams));

    /// <summary>All three lines on target.</summary>
    public async Task WeighAllAsync(WeighSheet sheet)
    {
        foreach (var (material, lot) in new[] { (Fragrance, P1), (Dpg, D1), (Ethanol, E3) })
        {
            var target = sheet.Lines.Single(l => l.MaterialId == material).TargetMilligrams;
            (await WeighAsync(sheet, material, lot, Mass.FromMilligrams(target).Grams)).Expect();
        }
    }

    /// <summary>Milligrams on hand.</summary>
    public async Task<long> OnHandAsync(Guid lot)
    {
        await using var db = Studio.Db();
        return db.LotBalances.Single(b => b.LotId == lot).OnHand;
    }

    public static long Mg(decimal grams) => Mass.FromGrams(grams).Milligrams;

    public ValueTask DisposeAsync() => Studio.DisposeAsync();
}
