using MakerStudio.Core.Costing;
using MakerStudio.Core.Exchange;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Finished;

/// <summary>The tables of a batch's record as files.</summary>
internal static class BatchSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapRecord("weighed", "weighed", (record, asked) => Weighed(record, asked.Currency).Of(record.Weighed, asked.Zone));
        app.MapRecord("happened", "what happened", (record, asked) => Happened(record.Code).Of(record.Happened, asked.Zone));
        app.MapRecord("cost", "cost of a batch", (record, asked) =>
            record.Fill is { } fill ? Steps(fill, asked.Currency).Of(CostStep.Of(record, fill), asked.Zone) : null);
        app.MapCost("shares", "shares of the cost", (cost, asked) => Shares(asked.Currency).Of(cost.RollUp().Lines, asked.Zone));
        app.MapCost("variance", "planned against actual", (cost, asked) => cost.Variance() is { } variance ? Variance(asked.Currency).Of(variance.Lines, asked.Zone) : null);
        app.MapUnits("units", "units of a batch", async (goods, code, asked) => Units(asked.Currency).Of((await goods.OfBatchAsync(code, asked.Cancel)).OrderBy(r => r.Status), asked.Zone));
        app.MapUnits("holders", "who has a batch", async (goods, code, asked) => Holders(code).Of(await goods.HoldersAsync(code, asked.Cancel), asked.Zone));
        app.MapRecord("entries", "entries", async (record, asked) =>
            Entries.Of(await asked.Get<FinishedGoods>().EntriesAsync(record.BatchId, take: null, cancel: asked.Cancel), asked.Zone));
    }

    /// <summary>Acts on units, of a batch here and of a place there.</summary>
    internal static readonly SheetOf<UnitEntryRow> Entries = new SheetOf<UnitEntryRow>()
        .Moment("When", r => r.At).Text("Batches", r => r.Batches).Text("What", r => string.Join(", ", r.Kinds.Select(GoodsWords.Kind)))
        .Text("Reversal", r => r.IsReversal ? "yes" : "no").Text("Taken back", r => r.IsTakenBack ? "yes" : "no")
        .Number("Units (each)", r => r.Units).Text("Place", r => r.Place).Text("Why", r => r.Reason).Text("Sale", r => r.SaleCode).Text("By", r => r.Initials);

    /// <summary>Units by batch, place and status.</summary>
    internal static SheetOf<GoodsRow> Units(string currency) => new SheetOf<GoodsRow>()
        .Text("Batch", r => r.Code).Text("Formula", r => r.Product.ScentName).Text("Size", r => r.Product.SizeName).Text("Place", r => r.PlaceName)
        .Text("Status", r => GoodsWords.Status(r.Status)).Text("Batch on hold", r => r.IsOnHold ? "yes" : "no").Number("Units (each)", r => r.Count)
        .Date("Best before", r => r.BestBefore).Moment("Filled", r => r.FilledAt)
        .Number($"Cost of one ({currency})", r => Core.Finished.UnitRules.CarriesValue(r.Status) ? r.UnitCost : null);

    private static SheetOf<WeighedRow> Weighed(BatchRecord record, string currency) => new SheetOf<WeighedRow>()
        .Text("Batch", _ => record.Code).Number("Add", r => r.Position).Text("Material", r => r.Material).Text("Lot", r => r.LotCode)
        .Text("Receipt", r => r.LotCode is null ? "to follow" : "there").Number("Target of the line (g)", r => Grams(r.TargetMilligrams)).Number("Actual (g)", r => Grams(r.NetMilligrams))
        .Number($"Price ({currency} per kg)", r => r.UnitCost * 1000m).Number($"Cost ({currency})", r => r.Cost).Text("Weighed by", r => r.Initials).Moment("Weighed", r => r.At);

    private static SheetOf<HappenedRow> Happened(string code) => new SheetOf<HappenedRow>()
        .Text("Batch", _ => code).Moment("When", r => r.At).Text("What", r => r.What).Text("Detail", r => r.Detail).Text("By", r => r.Initials);

    private static SheetOf<CostStep> Steps(FilledRow fill, string currency) => new SheetOf<CostStep>()
        .Text("Cost of", s => s.Name).Number($"Batch ({currency})", s => s.Amount).Number($"One saleable ({currency})", s => fill.Saleable > 0 ? s.Amount / fill.Saleable : null);

    private static SheetOf<RollUpLine> Shares(string currency) => new SheetOf<RollUpLine>()
        .Text("Cost of", l => l.Label).Text("Lot", l => l.Lot).Number("Quantity (g, each, min)", l => l.Quantity).Number($"Unit cost ({currency} per g, each, min)", l => l.UnitCost)
        .Number($"Cost ({currency})", l => l.Cost).Number("Share (%)", l => Percent(l.Share))
        .Number($"Per filled ({currency})", l => l.PerFilled).Number($"Per saleable ({currency})", l => l.PerSaleable);

    private static SheetOf<VarianceLine> Variance(string currency) => new SheetOf<VarianceLine>()
        .Text("Cost of", l => l.Label).Number("Planned quantity (g, each, min)", l => l.PlannedQuantity).Number($"Planned unit cost ({currency} per g, each, min)", l => l.PlannedUnitCost)
        .Number("Actual quantity (g, each, min)", l => l.ActualQuantity).Number($"Actual cost ({currency})", l => l.ActualCost)
        .Number($"Other price ({currency})", l => l.Price).Number($"Other quantity ({currency})", l => l.Quantity);

    private static SheetOf<HolderRow> Holders(string code) => new SheetOf<HolderRow>()
        .Text("Batch", _ => code).Text("Who", r => r.Who).Text("Can be told", r => r.IsNamed ? "yes" : "no").Text("Channel", r => r.Channel)
        .Text("Sale", r => r.SaleCode).Date("On", r => r.SoldOn).Number("Units (each)", r => r.Units);

    private static void MapRecord(this IEndpointRouteBuilder app, string what, string name, Func<BatchRecord, SheetAsked, Task<Sheet?>> sheet) =>
        app.MapSheet($"/finished/{{code}}/{what}", name, async asked =>
            await asked.Get<BatchRecords>().FindAsync(asked.Route("code"), asked.Cancel) is { } record ? await sheet(record, asked) : null);

    private static void MapRecord(this IEndpointRouteBuilder app, string what, string name, Func<BatchRecord, SheetAsked, Sheet?> sheet) =>
        app.MapRecord(what, name, (record, asked) => Task.FromResult(sheet(record, asked)));

    private static void MapCost(this IEndpointRouteBuilder app, string what, string name, Func<CostToOpen, SheetAsked, Sheet?> sheet) =>
        app.MapSheet($"/finished/{{code}}/cost/{what}", name, async asked =>
            await asked.Get<BatchCosting>().FindAsync(asked.Route("code"), asked.Cancel) is { } cost ? sheet(cost, asked) : null);

    private static void MapUnits(this IEndpointRouteBuilder app, string what, string name, Func<FinishedGoods, string, SheetAsked, Task<Sheet>> sheet) =>
        app.MapRecord(what, name, async (record, asked) => await sheet(asked.Get<FinishedGoods>(), record.Code, asked));
}
