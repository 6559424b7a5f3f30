using MakerStudio.Core.Exchange;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Prices;

/// <summary>The tables of one product's page as files.</summary>
internal static class ProductSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapProduct("cost", "cost of a product", (_, product, asked) => product is { Plan: { } plan, Cost: not null } ? Parts(asked.Currency).Of(CostPart.Of(plan), asked.Zone) : null);
        app.MapProduct("channels", "channels of a product", (view, product, asked) =>
            product.Cost is { } cost ? Channels(asked.Currency).Of(ChannelLine.Of(view, product, cost), asked.Zone) : null);
        app.MapProduct("ladder", "price ladder", (view, product, asked) =>
            TypedTarget.Of(asked).Target is { } target ? Ladder(view).Of(LadderOf(view, product.FormulaId, target), asked.Zone) : null);
        app.MapSheet("/prices/{id:guid}/tags", "prices asked", async asked =>
            Tags(asked.Currency).Of(await asked.Get<PriceBook>().TagHistoryAsync(asked.Id("id"), asked.Cancel), asked.Zone));
        app.MapSheet("/prices/{id:guid}/fillings", "fillings", async asked =>
        {
            var view = await asked.Get<PriceBook>().ReadAsync(asked.Cancel);
            var tags = await asked.Get<PriceBook>().TagHistoryAsync(asked.Id("id"), asked.Cancel);
            return Fillings(view, tags).Of(await asked.Get<PriceBook>().FillHistoryAsync(asked.Id("id"), asked.Cancel), asked.Zone);
        });
    }

    /// <summary>All sizes of a scent for one target, as the page lays them out.</summary>
    internal static IReadOnlyList<LadderRow> LadderOf(PriceView view, Guid formulaId, PriceTarget target) => PriceLadder.Of(
        [.. view.Products.Where(p => p.FormulaId == formulaId && p.Cost is not null).Select(p => new LadderSize(p.SizeName, p.Cost!.Value))],
        [.. view.Channels.Select(c => c.Is)], target, view.Rules.Rounding);

    private static SheetOf<CostPart> Parts(string currency) => new SheetOf<CostPart>()
        .Text("Part", p => p.Name).Number($"Of one ({currency})", p => p.Amount).Number("Share (%)", p => Percent(p.Share));

    private static SheetOf<ChannelLine> Channels(string currency) => new SheetOf<ChannelLine>()
        .Text("Channel", l => l.Channel.Name).Number($"Tag ({currency})", l => l.Unit?.Tag).Number($"Net ({currency})", l => l.Unit?.Net).Number($"Ours, net ({currency})", l => l.Unit?.Revenue)
        .Number($"Fees and sale ({currency})", l => l.FeesAndSale).Number($"Cost ({currency})", l => l.UnitCost).Number($"Contribution ({currency})", l => l.Unit?.Contribution)
        .Number($"Wanted ({currency})", l => l.Channel.Wanted).Number($"Lowest safe ({currency})", l => l.LowestSafe)
        .Number("Margin (%)", l => Percent(l.Unit?.Margin)).Number("Markup (%)", l => Percent(l.Unit?.Markup));

    private static SheetOf<LadderRow> Ladder(PriceView view)
    {
        var sheet = new SheetOf<LadderRow>().Text("Size", r => r.Size.Name).Number($"Cost ({view.Currency})", r => r.Size.UnitCost);
        for (var i = 0; i < view.Channels.Count; i++)
        {
            var at = i;
            sheet.Number($"Tag, {view.Channels[at].Name} ({view.Currency})", r => r.Prices[at].Price is PriceResult.Found found ? found.Tag : null);
        }

        return sheet;
    }

    private static SheetOf<TagEntry> Tags(string currency) => new SheetOf<TagEntry>()
        .Text("Channel", t => t.Channel).Number($"Tag ({currency})", t => t.Amount).Text("Sold", t => t.Amount is null ? "no longer" : "yes")
        .Date("From", t => t.From).Text("Why", t => t.Note).Text("By", t => t.Initials).Moment("Entered", t => t.At);

    private static SheetOf<FillHistoryRow> Fillings(PriceView view, IReadOnlyList<TagEntry> tags)
    {
        var sheet = new SheetOf<FillHistoryRow>()
            .Text("Filling", f => f.BatchCode).Moment("On", f => f.At).Number("Filled (each)", f => f.Filled).Number("Yield (%)", f => Percent(f.Yield))
            .Number($"Cost of one ({view.Currency})", f => f.PerSaleable);
        foreach (var channel in FillMargins.Own(view, tags))
        {
            sheet.Number($"Margin, {channel.Name} (%)", f => Percent(FillMargins.At(f, channel, tags)));
        }

        return sheet;
    }

    private static void MapProduct(this IEndpointRouteBuilder app, string what, string name, Func<PriceView, ProductRow, SheetAsked, Sheet?> sheet) =>
        app.MapSheet($"/prices/{{id:guid}}/{what}", name, async asked =>
        {
            var view = await asked.Get<PriceBook>().ReadAsync(asked.Cancel);
            return view.Products.FirstOrDefault(p => p.SizeId == asked.Id("id")) is { } product ? sheet(view, product, asked) : null;
        });
}
