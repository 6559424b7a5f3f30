using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <summary>What happens to lots besides being used: samples, counts, evaporation, a hold, a re-test.</summary>
internal sealed class SampleLots(Story story)
{
    private long _sample;

    public IEnumerable<SampleAct> Acts() =>
    [
        new(story.Day(26, 9, 40), async () => _sample = await AdjustAsync(story.Bo, "P-1", -12_000, AdjustmentReason.Sample, "Blotters for Harbour Goods")),
        new(story.Day(26, 9, 52), ReverseSampleAsync),
        new(story.Day(18, 9), () => AdjustAsync(story.Ana, "E-1", -38_000, AdjustmentReason.Evaporation, "By weight of the can, since it was opened")),
        new(story.Day(12, 15), () => AdjustAsync(story.Bo, "B-1", -2, AdjustmentReason.Breakage, "Fell from shelf 6")),
        new(story.Day(7, 9), () => CountGrossAsync(story.Ana, "P-1", null, difference: 0)),
        new(story.Day(7, 9, 20), () => CountPiecesAsync(story.Ana, "B-1", difference: -1)),
        new(story.Day(7, 9, 40), () => CountGrossAsync(story.Bo, "W-1", 0, difference: -12_000)),
        new(story.Day(6, 10), HoldSprayersAsync),
        new(story.Day(5, 9), RetestOrrisAsync),
    ];

    private async Task<long> AdjustAsync(Actor by, string lot, long change, AdjustmentReason reason, string note) =>
        (await story.Lots.AdjustAsync(by, new AdjustLot { LotId = await story.LotAsync(lot), Change = change, Reason = reason, Note = note })).Expect().MovementId;

    private async Task ReverseSampleAsync() =>
        (await story.Lots.ReverseAsync(story.Bo, new ReverseMovement { MovementId = _sample, Reason = "Taken from P-2’s tester, not from this can" })).Expect();

    /// <param name="tare">Null for the lot's own, milligrams.</param>
    /// <param name="difference">What the scale shows against the book, milligrams.</param>
    private async Task CountGrossAsync(Actor by, string code, long? tare, long difference)
    {
        var lot = (await story.Lots.FindAsync(code))!;
        (await story.Lots.CountAsync(by, new CountLot
        {
            LotId = lot.Id, GrossMilligrams = lot.OnHand + (tare ?? lot.TareMilligrams ?? 0) + difference, TareMilligrams = tare, AsOfMovement = lot.LastMovement,
            Note = difference == 0 ? null : "Crumbs left in the carton",
        })).Expect();
    }

    private async Task CountPiecesAsync(Actor by, string code, long difference)
    {
        var lot = (await story.Lots.FindAsync(code))!;
        (await story.Lots.CountAsync(by, new CountLot { LotId = lot.Id, Pieces = lot.OnHand + difference, AsOfMovement = lot.LastMovement })).Expect();
    }

    private async Task HoldSprayersAsync() => (await story.Lots.HoldAsync(story.Ana, new HoldLot
    {
        LotId = await story.LotAsync("S-2"), Reason = "Two of ten leaked upside down overnight; Pennel is asked",
    })).Expect();

    private async Task RetestOrrisAsync() => (await story.Lots.RetestAsync(story.Bo, new RetestLot
    {
        LotId = await story.LotAsync("Y-2"), Finding = "Re-smelled, passed", Days = 180,
    })).Expect();
}
