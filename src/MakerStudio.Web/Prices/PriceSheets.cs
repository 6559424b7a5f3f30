using MakerStudio.Core.Exchange;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Prices;

/// <summary>The price book as files: every product, the channels, and what a supposed change does to all of them.</summary>
internal static class PriceSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/prices/products", "prices", async asked =>
            await asked.Get<PriceBook>().ReadAsync(asked.Cancel) is var view ? Products(view).Of(view.Products, asked.Zone) : null);
        app.MapSheet("/prices/channels", "channels", async asked =>
            Channels(asked.Currency).Of((await asked.Get<PriceBook>().ReadAsync(asked.Cancel)).Channels, asked.Zone));
        app.MapSheet("/prices/what-if", "what if", async asked =>
            Effects(asked.Currency).Of(Supposed.Of(asked).Effects(await asked.Get<PriceBook>().ReadAsync(asked.Cancel)).SelectMany(RowsOf), asked.Zone));
    }

    /// <summary>One column of tags and one of margins a channel, as on the page.</summary>
    private static SheetOf<ProductRow> Products(PriceView view)
    {
        var sheet = new SheetOf<ProductRow>()
            .Text("Product", r => r.Scent).Text("Size", r => r.SizeName).Text("Version", r => $"v{r.VersionNumber}").Text("Last filled as", r => r.LastBatch)
            .Moment("Last filled", r => r.LastFilledAt).Number($"Cost at the last filling ({view.Currency})", r => r.LastCost)
            .Number($"Cost at today’s prices ({view.Currency})", r => r.AtTodaysPrices is null ? null : r.Cost)
            .Text("Cost is without", r => r.LacksWork ? "labour and overhead" : null).Text("Why there is no cost", r => r.WhyNot).Number("Floor (%)", r => Percent(r.Floor));
        foreach (var channel in view.Channels)
        {
            decimal? Tag(ProductRow row) => row.Tags.FirstOrDefault(t => t.ChannelId == channel.Id)?.Amount;
            sheet.Number($"Tag, {channel.Name} ({view.Currency})", Tag)
                .Number($"Margin, {channel.Name} (%)", row => Tag(row) is { } tag && row.Cost is { } cost ? Percent(Pricing.At(tag, cost, channel.Is).Margin) : null);
        }

        return sheet;
    }

    private static SheetOf<ChannelRow> Channels(string currency) => new SheetOf<ChannelRow>()
        .Text("Channel", r => r.Name).Number("Tax (%)", r => Percent(r.Is.Tax.Rate)).Text("Tax is", r => r.Is.Tax.Basis == TaxBasis.InTag ? "in the tag" : "added at the till")
        .Text("Takes", r => PriceWords.Terms(r.Is)).Number($"Each sale costs ({currency})", r => r.Is.CostPerUnit).Number("Our part of the net (%)", r => Percent(r.Is.OurShare))
        .Number($"Wanted of each ({currency})", r => r.Wanted);

    private static SheetOf<EffectRow> Effects(string currency) => new SheetOf<EffectRow>()
        .Text("Product", r => r.Name).Text("Cannot be worked out", r => r.Says)
        .Number($"Cost of one before ({currency})", r => r.Cost?.Before).Number($"Cost of one after ({currency})", r => r.Cost?.After)
        .Number($"A batch before ({currency})", r => r.Cost?.BatchBefore).Number($"A batch after ({currency})", r => r.Cost?.BatchAfter)
        .Text("Channel", r => r.Tag?.After.Channel.Name).Number($"Tag ({currency})", r => r.Tag?.After.Tag)
        .Number("Margin before (%)", r => Percent(r.Tag?.Before.Margin)).Number("Margin after (%)", r => Percent(r.Tag?.After.Margin))
        .Number($"Contribution before ({currency})", r => r.Tag?.Before.Contribution).Number($"Contribution after ({currency})", r => r.Tag?.After.Contribution)
        .Number("Floor it falls under (%)", r => Percent(r.Under?.Floor)).Text("Put back by", r => r.Under is { } alert ? PriceWords.WayBack(alert) : null);

    private static IEnumerable<EffectRow> RowsOf(ProductEffect effect) => effect switch
    {
        ProductEffect.NotPossible not => [new EffectRow(not.Name, not.Says, null, null)],
        ProductEffect.Worked { IsTouched: true, Tags: [] } worked => [new EffectRow(worked.Name, null, worked, null)],
        ProductEffect.Worked { IsTouched: true } worked => worked.Tags.Select(tag => new EffectRow(worked.Name, null, worked, tag)),
        _ => [],
    };

    private sealed record EffectRow(string Name, string? Says, ProductEffect.Worked? Cost, TagEffect? Tag)
    {
        /// <summary>A floor watches what we sell ourselves.</summary>
        public MarginAlert? Under => Tag?.After.Channel.OurShare == 1m ? Tag.Alert : null;
    }
}
