using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Tests.Inventory.Bench.BenchScene;

namespace MakerStudio.Services.Tests.Inventory.Bench;

/// <summary>Trade scenario S3: 206.0 g of DPG on a target of 200.0 ± 1.0.</summary>
public class OverToleranceTests
{
    [Fact]
    public async Task Record_Over_AsksWithBothConsequences()
    {
        await using var scene = await NewAsync();
        var (_, question) = await OverAsync(scene);

        Assert.Equal(0.03m, question.OverFraction);
        Assert.Equal("DPG is 6.0 g over, +3.0 %.", question.Happened);
        Assert.Equal(1.03m, question.Factor);
        Assert.Equal(Mg(14.4m), Assert.Single(question.TopUps).Milligrams);
        Assert.Equal(Mg(3_419.6m), Assert.Single(question.NewTargets).Milligrams);
        Assert.Equal(Mg(4_120m), question.NewTotalMilligrams);
        Assert.Equal(0.0514m, decimal.Round(question.AcceptedFraction, 4));
        Assert.True(question.StockAllows);
        Assert.Equal(
            "Add 14.4 g Fig fragrance oil, then Ethanol 99.5 % vol becomes 3,419.6 g. Total 4,120.0 g, formula exact. Stock allows it.",
            question.Answers[0].Text);
        Assert.Equal("DPG becomes 5.14 % instead of 5.00 % if the rest is on target. Needs a reason.", question.Answers[1].Text);
        Assert.Equal(Mg(1_000m), await scene.OnHandAsync(scene.D1));
    }

    [Fact]
    public async Task Record_CorrectByScaling_TopsUpFirstAndEndsExact()
    {
        await using var scene = await NewAsync();
        var (sheet, _) = await OverAsync(scene);

        (await scene.Sheets.RecordAsync(scene.Studio.Bo, Reading(sheet, scene.Dpg, scene.D1, 206m) with { Over = OverChoice.Correct })).Expect();

        var after = (await scene.AgainAsync(sheet))!;
        Assert.Equal(Mg(4_120m), after.TargetMilligrams);
        Assert.Equal((scene.Fragrance, Mg(14.4m), true), (after.Current!.MaterialId, after.Current.RemainingMilligrams, after.Current.IsTopUp));
        Assert.Equal(1.03m, Assert.Single(after.Deviations).Factor);
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 14.4m)).Expect();
        var last = (await scene.WeighAsync(sheet, scene.Ethanol, scene.E3, 3_419.6m)).Expect();
        Assert.Equal((Mg(4_120m), (Guid?)null), (last.TotalMilligrams, last.NextLineId));
        Assert.Empty(await scene.Studio.DifferencesAsync());
    }

    [Fact]
    public async Task Record_Accept_NeedsAReasonAndLeavesTheTargets()
    {
        await using var scene = await NewAsync();
        var (sheet, _) = await OverAsync(scene);
        var accept = Reading(sheet, scene.Dpg, scene.D1, 206m) with { Over = OverChoice.Accept };

        Assert.IsType<NotAcceptable>((await scene.Sheets.RecordAsync(scene.Studio.Bo, accept)).Refusal);
        Assert.True((await scene.Sheets.RecordAsync(scene.Studio.Bo, accept with { Reason = "Within what a nose can tell" })).Expect().LineDone);

        var after = (await scene.AgainAsync(sheet))!;
        Assert.Equal((Mg(4_000m), scene.Ethanol), (after.TargetMilligrams, after.Current!.MaterialId));
        var deviation = Assert.Single(after.Deviations);
        Assert.Equal((DeviationChoice.Accepted, "DPG 206.0 g on a target of 200.0 g"), (deviation.Choice, deviation.What));
    }

    [Fact]
    public async Task Record_Over_SaysWhenStockDoesNotAllowTheCorrection()
    {
        await using var scene = await NewAsync(ethanolGrams: 3_400m);
        var (_, question) = await OverAsync(scene);

        Assert.False(question.StockAllows);
        Assert.Equal("Ethanol 99.5 % vol would be short 19.6 g.", question.StockNote);
    }

    [Theory]
    [InlineData(201.0, true)]
    [InlineData(199.0, true)]
    [InlineData(201.1, false)]
    public async Task Record_AtTheEdge_IsInToleranceUpToHalfAPercent(double grams, bool isDone)
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();

        var outcome = await scene.WeighAsync(sheet, scene.Dpg, scene.D1, (decimal)grams);

        Assert.Equal(isDone, outcome is Done<Recorded> { Value.LineDone: true });
        Assert.Equal(!isDone, outcome.Refusal is OverTolerance);
    }

    private static async Task<(WeighSheet Sheet, OverTolerance Question)> OverAsync(BenchScene scene)
    {
        var sheet = await scene.WeighingAsync();
        (await scene.WeighAsync(sheet, scene.Fragrance, scene.P1, 480m)).Expect();
        var outcome = await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 206m);
        return (sheet, Assert.IsType<OverTolerance>(outcome.Refusal));
    }
}
