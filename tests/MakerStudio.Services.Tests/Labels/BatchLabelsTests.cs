using MakerStudio.Core.Labels;
using MakerStudio.Services.Labels;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services.Tests.Labels;

public class BatchLabelsTests
{
    [Fact]
    public async Task Find_NothingConfirmed_IsBlockedAndShowsTheDraft()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();

        var label = await FindAsync(studio);
        Assert.Equal("No label is confirmed for Fig v1 in 100 mL.", label.Block!.Fact);
        Assert.StartsWith("/library/", label.Block.Href, StringComparison.Ordinal);
        Assert.Equal("RS-1", label.Facts!.Batch!.Code);
        Assert.Equal(48, label.Units);
    }

    [Fact]
    public async Task Find_LabelOfAnotherVersion_IsBlockedAndCannotPrint()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.LabelledBatchAsync();
        await studio.ConfirmFigAsync();
        var second = await studio.SecondVersionAsync();
        await using (var db = studio.Db())
        {
            await db.Batches.Where(b => b.Id == batch).ExecuteUpdateAsync(set => set.SetProperty(b => b.FormulaVersionId, second).SetProperty(b => b.VersionNumber, 2));
        }

        var label = await FindAsync(studio);
        Assert.Equal("Label and formula version differ: v1 label, batch of v2.", label.Block!.Fact);
        var refused = await studio.Get<BatchLabels>().PrintAsync(studio.Ana, Printing(batch));
        Assert.Equal("Label and formula version differ: v1 label, batch of v2.", Assert.IsType<LabelBlocked>(refused.Refusal).Happened);
        await using var look = studio.Db();
        Assert.Empty(await look.LabelPrints.ToListAsync());
    }

    [Fact]
    public async Task Find_SheetChangedSinceConfirming_WarnsAndKeepsWhatWasConfirmed()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        await studio.ConfirmFigAsync();
        await studio.ReplaceSheetAsync("DPG", "Eye Dam. 1 H318");

        var label = await FindAsync(studio);
        Assert.Null(label.Block);
        Assert.Contains(label.Changed, each => each.Contains("H318", StringComparison.Ordinal) && each.EndsWith("is new", StringComparison.Ordinal));
        Assert.DoesNotContain(label.Facts!.Hazards.Statements, each => each.Code == "H318");
    }

    [Fact]
    public async Task Print_SameRequestTwice_IsRecordedOnce()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.LabelledBatchAsync();
        await studio.ConfirmFigAsync();
        var labels = studio.Get<BatchLabels>();
        var request = Printing(batch) with { Count = 46, FirstPlace = 9, OffsetDown = -0.5m, BestBefore = new DateOnly(2027, 10, 31) };

        var first = (await labels.PrintAsync(studio.Bo, request)).Expect();
        Assert.Equal(first, (await labels.PrintAsync(studio.Bo, request)).Expect());
        Assert.Equal(6, first.Pages);
        var row = Assert.Single((await FindAsync(studio)).Prints);
        Assert.Equal((first.PrintId, 46, 9, "Bo"), (row.Id, row.Count, row.FirstPlace, row.Initials));

        // The next print starts from this one's date and printer offset.
        var next = await FindAsync(studio);
        Assert.Equal(new DateOnly(2027, 10, 31), next.Facts!.Batch!.BestBefore);
        Assert.Equal(-0.5m, next.Stock!.OffsetDown);
        await using var db = studio.Db();
        Assert.Contains(await db.Acts.ToListAsync(), act => act.What == "Printed 46 labels of RS-1" && act.SubjectId == batch);
    }

    [Fact]
    public async Task Print_Recorded_CannotBeChangedByAnyRole()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.LabelledBatchAsync();
        await studio.ConfirmFigAsync();
        (await studio.Get<BatchLabels>().PrintAsync(studio.Ana, Printing(batch))).Expect();

        await using var owner = new NpgsqlConnection(studio.OwnerConnectionString);
        await owner.OpenAsync();
        await using var update = new NpgsqlCommand("update label_prints set count = 1", owner);
        Assert.Equal(PostgresErrorCodes.RestrictViolation, (await Assert.ThrowsAsync<PostgresException>(() => update.ExecuteNonQueryAsync())).SqlState);
        await using var app = studio.Db();
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, (await Assert.ThrowsAsync<PostgresException>(() => app.LabelPrints.ExecuteDeleteAsync())).SqlState);
    }

    [Fact]
    public async Task Print_APlaceTheSheetDoesNotHave_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.LabelledBatchAsync();
        await studio.ConfirmFigAsync();
        var refused = await studio.Get<BatchLabels>().PrintAsync(studio.Ana, Printing(batch) with { FirstPlace = 10 });
        Assert.Contains("has 9 places", Assert.IsType<LabelBlocked>(refused.Refusal).Happened, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 1, 0)]
    [InlineData(2001, 1, 0)]
    [InlineData(9, 0, 0)]
    [InlineData(9, 1, 21)]
    public async Task Print_NumbersOutOfRange_AreRefusedForShape(int count, int first, int across)
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.LabelledBatchAsync();
        Assert.IsType<NotAcceptable>((await studio.Get<BatchLabels>().PrintAsync(studio.Ana, Printing(batch) with { Count = count, FirstPlace = first, OffsetAcross = across })).Refusal);
    }

    [Fact]
    public async Task Print_AFrozenPrint_StaysAsItWasWhenTheStudioMoves()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.LabelledBatchAsync();
        await studio.ConfirmFigAsync();
        var print = (await studio.Get<BatchLabels>().PrintAsync(studio.Ana, Printing(batch))).Expect();
        await using (var db = studio.Db())
        {
            (await db.Studio.SingleAsync()).Address = "9 Elsewhere";
            await db.SaveChangesAsync();
        }

        Assert.Contains("QuinceYard", PrintedLabel.TextOf((await studio.Get<BatchLabels>().FileAsync(print.PrintId))!.Content), StringComparison.Ordinal);
        Assert.Contains("the maker's name, address or telephone", (await FindAsync(studio)).Changed);
    }

    internal static PrintLabels Printing(Guid batch) => new() { BatchId = batch, Count = 9, StudioAddress = SeedLabels.Address };

    private static async Task<BatchLabel> FindAsync(TestStudio studio) => (await studio.Get<BatchLabels>().FindAsync("RS-1", SeedLabels.Address))!;
}
