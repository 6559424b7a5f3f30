using System.Text.Json;
using Bunit;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Prices;
using MakerStudio.Web.Tests.Shell;

namespace MakerStudio.Web.Tests.Prices;

public class WhatIfPartTests : ShellContext
{
    internal static readonly Guid Oil = Guid.CreateVersion7();
    private static readonly Channel Direct = new("Direct", new SalesTax(0.20m, TaxBasis.InTag), []);

    /// <summary>Own worked example: fragrance + 18 % takes 4.5079 to 4.6376 and 75.4 % to 74.7 %, under 75 %; tag 22.27 or load 11.1 % restores it.</summary>
    [Fact]
    public void Page_OfTheWorkedBatch_SaysWhatEighteenPercentDo()
    {
        var part = Render<WhatIfPart>(p => p.Add(x => x.View, View()));

        Assert.Contains("4.5079 → 4.6376", part.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Contains("75.4 % → 74.7 %", part.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Contains("under 75.0 %: tag 22.27, or load 11.1 % w/w", part.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Contains("+5.97", part.Find("tbody").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void View_CarriedFromTheFirstDrawing_CostsTheSame()
    {
        var view = View();

        var again = JsonSerializer.Deserialize<PriceView>(JsonSerializer.Serialize(view, JsonSerializerOptions.Web), JsonSerializerOptions.Web)!;

        Assert.Equal(207.36268m / 46, again.Products[0].Cost);
        Assert.Equal(Direct.Tax, again.Channels[0].Is.Tax);
        Assert.Equal(view.Products[0].Plan!.Prices[0].Tag, again.Products[0].Plan!.Prices[0].Tag);
    }

    internal static PriceView View()
    {
        var channel = new ChannelRow(Guid.CreateVersion7(), 6m, Direct, 1);
        var plan = new ProductPlan(
            Guid.CreateVersion7(), "Fig, 100 mL",
            [
                new(Oil, "Fragrance", 300m, 0.067374m, LoadRole.Scent), new(Oil, "Fragrance", 180m, 0.0719m, LoadRole.Scent),
                new(Guid.CreateVersion7(), "Alcohol", 3_320m, 0.008644m, LoadRole.Carrier), new(Guid.CreateVersion7(), "DPG", 200m, 0.0112m, LoadRole.Other),
            ],
            [new(Guid.CreateVersion7(), "Bottle", 1, 1.8348m)], 82m, 0.984m, 2, 130m, 18m, 9m, 0.15m, [new(Direct, 22m)], 0.75m);
        return new PriceView(
            "EUR", new DateOnly(2026, 11, 25), new PriceRulesRow(0.2m, TaxBasis.InTag, null, 0.75m, 1, 1, 1), [channel],
            [new ProductRow(plan.Id, Guid.CreateVersion7(), "Fig", "room-spray-alcohol", "100 mL", 3, 100m, "RS-1", null, plan, plan, null, false, 0.75m, false, [new(channel.Id, 22m, new DateOnly(2026, 11, 1))])]);
    }
}
