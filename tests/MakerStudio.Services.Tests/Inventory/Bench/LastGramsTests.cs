using MakerStudio.Core.Materials;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Inventory.Bench.BenchScene;

namespace MakerStudio.Services.Tests.Inventory.Bench;

/// <summary>Trade scenario S4: one lot with 200.0 g, Ana needs 180, Bo 150, both at once.</summary>
public class LastGramsTests
{
    private const int Tries = 200;

    [Fact]
    public async Task Record_TwoPeopleOnTheLastGrams_ExactlyOneWinsEachTime()
    {
        await using var scene = await NewAsync();
        var only = await scene.Studio.ReleasedFormulaAsync("Plain", "sachet", (scene.Dpg, 100m));
        var (anaWon, boWon) = (0, 0);
        for (var n = 0; n < Tries; n++)
        {
            var lot = await scene.Studio.LotAsync(scene.Dpg, $"R-{n}", 200m, 0.0112m, opened: new DateOnly(2026, 10, 1));
            var ana = await scene.WeighingAsync(scene.Studio.Ana, 180m, only);
            var bo = await scene.WeighingAsync(scene.Studio.Bo, 150m, only);
            using var gun = new Barrier(2);
            Task<Outcome<Recorded>> Race(Actor who, WeighSheet sheet, decimal grams) => Task.Run(() =>
            {
                gun.SignalAndWait();
                return scene.WeighAsync(sheet, scene.Dpg, lot, grams, who);
            });

            var outcomes = await Task.WhenAll(Race(scene.Studio.Ana, ana, 180m), Race(scene.Studio.Bo, bo, 150m));

            var loser = Assert.IsType<LotShort>(Assert.Single(outcomes, o => o is Refused<Recorded>).Refusal);
            var anaWins = outcomes[0] is Done<Recorded>;
            (anaWon, boWon) = anaWins ? (anaWon + 1, boWon) : (anaWon, boWon + 1);
            Assert.Contains("short 130.0 g", loser.Happened);
            Assert.Equal(anaWins ? Mg(20m) : Mg(50m), loser.OnHandMilligrams);
            Assert.Equal(loser.OnHandMilligrams, await scene.OnHandAsync(lot));
            var losing = (await scene.AgainAsync(anaWins ? bo : ana))!;
            Assert.Equal((BatchState.Weighing, 0L), (losing.State, losing.RecordedMilligrams));
            (await scene.Batches.DiscardAsync(scene.Studio.Ana, new DiscardBatch { BatchId = losing.BatchId, Reason = "Next try" })).Expect();
        }

        Assert.Equal(Tries, anaWon + boWon);
        Assert.Empty(await scene.Studio.DifferencesAsync());
    }

    [Fact]
    public async Task Record_Short_OffersAnotherLotASmallerBatchAndReceiptToFollow()
    {
        await using var scene = await NewAsync(dpgGrams: 150m);
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 300m)).Expect();
        var reading = Reading(sheet, scene.Dpg, scene.D1, 200m) with { OutOfOrder = true, Reason = "Fragrance comes later" };

        var alone = Assert.IsType<LotShort>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading)).Refusal);

        Assert.Equal(["smaller", "receipt-to-follow"], alone.Answers.Select(a => a.Key));
        Assert.Equal(Mg(3_000m), alone.SmallerTotal);
        await scene.Studio.LotAsync(scene.Dpg, "D-2", 900m, 0.011m);
        var withAnother = Assert.IsType<LotShort>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading)).Refusal);
        Assert.Equal("D-2", Assert.Single(withAnother.OtherLots).Code);
        Assert.Null(withAnother.SmallerTotal);
    }

    [Fact]
    public async Task MakeSmaller_LotIsShort_EveryLineStaysExact()
    {
        await using var scene = await NewAsync(dpgGrams: 150m);
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 300m)).Expect();

        (await scene.Sheets.MakeSmallerAsync(scene.Studio.Bo, new MakeSmaller { BatchId = sheet.BatchId, TotalMilligrams = Mg(3_000m) })).Expect();

        var after = (await scene.AgainAsync(sheet))!;
        Assert.Equal([Mg(360m), Mg(150m), Mg(2_490m)], after.Lines.Select(l => l.TargetMilligrams));
        Assert.Equal(Mg(60m), after.Current!.RemainingMilligrams);
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 60m)).Expect();
        (await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 150m)).Expect();
    }

    [Fact]
    public async Task MakeSmaller_LineHoldsTooMuch_IsRefusedAndKeepsTheTargets()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();

        var outcome = await scene.Sheets.MakeSmallerAsync(scene.Studio.Bo, new MakeSmaller { BatchId = sheet.BatchId, TotalMilligrams = Mg(3_000m) });

        Assert.Equal((Mg(480m), Mg(360m)), (Assert.IsType<AlreadyIn>(outcome.Refusal).RecordedMilligrams, ((AlreadyIn)outcome.Refusal!).NewTargetMilligrams));
        Assert.Equal(Mg(4_000m), (await scene.AgainAsync(sheet))!.TargetMilligrams);
    }

    /// <summary>Trade scenario S10, first half: 120 g here, 300 g used.</summary>
    [Fact]
    public async Task Record_ReceiptToFollow_TakesTheLotAndWaitsForTheRest()
    {
        await using var scene = await NewAsync(fragranceGrams: 120m);
        var sheet = await scene.WeighingAsync(grams: 2_500m);
        var reading = Reading(sheet, scene.Fragrance, scene.P1, 300m);
        Assert.IsType<LotShort>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading)).Refusal);
        Assert.IsType<NotAcceptable>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading with { ReceiptToFollow = true })).Refusal);

        var recorded = (await scene.Sheets.RecordAsync(scene.Studio.Bo, reading with { ReceiptToFollow = true, Reason = "Delivery is in the car" })).Expect();

        Assert.Equal((true, Mg(300m)), (recorded.LineDone, recorded.LineMilligrams));
        Assert.Equal(0, await scene.OnHandAsync(scene.P1));
        await using var db = scene.Studio.Db();
        var pending = await db.PendingReceipts.SingleAsync();
        Assert.Equal((Mg(180m), 0.067374m, "Delivery is in the car"), (pending.Milligrams, pending.EstimatedUnitCost, pending.Reason));
        Assert.Null((await db.Weighings.SingleAsync(w => w.Id == pending.WeighingId)).LotId);
        Assert.Empty(await scene.Studio.DifferencesAsync());

        (await scene.Sheets.ReverseAsync(scene.Studio.Bo, new ReverseWeighing { BatchId = sheet.BatchId, WeighingId = pending.WeighingId, Reason = "It was not" })).Expect();
        Assert.False(await db.PendingReceipts.AnyAsync());
        Assert.Equal(Mg(180m), (await scene.AgainAsync(sheet))!.Current!.RemainingMilligrams);
    }

    [Fact]
    public async Task Record_ReceiptToFollowWithNoCostKnown_AsksForAnEstimate()
    {
        await using var scene = await NewAsync();
        var resin = await scene.Studio.MaterialAsync("Benzoin resin", MaterialKind.Fixative);
        var version = await scene.Studio.ReleasedFormulaAsync("Benzoin", "sachet", (resin, 100m));
        var sheet = await scene.WeighingAsync(grams: 50m, version: version);
        var reading = Reading(sheet, resin, null, 50m) with { ReceiptToFollow = true, Reason = "Bought at the market" };

        Assert.IsType<Because>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading)).Refusal);
        Assert.True((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading with { EstimatedUnitCost = 0.05m })).Expect().LineDone);
    }
}
