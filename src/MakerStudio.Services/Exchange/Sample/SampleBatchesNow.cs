using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Exchange.SampleBatches;
using static MakerStudio.Services.Exchange.SampleFormulaList;

namespace MakerStudio.Services.Exchange;

/// <summary>The batches that ask for a hand today: resting, due, on hold, on the bench, planned.</summary>
internal sealed class SampleBatchesNow(Story story)
{
    private readonly SampleBench _bench = new(story);

    public IEnumerable<SampleAct> Acts() => [.. Resting(), .. Due(), .. OnHold(), .. OnTheBench(), .. Planned()];

    private IEnumerable<SampleAct> Resting() =>
    [
        new(story.Day(11, 9), () => _bench.PlanAsync(story.Bo, Sized("SA-1", SampleNames.LinenYard, Sachet, 1, Bag, 40))),
        new(story.Day(10, 14), () => _bench.WeighAsync(story.Bo, new SampleWeighing("SA-1", "box 4", 18))),
        new(story.Day(4, 9), () => _bench.PlanAsync(story.Bo, new SamplePlan("A-2", $"{SampleNames.Accord}, {PreBlend} v1") { Grams = 500 })),
        new(story.Day(4, 10), () => _bench.WeighAsync(story.Bo, new SampleWeighing("A-2", "shelf 2", 18))),
    ];

    /// <summary>RS-2 reached its 48 hours half an hour ago; RD-2 its 72 hours the day before yesterday.</summary>
    private IEnumerable<SampleAct> Due() =>
    [
        new(story.Day(6, 9), () => _bench.PlanAsync(story.Ana, Sized("RD-2", SampleNames.GreenFig, Diffuser, 1, Bottle, 20))),
        new(story.Day(5, 11), () => _bench.WeighAsync(story.Ana, new SampleWeighing("RD-2", "carboy 3", 18))),
        new(story.Day(3, 17), () => _bench.PlanAsync(story.Bo, Sized("RS-2", SampleNames.QuinceSmoke, Spray, 2, Bottle, 36))),
        new(story.Before(49.2), () => _bench.WeighAsync(story.Bo, new SampleWeighing("RS-2", "carboy 1", 18) { Over = (SampleNames.Dpg, 0.03m) })),
    ];

    /// <summary>LN-2 took the last of the cedar leaf oil and more that is still to come, and went hazy.</summary>
    private IEnumerable<SampleAct> OnHold() =>
    [
        new(story.Day(4, 14), () => _bench.PlanAsync(story.Ana, Sized("LN-2", SampleNames.LinenYard, Linen, 2, Bottle, 24))),
        new(story.Day(3, 14), () => _bench.WeighAsync(story.Ana, new SampleWeighing("LN-2", "carboy 4", 18)
        {
            ReceiptToFollow = "The jar ran out; Wrenfield’s bottle came without its invoice",
        })),
        new(story.Before(2.5), () => _bench.CheckAsync(
            story.Bo, "LN-2", 2, "Clean", CheckVerdict.Hold, Clarity.Haze, "Haze since this morning. Chill test before filtering.")),
    ];

    private IEnumerable<SampleAct> OnTheBench() =>
    [
        new(story.Day(1, 16), () => _bench.PlanAsync(story.Ana, Sized("RS-3", SampleNames.Fig, Spray, 3, Bottle, 48))),
        new(story.Before(0.6), () => _bench.WeighAsync(story.Bo, new SampleWeighing("RS-3", "carboy 2", 19) { StopAfterLines = 1 })),
    ];

    /// <summary>CN-2 is short until A-2 has rested and is taken into stock.</summary>
    private IEnumerable<SampleAct> Planned() =>
    [
        new(story.Day(1, 16, 20), () => _bench.PlanAsync(story.Bo, Sized("RS-4", SampleNames.Fig, Spray, 3, SmallBottle, 20))),
        new(story.Day(1, 16, 25), () => _bench.PlanAsync(story.Bo, Sized("RS-5", SampleNames.Fig, Spray, 3, SmallBottle, 20))),
        new(story.Day(1, 16, 30), () => _bench.DiscardAsync(story.Bo, "RS-5", "Planned twice; RS-4 is the one")),
        new(story.Day(1, 17), () => _bench.PlanAsync(story.Ana, Sized("CN-2", SampleNames.HearthFig, Candle, 1, Jar, 24))),
    ];
}
