using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests.Inventory.Prices;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Filling;

/// <summary>Where the mass of a formula's batches went: the worked batch of 4,000 g with 3,936 in bottles, own examples.</summary>
public class YieldsTests
{
    [Fact]
    public async Task Yields_OfTheWorkedBatch_AddUpToWhatWasWeighed()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.FilledBatchAsync();

        var yields = (await studio.Get<BatchRecords>().YieldsAsync(await FormulaAsync(studio)))!;

        var row = Assert.Single(yields.Rows);
        Assert.Equal((4_000_000L, 3_936_000L, 4_000L, 60_000L, 0L), (row.WeighedMilligrams, row.KeptMilligrams, row.LeftMilligrams, row.NormalMilligrams, row.AbnormalMilligrams));
        Assert.Equal((0.984m, 0.984m), (row.Yield, yields.Mean));
    }

    [Fact]
    public async Task Yields_WithAnAccident_TellsItApartFromNormalLoss()
    {
        await using var scene = await PriceScene.NewAsync(filled: false);
        var fills = scene.Studio.Get<Fills>();
        (await fills.ExpenseLossAsync(scene.Studio.Bo, new ExpenseLoss { BatchId = scene.Batch, Grams = 200m, Reason = "Carboy tipped" })).Expect();
        (await fills.RecordAsync(scene.Studio.Bo, PriceScene.Fill(scene.Batch) with { ToFillingGrams = 3_780m, Filled = 46 })).Expect();

        var row = Assert.Single((await scene.Studio.Get<BatchRecords>().YieldsAsync(await FormulaAsync(scene.Studio)))!.Rows);

        Assert.Equal((3_772_000L, 8_000L, 200_000L, 20_000L), (row.KeptMilligrams, row.LeftMilligrams, row.AbnormalMilligrams, row.NormalMilligrams));
    }

    [Fact]
    public async Task Yields_NothingFilled_IsEmpty_AndNoFormulaIsNull()
    {
        await using var scene = await PriceScene.NewAsync(filled: false);

        var yields = (await scene.Studio.Get<BatchRecords>().YieldsAsync(await FormulaAsync(scene.Studio)))!;

        Assert.Equal((0, null), (yields.Rows.Count, yields.Mean));
        Assert.Null(await scene.Studio.Get<BatchRecords>().YieldsAsync(Guid.CreateVersion7()));
    }

    [Fact]
    public async Task Fill_WithBestBefore_SetsTheBatchs()
    {
        await using var scene = await PriceScene.NewAsync(filled: false);
        var fills = scene.Studio.Get<Fills>();
        var day = new DateOnly(2028, 10, 31);

        Assert.IsType<Because>((await fills.RecordAsync(scene.Studio.Bo, PriceScene.Fill(scene.Batch) with { BestBefore = new DateOnly(2026, 1, 1) })).Refusal);
        (await fills.RecordAsync(scene.Studio.Bo, PriceScene.Fill(scene.Batch) with { BestBefore = day })).Expect();

        Assert.All(await scene.Studio.Get<FinishedGoods>().OfBatchAsync("RS-1"), g => Assert.Equal(day, g.BestBefore));
    }

    private static async Task<Guid> FormulaAsync(TestStudio studio)
    {
        await using var db = studio.Db();
        return await db.Formulas.Select(f => f.Id).SingleAsync();
    }
}
