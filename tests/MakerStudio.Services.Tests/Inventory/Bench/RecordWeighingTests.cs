using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Inventory.Bench.BenchScene;

namespace MakerStudio.Services.Tests.Inventory.Bench;

public class RecordWeighingTests
{
    [Fact]
    public async Task Record_InTolerance_UsesTheLotUpAtOnceAndMovesOn()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480.0m)).Expect();

        var recorded = (await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 199.6m)).Expect();

        Assert.True(recorded.LineDone);
        Assert.Equal(Mg(679.6m), recorded.TotalMilligrams);
        var again = (await scene.AgainAsync(sheet))!;
        Assert.Equal(scene.Ethanol, again.Current!.MaterialId);
        Assert.Equal("E-3", again.Current.Suggested!.Code);
        Assert.Equal("Bo", again.Lines[1].Weighings.Single().By);
        Assert.Equal(Mg(800.4m), await scene.OnHandAsync(scene.D1));
        await using var db = scene.Studio.Db();
        var use = await db.Movements.SingleAsync(m => m.LotId == scene.D1 && m.Kind == MovementKind.Use);
        Assert.Equal((-Mg(199.6m), sheet.BatchId, recorded.WeighingId), (use.Change, use.BatchId, use.WeighingId));
        Assert.Empty(await scene.Studio.DifferencesAsync());
    }

    [Fact]
    public async Task Record_FromAnUnopenedLot_OpensIt()
    {
        await using var scene = await NewAsync();
        var closed = await scene.Studio.LotAsync(scene.Fragrance, "P-9", 900m, 0.07m);
        var sheet = await scene.WeighingAsync();

        (await scene.WeighAsync(sheet, scene.Fragrance, closed, 480m)).Expect();

        await using var db = scene.Studio.Db();
        Assert.Equal(new DateOnly(2026, 10, 26), (await db.Lots.SingleAsync(l => l.Id == closed)).OpenedOn);
        Assert.Equal(LotEventKind.Opened, (await db.LotEvents.SingleAsync(e => e.LotId == closed)).Kind);
    }

    [Fact]
    public async Task Record_ThirtyTwoTimesAtOnce_HasOneEffect()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        var reading = Reading(sheet, scene.Fragrance, scene.P1, 480m);

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 32).Select(_ => Task.Run(() => scene.Sheets.RecordAsync(scene.Studio.Bo, reading))));

        Assert.Single(outcomes.Select(o => o.Expect().WeighingId).Distinct());
        Assert.Equal(Mg(1_520m), await scene.OnHandAsync(scene.P1));
        Assert.Equal(Mg(480m), (await scene.AgainAsync(sheet))!.RecordedMilligrams);
        Assert.Empty(await scene.Studio.DifferencesAsync());
    }

    /// <summary>Trade scenario S6.</summary>
    [Fact]
    public async Task Record_KilogramsTypedAsGrams_AsksAndSavesNothing()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();
        (await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 200m)).Expect();
        var reading = Reading(sheet, scene.Ethanol, scene.E3, 3.32m);

        var question = Assert.IsType<WrongMagnitude>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading)).Refusal);

        Assert.Equal("1,000 times below the target; did you mean 3.32 kg?", question.Happened);
        Assert.Equal(Mg(3_320m), question.SuggestedMilligrams);
        Assert.Equal(Mg(20_000m), await scene.OnHandAsync(scene.E3));
        Assert.Equal(Mg(680m), (await scene.AgainAsync(sheet))!.RecordedMilligrams);
        (await scene.Sheets.RecordAsync(scene.Studio.Bo, reading with { NetMilligrams = question.SuggestedMilligrams })).Expect();
        Assert.Equal(Mg(16_680m), await scene.OnHandAsync(scene.E3));
    }

    [Fact]
    public async Task Record_ItIsAsTyped_IsTakenAsTyped()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        var recorded = (await scene.Sheets.RecordAsync(scene.Studio.Bo, Reading(sheet, scene.Fragrance, scene.P1, 48m) with { AsTyped = true })).Expect();
        Assert.Equal((false, Mg(432m)), (recorded.LineDone, recorded.RemainingMilligrams));
    }

    [Fact]
    public async Task Record_TwoLotsForOneLine_IsDoneWhenTheSumIsInTolerance()
    {
        await using var scene = await NewAsync(fragranceGrams: 300m);
        var p2 = await scene.Studio.LotAsync(scene.Fragrance, "P-2", 5_000m, 0.0719m);
        var sheet = await scene.WeighingAsync();

        var first = (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 300m)).Expect();
        Assert.Equal((false, Mg(180m)), (first.LineDone, first.RemainingMilligrams));
        var line = (await scene.AgainAsync(sheet))!.Current!;
        Assert.Equal(("P-2", Mg(180m)), (line.Suggested!.Code, line.RemainingMilligrams));
        var second = (await scene.WeighAsync(sheet, scene.Fragrance, p2, 179.0m)).Expect();

        Assert.True(second.LineDone);
        Assert.Equal(Mg(479m), second.LineMilligrams);
    }

    [Fact]
    public async Task Record_LastOfALotTenTimesBelowTarget_IsNotQuestioned()
    {
        await using var scene = await NewAsync(fragranceGrams: 48m);
        var sheet = await scene.WeighingAsync();
        Assert.False((await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 48m)).Expect().LineDone);
    }

    [Fact]
    public async Task Record_AgainstTheOrderOfAddition_NeedsAReason()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        var reading = Reading(sheet, scene.Ethanol, scene.E3, 3_320m);

        Assert.Equal("Fig fragrance oil", Assert.IsType<OutOfOrder>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading)).Refusal).ComesFirst);
        Assert.IsType<NotAcceptable>((await scene.Sheets.RecordAsync(scene.Studio.Bo, reading with { OutOfOrder = true })).Refusal);
        (await scene.Sheets.RecordAsync(scene.Studio.Bo, reading with { OutOfOrder = true, Reason = "Carboy was in the way" })).Expect();

        var again = (await scene.AgainAsync(sheet))!;
        Assert.Equal("Ethanol 99.5 % vol added before Fig fragrance oil", Assert.Single(again.Deviations).What);
        Assert.Equal(scene.Fragrance, again.Current!.MaterialId);
    }

    [Fact]
    public async Task Record_GrossAndTare_TakesTheDifference()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        var reading = Reading(sheet, scene.Fragrance, scene.P1, 0m) with { GrossMilligrams = Mg(812.4m), TareMilligrams = Mg(332.4m) };

        Assert.Equal(Mg(480m), (await scene.Sheets.RecordAsync(scene.Studio.Bo, reading)).Expect().LineMilligrams);
        Assert.Equal(Mg(332.4m), (await scene.AgainAsync(sheet))!.Lines[0].Weighings[0].TareMilligrams);
        Assert.IsType<NotAcceptable>((await scene.Sheets.RecordAsync(scene.Studio.Bo, Reading(sheet, scene.Dpg, scene.D1, 0m) with
        {
            GrossMilligrams = Mg(100m), TareMilligrams = Mg(100m),
        })).Refusal);
    }

    [Fact]
    public async Task Record_OnADoneLine_IsRefused()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();
        Assert.Equal(Mg(480m), Assert.IsType<AlreadyConfirmed>((await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Refusal).RecordedMilligrams);
    }

    [Fact]
    public async Task Record_LotsThatMayNotBeUsed_SayWhy()
    {
        await using var scene = await NewAsync();
        var quarantined = await scene.Studio.LotAsync(scene.Fragrance, "P-3", 900m, 0.07m, status: LotStatus.Quarantine);
        var held = await scene.Studio.LotAsync(scene.Fragrance, "P-4", 900m, 0.07m, status: LotStatus.OnHold);
        var rejected = await scene.Studio.LotAsync(scene.Fragrance, "P-5", 900m, 0.07m, status: LotStatus.Rejected);
        var sheet = await scene.WeighingAsync();

        Assert.Equal("P-3 is in quarantine.", Assert.IsType<LotNotReleased>((await scene.WeighAsync(sheet, scene.Fragrance, quarantined, 480m)).Refusal).Happened);
        Assert.Equal("P-4 is on hold.", Assert.IsType<LotNotReleased>((await scene.WeighAsync(sheet, scene.Fragrance, held, 480m)).Refusal).Happened);
        Assert.Empty(Assert.IsType<LotRejected>((await scene.WeighAsync(sheet, scene.Fragrance, rejected, 480m)).Refusal).Answers);
        Assert.Equal("DPG", Assert.IsType<WrongMaterial>((await scene.WeighAsync(sheet, scene.Fragrance, scene.D1, 480m)).Refusal).Holds);
        Assert.Equal(0, (await scene.AgainAsync(sheet))!.RecordedMilligrams);
        var lots = sheet.Lines[0].Lots;
        Assert.Equal(["P-1", "P-3", "P-4", "P-5"], lots.Select(l => l.Code));
        Assert.Equal([null, "in quarantine", "on hold", "rejected"], lots.Select(l => l.WhyNot));
    }

    /// <summary>Trade scenario S5, as far as the sheet goes: refused with the date, allowed after a retest.</summary>
    [Fact]
    public async Task Record_RetestDateYesterday_IsRefusedWithTheDateUntilRetested()
    {
        await using var scene = await NewAsync();
        var old = await scene.Studio.LotAsync(scene.Fragrance, "P-6", 900m, 0.07m, retest: new DateOnly(2026, 10, 25));
        var sheet = await scene.WeighingAsync();
        Assert.Equal("P-1", sheet.Current!.Suggested!.Code);

        var expired = Assert.IsType<LotExpired>((await scene.WeighAsync(sheet, scene.Fragrance, old, 480m)).Refusal);

        Assert.Equal((new DateOnly(2026, 10, 25), ExpiryReason.Retest), (expired.On, expired.Reason));
        Assert.Contains("25 Oct 2026", expired.Happened);
        await using (var db = scene.Studio.Db())
        {
            await db.Lots.Where(l => l.Id == old).ExecuteUpdateAsync(s => s.SetProperty(l => l.RetestOn, new DateOnly(2027, 1, 24)));
        }

        (await scene.WeighAsync(sheet, scene.Fragrance, old, 480m)).Expect();
    }

    [Fact]
    public async Task Record_MaterialRenamedArchivedAndDensityChanged_ChangesNothingOnTheSheet()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        await using (var db = scene.Studio.Db())
        {
            await db.Materials.Where(m => m.Id == scene.Dpg).ExecuteUpdateAsync(s => s
                .SetProperty(m => m.Name, "Dipropylene glycol").SetProperty(m => m.Density, 1.5m).SetProperty(m => m.ArchivedAt, TestStudio.Monday));
        }

        var again = (await scene.AgainAsync(sheet))!;

        Assert.Equal(sheet.Lines.Select(l => (l.MaterialName, l.TargetMilligrams, l.ToleranceMilligrams)), again.Lines.Select(l => (l.MaterialName, l.TargetMilligrams, l.ToleranceMilligrams)));
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();
        (await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 200m)).Expect();
    }

    [Fact]
    public async Task Reverse_AWeighing_GivesItBackAndOpensTheLine()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        var first = (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();
        var reverse = new ReverseWeighing { BatchId = sheet.BatchId, WeighingId = first.WeighingId!.Value, Reason = "Wrong jar" };

        (await scene.Sheets.ReverseAsync(scene.Studio.Bo, reverse)).Expect();
        (await scene.Sheets.ReverseAsync(scene.Studio.Bo, reverse)).Expect();

        Assert.Equal(Mg(2_000m), await scene.OnHandAsync(scene.P1));
        var again = (await scene.AgainAsync(sheet))!;
        Assert.Equal((0, scene.Fragrance), (again.RecordedMilligrams, again.Current!.MaterialId));
        Assert.Equal("Wrong jar", again.Lines[0].Weighings.Single().ReversedReason);
        Assert.IsType<NotFound>((await scene.Sheets.ReverseAsync(scene.Studio.Bo, reverse with { RequestId = Guid.CreateVersion7() })).Refusal);
        Assert.Empty(await scene.Studio.DifferencesAsync());
    }

    [Fact]
    public async Task FinishUnder_WithAReason_ClosesTheLineAndIsNoted()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        var recorded = (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 467.7m)).Expect();
        Assert.Equal((false, Mg(12.3m)), (recorded.LineDone, recorded.RemainingMilligrams));
        var finish = new FinishUnder { BatchId = sheet.BatchId, LineId = recorded.LineId };

        Assert.IsType<NotAcceptable>((await scene.Sheets.FinishUnderAsync(scene.Studio.Bo, finish)).Refusal);
        Assert.True((await scene.Sheets.FinishUnderAsync(scene.Studio.Bo, finish with { Reason = "Jar is empty" })).Expect().LineDone);

        var deviation = Assert.Single((await scene.AgainAsync(sheet))!.Deviations);
        Assert.Equal(("Fig fragrance oil 467.7 g on a target of 480.0 g, 12.3 g under", "Jar is empty"), (deviation.What, deviation.Reason));
    }

    [Fact]
    public async Task Sheet_LotsOfEqualDate_SuggestsTheOpenOneFirst()
    {
        await using var scene = await NewAsync(fragranceGrams: 0.001m);
        var june = new DateOnly(2027, 6, 1);
        await scene.Studio.LotAsync(scene.Fragrance, "P-7", 900m, 0.07m, expires: june);
        await scene.Studio.LotAsync(scene.Fragrance, "P-8", 900m, 0.07m, expires: june, opened: new DateOnly(2026, 10, 2));
        await scene.Studio.LotAsync(scene.Fragrance, "P-9", 900m, 0.07m, expires: new DateOnly(2026, 12, 1));

        var sheet = await scene.WeighingAsync();

        Assert.Equal(["P-9", "P-8", "P-7", "P-1"], sheet.Lines[0].Lots.Select(l => l.Code));
        Assert.Equal("P-9", sheet.Lines[0].Suggested!.Code);
    }
}
