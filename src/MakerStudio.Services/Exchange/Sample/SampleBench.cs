using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <param name="Code">The code the batch gets; the story counts on it.</param>
/// <param name="Version">"Fig, room-spray-alcohol v3".</param>
internal sealed record SamplePlan(string Code, string Version)
{
    /// <summary>"Fig, room-spray-alcohol, 100 mL bottle"; null for a pre-blend.</summary>
    public string? Size { get; init; }
    public int? Units { get; init; }
    public decimal? Grams { get; init; }
}

/// <param name="Place">Where it rests afterwards.</param>
internal sealed record SampleWeighing(string Code, string Place, decimal RoomCelsius)
{
    /// <summary>Lines weighed before the story leaves the sheet open; null weighs all and confirms the last addition.</summary>
    public int? StopAfterLines { get; init; }

    /// <summary>A line that comes out too heavy, by this fraction, and is corrected by scaling the rest.</summary>
    public (string Material, decimal Fraction)? Over { get; init; }

    /// <summary>Why something may be weighed ahead of its receipt; null when everything is there.</summary>
    public string? ReceiptToFollow { get; init; }
}

/// <summary>How Ana and Bo plan, weigh, check and fill.</summary>
internal sealed class SampleBench(Story story)
{
    private const string Scale = "Scale 2, bench";
    private const int MinutesAWeighing = 5;

    public async Task PlanAsync(Actor by, SamplePlan plan)
    {
        var scale = (await story.Settings.ScalesAsync()).Single(s => s.Name == Scale);
        var planned = (await story.Batches.PlanAsync(by, new PlanBatch
        {
            FormulaVersionId = story.VersionIds[plan.Version], FormulaSizeId = plan.Size is null ? null : story.SizeIds[plan.Size], PlannedUnits = plan.Units,
            TargetMilligrams = plan.Grams is { } grams ? Mass.FromGrams(grams).Milligrams : null, ScaleId = scale.Id,
        })).Expect();
        if (planned.Code != plan.Code)
        {
            throw new InvalidOperationException($"The story counts on {plan.Code} and got {planned.Code}.");
        }

        story.BatchIds[plan.Code] = planned.BatchId;
    }

    public async Task WeighAsync(Actor by, SampleWeighing how)
    {
        var batch = story.BatchIds[how.Code];
        (await story.Batches.StartWeighingAsync(by, new StartWeighing { BatchId = batch })).Expect();
        for (var sheet = await SheetAsync(how.Code); sheet.Current is { } line; sheet = await SheetAsync(how.Code))
        {
            if (sheet.Lines.Count(l => l.IsDone) == how.StopAfterLines)
            {
                return;
            }

            story.Clock.Pass(MinutesAWeighing);
            (await story.Sheets.RecordAsync(by, Reading(sheet, line, how))).Expect();
        }

        story.Clock.Pass(MinutesAWeighing);
        (await story.Sheets.ConfirmLastAdditionAsync(by, new ConfirmLastAddition
        {
            BatchId = batch, StirredConfirmed = true, Place = how.Place, RoomCelsius = how.RoomCelsius,
        })).Expect();
    }

    public async Task CheckAsync(Actor by, string code, int strength, string character, CheckVerdict verdict = CheckVerdict.Passed, Clarity clarity = Clarity.Clear, string? note = null) =>
        (await story.Shelf.RecordCheckAsync(by, new RecordCheck
        {
            BatchId = story.BatchIds[code], Strength = strength, Character = character, Clarity = clarity, Verdict = verdict, Note = note,
        })).Expect();

    public async Task NoteAsync(Actor by, string code, decimal celsius, decimal hours, string note) =>
        (await story.Shelf.NoteAsync(by, new NoteRest { BatchId = story.BatchIds[code], Celsius = celsius, Hours = hours, Note = note })).Expect();

    public async Task FillAsync(Actor by, string code, RecordFill fill) =>
        (await story.Fills.RecordAsync(by, fill with { RequestId = Guid.CreateVersion7(), BatchId = story.BatchIds[code] })).Expect();

    public async Task TakeIntoStockAsync(Actor by, string code, decimal grams, decimal minutes, string shelf) =>
        (await story.Fills.TakeIntoStockAsync(by, new TakeIntoStock { BatchId = story.BatchIds[code], Grams = grams, LabourMinutes = minutes, Shelf = shelf })).Expect();

    public async Task CloseAsync(Actor by, string code) =>
        (await story.Fills.CloseAsync(by, new CloseBatch { BatchId = story.BatchIds[code] })).Expect();

    public async Task DiscardAsync(Actor by, string code, string reason) =>
        (await story.Batches.DiscardAsync(by, new DiscardBatch { BatchId = story.BatchIds[code], Reason = reason })).Expect();

    private async Task<WeighSheet> SheetAsync(string code) =>
        await story.Sheets.SheetAsync(code) ?? throw new InvalidOperationException($"The story has no batch {code}.");

    /// <summary>What the scale shows: from the lot the sheet suggests, to the scale's step, or all that is left in the jar.</summary>
    private static RecordWeighing Reading(WeighSheet sheet, SheetLine line, SampleWeighing how)
    {
        var lot = line.Suggested ?? throw new InvalidOperationException($"Nothing to weigh {line.MaterialName} from in {sheet.Code}.");
        var isOver = how.Over is { } over && over.Material == line.MaterialName && line.RecordedMilligrams == 0;
        var wanted = isOver ? (long)(line.RemainingMilligrams * (1 + how.Over!.Value.Fraction)) : line.RemainingMilligrams;
        var shown = Math.Max(1, (wanted + (sheet.ReadabilityMilligrams / 2)) / sheet.ReadabilityMilligrams) * sheet.ReadabilityMilligrams;
        var follows = line.ShortBy > 0 && how.ReceiptToFollow is not null;
        return new RecordWeighing
        {
            BatchId = sheet.BatchId, LineId = line.LineId, LotId = lot.LotId, NetMilligrams = follows ? shown : Math.Min(shown, lot.OnHandMilligrams),
            Over = isOver ? OverChoice.Correct : OverChoice.Ask, ReceiptToFollow = follows, Reason = follows ? how.ReceiptToFollow : null,
        };
    }
}
