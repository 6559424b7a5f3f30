using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using static MakerStudio.Services.Exchange.SampleFormulaList;

namespace MakerStudio.Services.Exchange;

/// <summary>Where the sample studio sells and what it asks; the numbers of its worked examples.</summary>
internal sealed class SamplePrices(Story story)
{
    private readonly Dictionary<string, Guid> _channels = [];

    public IEnumerable<SampleAct> Acts() =>
    [
        new(story.Day(14, 10), () => RulesAsync()),
        new(story.Day(14, 10, 5), () => ChannelAsync(new KeepChannel
        {
            Name = "Web shop", CostPerUnit = 0.55m, Wanted = 6m, Fees = [new() { Name = "Payment", Percent = 2.9m, Fixed = 0.30m }, new() { Name = "Marketplace", Percent = 6.5m }],
        })),
        new(story.Day(14, 10, 6), () => ChannelAsync(new KeepChannel { Name = "Market stall", CostPerUnit = 0m, Wanted = 6m, Fees = [new() { Name = "Card", Percent = 1.75m }] })),
        new(story.Day(14, 10, 7), () => ChannelAsync(new KeepChannel { Name = "Wholesale", CostPerUnit = 0m, Wanted = 5m, OurSharePercent = 50m })),
        new(story.Day(14, 10, 15), () => TagAsync($"{SampleNames.Fig}, {Spray}, {Bottle}", 22.00m, "Web shop", "Market stall", "Wholesale")),
        new(story.Day(14, 10, 16), () => TagAsync($"{SampleNames.Fig}, {Spray}, {SmallBottle}", 14.50m, "Web shop", "Market stall")),
        new(story.Day(14, 10, 17), () => TagAsync($"{SampleNames.LinenYard}, {Linen}, {Bottle}", 16.00m, "Web shop", "Market stall")),
        new(story.Day(14, 10, 18), () => TagAsync($"{SampleNames.GreenFig}, {Diffuser}, {Bottle}", 29.00m, "Web shop", "Market stall", "Wholesale")),
        new(story.Day(8, 17), () => TagAsync($"{SampleNames.LinenYard}, {Linen}, {Bottle}", 18.00m, "Web shop", "Market stall")),
        new(story.Day(4, 16), () => TagAsync($"{SampleNames.HearthFig}, {Candle}, {Jar}", 19.00m, "Web shop", "Market stall")),
        new(story.Day(4, 16, 5), async () => (await story.Prices.SetFloorAsync(
            story.Ana, new SetMarginFloor { SizeId = story.SizeIds[$"{SampleNames.GreenFig}, {Diffuser}, {Bottle}"], FloorPercent = 66 })).Expect()),
    ];

    private async Task RulesAsync() =>
        (await story.Prices.SetRulesAsync(story.Ana, new SetPriceRules { TaxPercent = 20, TaxBasis = TaxBasis.InTag, FloorPercent = 70 })).Expect();

    private async Task ChannelAsync(KeepChannel channel) =>
        _channels[channel.Name] = (await story.Prices.KeepChannelAsync(story.Ana, channel with { TaxPercent = 20, TaxBasis = TaxBasis.InTag })).Expect().ChannelId;

    private async Task TagAsync(string size, decimal amount, params string[] channels) => (await story.Prices.SetTagAsync(
        story.Ana, new SetTag { SizeId = story.SizeIds[size], ChannelIds = [.. channels.Select(c => _channels[c])], Amount = amount })).Expect();
}
