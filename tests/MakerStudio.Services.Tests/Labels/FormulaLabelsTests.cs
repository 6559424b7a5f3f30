using MakerStudio.Core.Hazards;
using MakerStudio.Core.Labels;
using MakerStudio.Services.Labels;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Labels;

public class FormulaLabelsTests
{
    [Fact]
    public async Task Find_ReleasedVersion_SaysWhatTheSheetsSay()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();

        var label = await studio.FigLabelAsync();
        Assert.Equal((1, "100 mL"), (label.Chosen!.Number, label.Size!.Name));
        Assert.Equal("Danger", label.Facts!.Hazards.Signal);
        Assert.Equal([Pictogram.Ghs02, Pictogram.Ghs07], label.Facts.Hazards.Pictograms);
        Assert.Contains(label.Facts.Hazards.Statements, each => each.Code == "H225");
        Assert.Equal("60 × 80 mm, 9 on A4", label.Stocks.Single(s => s.Id == label.StockId).Name);
        Assert.Equal(["batch", "ufi"], LabelContent.Of(label.Facts).Missing.Select(each => each.Key));
    }

    [Fact]
    public async Task Confirm_EverythingThere_FreezesItUnderTheSignedInName()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        await studio.ConfirmFigAsync();

        var label = await studio.FigLabelAsync();
        Assert.Equal(("Ana", studio.Clock.GetUtcNow()), (label.ConfirmedBy, label.ConfirmedAt));
        Assert.Empty(label.Changed);
        Assert.Equal("N1QV-R02N-J00M-WQD5", label.Facts!.Ufi);
        await using var db = studio.Db();
        Assert.Contains(await db.Acts.ToListAsync(), act => act.What == "Confirmed the label of Fig v1, 100 mL" && act.PersonId == studio.Ana.PersonId);
    }

    [Fact]
    public async Task Confirm_SomethingMissing_IsRefusedByName()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        var labels = studio.Get<FormulaLabels>();
        var seen = await studio.FigLabelAsync();

        var refused = await labels.KeepAsync(studio.Ana, seen.Confirming() with { Ufi = null });
        Assert.Equal(["Poison-centre code (UFI)"], Assert.IsType<LabelIncomplete>(refused.Refusal).Missing);
        Assert.Null((await studio.FigLabelAsync()).ConfirmedBy);

        (await labels.KeepAsync(studio.Ana, seen.Confirming() with { Ufi = null, NeedsNoUfi = true, RequestId = Guid.CreateVersion7() })).Expect();
    }

    [Fact]
    public async Task Confirm_ASheetChangedSinceItWasLookedAt_IsRefused()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        var seen = await studio.FigLabelAsync();
        await studio.ReplaceSheetAsync("DPG", "Eye Dam. 1 H318");

        Assert.IsType<LabelChangedMeanwhile>((await studio.Get<FormulaLabels>().KeepAsync(studio.Ana, seen.Confirming())).Refusal);
    }

    [Fact]
    public async Task Confirm_LabelTooSmall_IsRefusedWithWhatToDo()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        (await studio.Get<LabelStocks>().AddAsync(studio.Ana, new AddLabelStock { Name = "Roll 40 × 30", Width = 40m, Height = 30m, OnSheets = false })).Expect();
        var seen = await studio.FigLabelAsync();
        var small = seen.Stocks.Single(s => s.Name == "Roll 40 × 30").Id;

        var refusal = Assert.IsType<LabelTooSmall>((await studio.Get<FormulaLabels>().KeepAsync(studio.Ana, seen.Confirming() with { StockId = small })).Refusal);
        Assert.Contains("the label has 30.0 mm", refusal.Happened, StringComparison.Ordinal);
        Assert.Contains("fold-out", refusal.ToDo, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keep_TwoPeopleAtOnce_TheSecondIsStaleAndLosesNothing()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        var labels = studio.Get<FormulaLabels>();
        var seen = await studio.FigLabelAsync();
        var words = seen.Confirming() with { Confirms = false, ProductLine = "room mist", OwnLines = "Shake it.\nRefill it." };
        (await labels.KeepAsync(studio.Ana, words)).Expect();

        Assert.IsType<Stale>((await labels.KeepAsync(studio.Bo, words with { RequestId = Guid.CreateVersion7(), ProductLine = "spray" })).Refusal);
        var kept = (await studio.FigLabelAsync()).Facts!.Wording;
        Assert.Equal("room mist", kept.ProductLine);
        Assert.Equal(["Shake it.", "Refill it."], kept.ExtraLines);
    }

    [Fact]
    public async Task Find_NewVersion_StartsFromTheWordsOfTheLastAndIsNotConfirmed()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        (await studio.Get<FormulaLabels>().KeepAsync(studio.Ana, (await studio.FigLabelAsync()).Confirming() with { ProductLine = "room mist" })).Expect();
        await studio.SecondVersionAsync();

        var second = await studio.FigLabelAsync();
        Assert.Equal(2, second.Chosen!.Number);
        Assert.Equal("room mist", second.Facts!.Wording.ProductLine);
        Assert.Null(second.Facts.Ufi);
        Assert.Null(second.ConfirmedBy);
        Assert.Equal("Ana", (await studio.FigLabelAsync(version: 1)).ConfirmedBy);
    }

    [Theory]
    [InlineData("N1QV-R02N-J00M-WQD6", "check character")]
    [InlineData("N1QV", "16 characters")]
    public async Task Keep_AUfiThatIsNone_IsRefusedInWords(string typed, string expected)
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.LabelledBatchAsync();
        var refused = await studio.Get<FormulaLabels>().KeepAsync(studio.Ana, (await studio.FigLabelAsync()).Confirming() with { Ufi = typed });
        Assert.Contains(expected, Assert.IsType<NotAcceptable>(refused.Refusal).Happened, StringComparison.Ordinal);
    }
}
