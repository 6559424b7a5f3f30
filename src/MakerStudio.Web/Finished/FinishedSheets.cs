using MakerStudio.Core.Exchange;
using MakerStudio.Core.Products;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Finished;

/// <summary>Filled batches, and what is in stock of them, as files.</summary>
internal static class FinishedSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/finished/batches", "finished", asked =>
            Task.FromResult<Sheet?>(Batches(asked.Currency).Of(asked.Get<BatchRecords>().AllFinishedAsync(asked.Cancel), asked.Zone)));
        app.MapSheet("/finished/stock", "finished goods", async asked =>
            BatchSheets.Units(asked.Currency).Of(await asked.Get<FinishedGoods>().HereAsync(cancel: asked.Cancel), asked.Zone));
        app.MapSheet("/finished/yield/{formula:guid}", "yields", async asked =>
            await asked.Get<BatchRecords>().YieldsAsync(asked.Id("formula"), asked.Cancel) is { } found ? Yields().Of(found.Rows, asked.Zone) : null);
    }

    private static SheetOf<YieldRow> Yields() => new SheetOf<YieldRow>()
        .Text("Batch", r => r.Code).Moment("On", r => r.At).Text("Version", r => $"v{r.VersionNumber}").Text("Size", r => r.SizeName)
        .Number("Weighed in (g)", r => Grams(r.WeighedMilligrams)).Number("Kept (g)", r => Grams(r.KeptMilligrams)).Number("Left over (g)", r => Grams(r.LeftMilligrams))
        .Number("Normal loss (g)", r => Grams(r.NormalMilligrams)).Number("Expected loss (%)", r => r.ExpectedLossPercent)
        .Number("Accident (g)", r => Grams(r.AbnormalMilligrams)).Number("Yield (%)", r => Percent(r.Yield));

    private static SheetOf<FinishedRow> Batches(string currency) => new SheetOf<FinishedRow>()
        .Text("Batch", r => r.Code).Text("Formula", r => r.ScentName).Text("Version", r => $"v{r.VersionNumber}")
        .Text("Made as", r => ProductKinds.Find(r.ProductKind)?.Name ?? r.ProductKind).Text("Size", r => r.SizeName).Text("State", r => BatchStates.Name(r.State))
        .Moment("Filled on", r => r.FilledAt).Number("Filled (each)", r => r.Filled).Number("Saleable (each)", r => r.Saleable)
        .Number("Retained (each)", r => r.Retained).Number("Rejected (each)", r => r.Rejected)
        .Number($"Total cost ({currency})", r => r.TotalCost).Number($"Cost ({currency} per saleable)", r => r.PerSaleable).Text("Became lot", r => r.MadeLot);
}
