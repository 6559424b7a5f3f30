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
        app.MapProduct("cost", "cost of a product", (_, product, asked) => PlanOf(product, asked) is { } plan ? Parts(asked.Currency).Of(CostPart.Of(plan), asked.Zone) : null);
        app.MapProduct("batch", "what goes into a batch", (_, product, asked) => PlanOf(product, asked) is { } plan ? Batch(asked.Currency).Of(CostLine.Of(plan), asked.Zone) : null);
        app.MapProduct("tag", "from cost to tag", (view, product, asked) =>
            CostQuery.Read(asked, product) is { } cost && view.Channels.FirstOrDefault(c => c.Id == asked.QueryId("channel")) is { } channel && asked.QueryNumber("tag") is >= 0 and var tag
                ? Tag(asked.Currency).Of(PriceAnatomy.Of(tag, cost, channel, product.Floor, view.Rules.Rounding).Rows(), asked.Zone) : null);
        app.MapProduct("channels", "channels of a product", (view, product, asked) =>
            CostQuery.Read(asked, product) is { } cost ? Channels(asked.Currency).Of(ChannelLine.Of(view, product, cost), asked.Zone) : null);
        app.MapProduct("ladder", "price ladder", (view, product, asked) =>
            TypedTarget.Of(asked).Target is { } target && CostQuery.Read(asked, product) is { } cost
                ? Ladder(view).Of(LadderRung.Ladder(view, LadderRung.Of(view, product, cost), target), asked.Zone) : null);
        app.MapSheet("/prices/{id:guid}/tags", "prices asked", async asked =>
            Tags(asked.Currency).Of(await asked.Get<PriceBook>().TagHistoryAsync(asked.Id("id"), asked.Cancel), asked.Zone));
        app.MapSheet("/prices/{id:guid}/fillings", "fillings", async asked =>
            Fillings(asked.Currency).Of(await asked.Get<PriceBook>().FillHistoryAsync(asked.Id("id"), asked.Cancel), asked.Zone));
        app.MapSheet("/prices/{id:guid}/margins", "margins", async asked =>
            await asked.Get<PriceBook>().MarginsAsync(asked.Id("id"), asked.Cancel) is { } found ? Margins(asked.Currency).Of(MarginWords.Changes(found), asked.Zone) : null);
        app.MapSheet("/prices/{id:guid}/sold", "margins as sold", async asked =>
            await asked.Get<PriceBook>().MarginsAsync(asked.Id("id"), asked.Cancel) is { } found ? Sold(asked.Currency).Of(found.Sold, asked.Zone) : null);
    }

    /// <summary>As the page begins: today's purchase prices, or the last filling when that is asked for.</summary>
    private static ProductPlan? PlanOf(ProductRow product, SheetAsked asked) =>
        (asked.Query("from") == "filling" ? product.LastFill ?? product.Plan : product.Plan) is { } plan && plan.Problem() is null ? plan : null;

    private static SheetOf<CostLine> Batch(string currency) => new SheetOf<CostLine>()
        .Text("What", l => l.Name).Number("Quantity", l => l.Quantity).Text("Unit", l => l.Unit).Number($"Price ({currency})", l => l.Price).Text("Price is per", l => l.Per.TrimStart('/'))
        .Number($"Cost ({currency})", l => l.Cost);

    private static SheetOf<(string Name, decimal Amount)> Tag(string currency) => new SheetOf<(string Name, decimal Amount)>()
        .Text("Of the tag", r => r.Name).Number($"Money ({currency})", r => r.Amount);

    private static SheetOf<MarginRow> Margins(string currency) => new SheetOf<MarginRow>()
        .Date("From", r => r.Day).Text("Channel", r => r.Channel).Number($"Tag ({currency})", r => r.Tag).Number($"Cost of one ({currency})", r => r.UnitCost)
        .Text("As filled", r => r.Batch).Number("Margin (%)", r => Percent(r.Margin)).Number($"Left of one ({currency})", r => r.Contribution);

    private static SheetOf<SoldMarginRow> Sold(string currency) => new SheetOf<SoldMarginRow>()
        .Date("Sold on", r => r.Day).Text("Channel", r => r.Channel).Number("Units (each)", r => r.Units).Number($"Ours, net ({currency})", r => r.Revenue)
        .Number($"Cost ({currency})", r => r.Cost).Number("Margin (%)", r => Percent(r.Margin));

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

    private static SheetOf<FillHistoryRow> Fillings(string currency) => new SheetOf<FillHistoryRow>()
        .Text("Filling", f => f.BatchCode).Moment("On", f => f.At).Number("Filled (each)", f => f.Filled).Number("Yield (%)", f => Percent(f.Yield))
        .Number($"Cost of one ({currency})", f => f.PerSaleable);

    private static void MapProduct(this IEndpointRouteBuilder app, string what, string name, Func<PriceView, ProductRow, SheetAsked, Sheet?> sheet) =>
        app.MapSheet($"/prices/{{id:guid}}/{what}", name, async asked =>
        {
            var view = await asked.Get<PriceBook>().ReadAsync(asked.Cancel);
            return view.Products.FirstOrDefault(p => p.SizeId == asked.Id("id")) is { } product ? sheet(view, product, asked) : null;
        });
}
