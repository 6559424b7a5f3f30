using MakerStudio.Core.Materials;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Inventory.Bench.BenchScene;

namespace MakerStudio.Services.Tests.Inventory.Bench;

public class LastAdditionTests
{
    /// <summary>Trade scenario S7: 9 of 11 weighings recorded, then pressed twice at once when all are in.</summary>
    [Fact]
    public async Task Confirm_NineOfElevenThenTwiceAtOnce_IsWholeOrNothingAndPostsOnce()
    {
        await using var scene = await NewAsync();
        var lines = new List<(Guid Material, Guid Lot)>();
        for (var n = 1; n <= 11; n++)
        {
            var material = await scene.Studio.MaterialAsync($"Accord part {n}", MaterialKind.FragranceOil);
            lines.Add((material, await scene.Studio.LotAsync(material, $"P-1{n:00}", 1_000m, 0.05m, opened: new DateOnly(2026, 10, 1))));
        }

        var version = await scene.Studio.ReleasedFormulaAsync("Orchard", "pre-blend", [.. lines.Select((l, n) => (l.Material, n == 0 ? 50m : 5m))]);
        var sheet = await scene.WeighingAsync(grams: 1_000m, version: version);
        foreach (var (material, lot) in lines.Take(9))
        {
            (await scene.WeighAsync(sheet, material, lot, sheet.Lines.Single(l => l.MaterialId == material).TargetMilligrams / 1000m)).Expect();
        }

        var confirm = new ConfirmLastAddition { BatchId = sheet.BatchId, StirredConfirmed = true };
        var early = Assert.IsType<LinesOpen>((await scene.Sheets.ConfirmLastAdditionAsync(scene.Studio.Bo, confirm)).Refusal);
        Assert.Equal(["Accord part 10", "Accord part 11"], early.Lines.Select(l => l.MaterialName));
        var open = (await scene.AgainAsync(sheet))!;
        Assert.Equal((BatchState.Weighing, 9), (open.State, open.Lines.Count(l => l.IsDone)));

        foreach (var (material, lot) in lines.Skip(9))
        {
            (await scene.WeighAsync(sheet, material, lot, 50m)).Expect();
        }

        var pressed = await Task.WhenAll(
            Task.Run(() => scene.Sheets.ConfirmLastAdditionAsync(scene.Studio.Bo, confirm)),
            Task.Run(() => scene.Sheets.ConfirmLastAdditionAsync(scene.Studio.Bo, confirm)),
            Task.Run(() => scene.Sheets.ConfirmLastAdditionAsync(scene.Studio.Ana, confirm with { RequestId = Guid.CreateVersion7() })));

        Assert.InRange(pressed.Count(o => o is Done<ClockStarted>), 1, 2);
        Assert.All(pressed.Where(o => o.Refusal is not null), o => Assert.IsType<ClockRuns>(o.Refusal));
        await using var db = scene.Studio.Db();
        Assert.Equal(1, await db.Acts.CountAsync(a => a.Command == nameof(ConfirmLastAddition)));
        Assert.Equal(BatchState.Resting, (await db.Batches.SingleAsync()).State);
        Assert.Empty(await scene.Studio.DifferencesAsync());
    }

    [Fact]
    public async Task Confirm_AllIn_StartsTheClockNow()
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        await scene.WeighAllAsync(sheet);
        scene.Studio.Clock.Advance(TimeSpan.FromMinutes(7));
        var confirm = new ConfirmLastAddition { BatchId = sheet.BatchId, Place = "Cupboard", RoomCelsius = 18.5m };

        Assert.IsType<NotAcceptable>((await scene.Sheets.ConfirmLastAdditionAsync(scene.Studio.Bo, confirm)).Refusal);
        var started = (await scene.Sheets.ConfirmLastAdditionAsync(scene.Studio.Bo, confirm with { StirredConfirmed = true })).Expect();

        Assert.Equal(TestStudio.Monday.AddMinutes(7), started.At);
        Assert.Equal(TimeSpan.FromHours(48), started.DueAt - started.At);
        var resting = (await scene.AgainAsync(sheet))!;
        Assert.Equal((BatchState.Resting, "Cupboard", 18.5m), (resting.State, resting.Place, resting.RoomCelsius));
        Assert.IsType<NotWeighing>((await scene.WeighAsync(sheet, scene.Dpg, scene.D1, 10m)).Refusal);
        Assert.Empty(await scene.Studio.DifferencesAsync());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task AddLater_RestartsTheClockUnlessItIsKept(bool keep)
    {
        await using var scene = await NewAsync();
        var sheet = await scene.WeighingAsync();
        await scene.WeighAllAsync(sheet);
        (await scene.Sheets.ConfirmLastAdditionAsync(scene.Studio.Bo, new ConfirmLastAddition { BatchId = sheet.BatchId, StirredConfirmed = true })).Expect();
        scene.Studio.Clock.Advance(TimeSpan.FromHours(5));
        var later = new AddLater { BatchId = sheet.BatchId, LineId = sheet.Lines[1].LineId, LotId = scene.D1, NetMilligrams = Mg(2m), KeepClock = keep };

        Assert.IsType<NotAcceptable>((await scene.Sheets.AddLaterAsync(scene.Studio.Bo, later)).Refusal);
        var clock = (await scene.Sheets.AddLaterAsync(scene.Studio.Bo, later with { Reason = "Slight haze" })).Expect();

        Assert.Equal(TestStudio.Monday.AddHours(keep ? 0 : 5), clock.At);
        Assert.Equal(keep ? DeviationChoice.ClockKept : DeviationChoice.Accepted, (await scene.AgainAsync(sheet))!.Deviations.Single().Choice);
        Assert.Equal(Mg(798m), await scene.OnHandAsync(scene.D1));
    }
}
