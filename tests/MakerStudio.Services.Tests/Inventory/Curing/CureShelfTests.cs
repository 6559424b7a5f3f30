using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Curing;

public class CureShelfTests
{
    /// <summary>Sat 24 Oct 2026, 20:00 in Berlin, the night before the clocks go back.</summary>
    private static readonly DateTimeOffset Saturday = new(2026, 10, 24, 18, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task Rows_FortyEightHoursAcrossTheClockChange_AreDueAtNineteenLocal()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();
        var berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

        studio.Clock.SetUtcNow(new DateTimeOffset(2026, 10, 26, 18, 59, 0, TimeSpan.FromHours(1)));
        var early = Assert.Single(await shelf.RowsAsync());
        Assert.Equal(CureState.Resting, early.State);
        Assert.Equal(new DateTime(2026, 10, 26, 19, 0, 0), TimeZoneInfo.ConvertTime(early.DueAt, berlin).DateTime);

        studio.Clock.SetUtcNow(new DateTimeOffset(2026, 10, 26, 19, 0, 0, TimeSpan.FromHours(1)));
        Assert.Equal(CureState.DueForCheck, Assert.Single(await shelf.RowsAsync()).State);
    }

    [Fact]
    public async Task Release_AMinuteEarly_NeedsAReasonThatTheRecordKeeps()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();
        studio.Clock.SetUtcNow(new DateTimeOffset(2026, 10, 26, 18, 59, 0, TimeSpan.FromHours(1)));

        var refused = await shelf.ReleaseAsync(studio.Bo, new ReleaseBatch { BatchId = batch });
        var why = Assert.IsType<NeedsReason>(refused.Refusal);
        Assert.Equal([ReadyObstacle.TimeNotReached, ReadyObstacle.NoPassedCheck], why.Obstacles);

        (await shelf.ReleaseAsync(studio.Bo, new ReleaseBatch { BatchId = batch, EarlyReason = "Order leaves tonight" })).Expect();
        var record = (await studio.Get<BatchRecords>().FindAsync("RS-2"))!;
        Assert.Equal(BatchState.Ready, record.State);
        Assert.Equal("Order leaves tonight", record.EarlyReason);
        Assert.Contains(record.Happened, h => h.What == "Released RS-2 early: Order leaves tonight" && h.Initials == "Bo");
    }

    [Fact]
    public async Task Check_PassedAfterTheMinimum_MakesItReadyAndSaysWho()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();
        studio.Clock.Advance(TimeSpan.FromHours(48));

        var state = (await shelf.RecordCheckAsync(studio.Ana, Passed(batch))).Expect().State;

        Assert.Equal(CureState.Ready, state);
        var row = Assert.Single(await shelf.RowsAsync());
        Assert.Equal("An", row.LastCheck!.Initials);
    }

    [Fact]
    public async Task Check_PassedBeforeTheMinimum_CountsOnlyWhenTheTimeIsReached()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();
        studio.Clock.Advance(TimeSpan.FromHours(47));

        Assert.Equal(CureState.Resting, (await shelf.RecordCheckAsync(studio.Ana, Passed(batch))).Expect().State);
        studio.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Equal(CureState.Ready, Assert.Single(await shelf.RowsAsync()).State);
    }

    [Fact]
    public async Task Check_Held_NeedsANoteAndStopsTheRelease()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();
        studio.Clock.Advance(TimeSpan.FromHours(50));
        var held = Passed(batch) with { Verdict = CheckVerdict.Hold, Clarity = Clarity.Haze };

        Assert.IsType<NotAcceptable>((await shelf.RecordCheckAsync(studio.Bo, held)).Refusal);
        Assert.Equal(CureState.OnHold, (await shelf.RecordCheckAsync(studio.Bo, held with { Note = "Haze at the neck" })).Expect().State);
        var why = Assert.IsType<NeedsReason>((await shelf.ReleaseAsync(studio.Bo, new ReleaseBatch { BatchId = batch })).Refusal);
        Assert.Contains(ReadyObstacle.OnHold, why.Obstacles);
    }

    [Fact]
    public async Task Check_FailedAfterReady_TakesReadinessAway()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();
        studio.Clock.Advance(TimeSpan.FromHours(48));
        (await shelf.RecordCheckAsync(studio.Ana, Passed(batch))).Expect();
        studio.Clock.Advance(TimeSpan.FromHours(1));

        (await shelf.RecordCheckAsync(studio.Bo, Passed(batch) with { Verdict = CheckVerdict.RestLonger })).Expect();

        await using var db = studio.Db();
        var stored = await db.Batches.SingleAsync();
        Assert.Equal(BatchState.Resting, stored.State);
        Assert.Null(stored.ReadyAt);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(6)]
    [InlineData(null)]
    public async Task Check_StrengthOutsideZeroToFive_IsNotAcceptable(int? strength)
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        Assert.IsType<NotAcceptable>((await studio.Get<CureShelf>().RecordCheckAsync(studio.Ana, Passed(batch) with { Strength = strength })).Refusal);
    }

    [Fact]
    public async Task Note_PlaceAndCold_StandWithTheBatchAndOnItsRecord()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();

        (await shelf.NoteAsync(studio.Bo, new NoteRest { BatchId = batch, Place = "cupboard 2", Celsius = 9m, Hours = 6m, Note = "door stood open" })).Expect();

        var detail = (await shelf.FindAsync("RS-2"))!;
        Assert.Equal("cupboard 2", detail.Place);
        Assert.Equal("RS-2 moved to cupboard 2; 9 °C for 6 h; door stood open", Assert.Single(detail.Notes).What);
        Assert.Contains((await studio.Get<BatchRecords>().FindAsync("RS-2"))!.Happened, h => h.What == detail.Notes[0].What && h.Initials == "Bo");
        Assert.IsType<Because>((await shelf.NoteAsync(studio.Bo, new NoteRest { BatchId = batch, Place = "cupboard 2" })).Refusal);
        Assert.IsType<NotAcceptable>((await shelf.NoteAsync(studio.Bo, new NoteRest { BatchId = batch, Hours = 6m })).Refusal);
    }

    [Fact]
    public async Task Rows_RestingSpray_IsToBeSwirledForThreeDaysAndNotOnceReady()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        var batch = await studio.RestingBatchAsync();
        var shelf = studio.Get<CureShelf>();
        studio.Clock.Advance(TimeSpan.FromHours(30));
        Assert.Equal(new MoveReminder("Swirl", new DateOnly(2026, 10, 26), 1), Assert.Single(await shelf.RowsAsync()).Reminder);

        studio.Clock.Advance(TimeSpan.FromHours(18));
        (await shelf.RecordCheckAsync(studio.Ana, Passed(batch))).Expect();
        Assert.Null(Assert.Single(await shelf.RowsAsync()).Reminder);
    }

    [Fact]
    public async Task Rows_ServerClockSetBack_ShowNoNegativeRest()
    {
        await using var studio = await TestStudio.NewAsync(Saturday);
        await studio.RestingBatchAsync(startedAt: Saturday.AddHours(1));
        var row = Assert.Single(await studio.Get<CureShelf>().RowsAsync());
        Assert.Equal(TimeSpan.Zero, row.Elapsed);
        Assert.Equal(CureState.Resting, row.State);
    }

    private static RecordCheck Passed(Guid batch) => new()
    {
        BatchId = batch, Strength = 4, Character = "rounder", Clarity = Clarity.Clear, Verdict = CheckVerdict.Passed,
    };
}
