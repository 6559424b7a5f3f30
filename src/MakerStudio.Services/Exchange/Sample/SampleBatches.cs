using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Exchange.SampleFormulaList;

namespace MakerStudio.Services.Exchange;

/// <summary>The batches that are finished by now, or nearly: pre-blend, sprays, diffuser, candles, melts.</summary>
internal sealed class SampleBatches(Story story)
{
    private readonly SampleBench _bench = new(story);

    public IEnumerable<SampleAct> Acts() => [.. FirstAccord(), .. WorkedSpray(), .. LinenSprays(), .. Diffusers(), .. Candles(), .. Melts()];

    private IEnumerable<SampleAct> FirstAccord() =>
    [
        new(story.Day(37, 9), () => _bench.PlanAsync(story.Bo, new SamplePlan("A-1", $"{SampleNames.Accord}, {PreBlend} v1") { Grams = 500 })),
        new(story.Day(37, 10), () => _bench.WeighAsync(story.Bo, new SampleWeighing("A-1", "shelf 2", 18))),
        new(story.Day(29, 10), () => _bench.CheckAsync(story.Ana, "A-1", 5, "Fig first, then cedar; smooth")),
        new(story.Day(29, 15), () => _bench.TakeIntoStockAsync(story.Bo, "A-1", 497.5m, 35, "2, left")),
    ];

    /// <summary>RS-1 is the worked batch: 4,000 g from two lots of fragrance, 48 filled, one leaker, one retained.</summary>
    private IEnumerable<SampleAct> WorkedSpray() =>
    [
        new(story.Day(31, 17), () => _bench.PlanAsync(story.Ana, Sized("RS-1", SampleNames.Fig, Spray, 3, Bottle, 48))),
        new(story.Day(30, 13, 15), () => _bench.WeighAsync(story.Bo, new SampleWeighing("RS-1", "carboy 2", 18.5m))),
        new(story.Day(28, 16, 40), () => _bench.CheckAsync(story.Ana, "RS-1", 4, "Fig leaf, a little sharp", note: "No colour")),
        new(story.Day(22, 9), () => _bench.NoteAsync(story.Ana, "RS-1", 26, 3, "The heating was on by mistake")),
        new(story.Day(16, 10, 5), () => _bench.CheckAsync(story.Ana, "RS-1", 4, "Rounder", note: "Chill test 4 °C, 24 h: clear")),
        new(story.Day(15, 17), () => _bench.FillAsync(story.Bo, "RS-1", new RecordFill
        {
            ToFillingGrams = 3_940, FillGrams = 82.0m, Filled = 48, Rejected = 1, Retained = 1, LabourMinutes = 130,
            CheckWeightsGrams = [82.0m, 82.1m, 81.7m, 82.0m, 82.2m], Note = "Filtered 1 µm; one leaker",
        })),
        new(story.Day(14, 9), () => _bench.CloseAsync(story.Ana, "RS-1")),
    ];

    private IEnumerable<SampleAct> LinenSprays() =>
    [
        new(story.Day(25, 9), () => _bench.PlanAsync(story.Bo, Sized("LN-1", SampleNames.LinenYard, Linen, 2, Bottle, 24))),
        new(story.Day(25, 10), () => _bench.WeighAsync(story.Bo, new SampleWeighing("LN-1", "carboy 1", 19))),
        new(story.Day(23, 11), () => _bench.CheckAsync(story.Ana, "LN-1", 2, "Clean, some cedar", note: "No mark on white cotton after 24 h")),
        new(story.Day(22, 14), () => _bench.FillAsync(story.Bo, "LN-1", new RecordFill
        {
            ToFillingGrams = 2_465, FillGrams = 100.7m, Filled = 24, Retained = 1, LabourMinutes = 75, CheckWeightsGrams = [100.7m, 100.6m, 100.8m],
        })),
        new(story.Day(21, 9), () => _bench.CloseAsync(story.Bo, "LN-1")),
    ];

    private IEnumerable<SampleAct> Diffusers() =>
    [
        new(story.Day(27, 9), () => _bench.PlanAsync(story.Ana, Sized("RD-1", SampleNames.GreenFig, Diffuser, 1, Bottle, 20))),
        new(story.Day(26, 10), () => _bench.WeighAsync(story.Ana, new SampleWeighing("RD-1", "carboy 3", 18))),
        new(story.Day(22, 15), () => _bench.CheckAsync(story.Bo, "RD-1", 4, "Green, milky")),
        new(story.Day(21, 15), () => _bench.FillAsync(story.Ana, "RD-1", new RecordFill
        {
            ToFillingGrams = 1_985, FillGrams = 96.9m, Filled = 20, Retained = 1, LabourMinutes = 60, CheckWeightsGrams = [96.9m, 96.8m, 97.1m],
        })),
        new(story.Day(20, 16), () => _bench.CloseAsync(story.Ana, "RD-1")),
    ];

    /// <summary>CN-1 is filled and not closed yet.</summary>
    private IEnumerable<SampleAct> Candles() =>
    [
        new(story.Day(21, 10), () => _bench.PlanAsync(story.Bo, Sized("CN-1", SampleNames.HearthFig, Candle, 1, Jar, 18))),
        new(story.Day(20, 14), () => _bench.WeighAsync(story.Bo, new SampleWeighing("CN-1", "rack A", 20))),
        new(story.Day(5, 10), () => _bench.CheckAsync(story.Ana, "CN-1", 3, "Warm fig, cedar behind it", clarity: Clarity.NotApplicable, note: "Cold throw good; tops even but one")),
        new(story.Day(5, 15), () => _bench.FillAsync(story.Bo, "CN-1", new RecordFill
        {
            ToFillingGrams = 3_285, FillGrams = 181, Filled = 18, Rejected = 1, Retained = 1, LabourMinutes = 95, CheckWeightsGrams = [181.2m, 180.8m, 181.0m],
            Note = "One sunken top",
        })),
    ];

    /// <summary>WM-1 is ready and waits to be packed.</summary>
    private IEnumerable<SampleAct> Melts() =>
    [
        new(story.Day(10, 9), () => _bench.PlanAsync(story.Ana, Sized("WM-1", SampleNames.HearthFig, Melt, 1, Shell, 20))),
        new(story.Day(10, 11), () => _bench.WeighAsync(story.Ana, new SampleWeighing("WM-1", "rack A", 20))),
        new(story.Day(6, 17, 40), () => _bench.CheckAsync(story.Bo, "WM-1", 4, "As the candle, fuller", clarity: Clarity.NotApplicable)),
    ];

    /// <summary>A plan for so many units of one size.</summary>
    public static SamplePlan Sized(string code, string name, string kind, int version, string size, int units) =>
        new(code, $"{name}, {kind} v{version}") { Size = $"{name}, {kind}, {size}", Units = units };
}
