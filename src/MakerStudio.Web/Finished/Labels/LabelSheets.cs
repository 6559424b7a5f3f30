using MakerStudio.Core.Exchange;
using MakerStudio.Core.Labels;
using MakerStudio.Services.Labels;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Finished;

/// <summary>The label drawer, and what a label says and how it reads, as files; a formula's as its words were kept last.</summary>
internal static class LabelSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/finished/label-stock", "label drawer", async asked => Drawer.Of(await asked.Get<LabelStocks>().ListAsync(asked.Cancel), asked.Zone));
        app.MapSheet("/finished/{code}/label/elements", "label elements", async asked => await OfBatchAsync(asked) is { } label && label.LaidOut(label.Facts?.Batch?.BestBefore) is { } layout
            ? Elements.Of([.. layout.Content.Elements.Select(Of), .. Beside(label)], asked.Zone) : null);
        app.MapSheet("/finished/{code}/label/legibility", "legibility", async asked =>
            await OfBatchAsync(asked) is { } label && label.LaidOut(label.Facts?.Batch?.BestBefore) is { } layout ? Legibility.Of(LabelLegibility.Check(layout), asked.Zone) : null);
        app.MapSheet("/finished/{code}/label/prints", "printed labels", async asked =>
            await OfBatchAsync(asked) is { } label ? Prints(label.Code).Of(label.Prints, asked.Zone) : null);
        app.MapSheet("/library/{id:guid}/label/elements", "label elements", async asked =>
            (await OfFormulaAsync(asked))?.LaidOut() is { } layout ? Elements.Of(layout.Content.Elements.Select(Of), asked.Zone) : null);
        app.MapSheet("/library/{id:guid}/label/legibility", "legibility", async asked =>
            (await OfFormulaAsync(asked))?.LaidOut() is { } layout ? Legibility.Of(LabelLegibility.Check(layout), asked.Zone) : null);
    }

    /// <summary>A batch's own square code leads to this studio, so the layout needs its address.</summary>
    private static Task<BatchLabel?> OfBatchAsync(SheetAsked asked) => asked.Get<BatchLabels>().FindAsync(
        asked.Route("code"), $"{asked.Context.Request.Scheme}://{asked.Context.Request.Host}{asked.Context.Request.PathBase}/", asked.Cancel);

    private static Task<FormulaLabel?> OfFormulaAsync(SheetAsked asked) =>
        asked.Get<FormulaLabels>().FindAsync(asked.Id("id"), (int?)asked.QueryNumber("version"), asked.QueryId("size"), asked.Cancel);

    private static LabelLine Of(LabelElement element) => new(
        element.Title, element.From, element.State switch { ElementState.There => "there", ElementState.Missing => "missing", _ => "not needed" },
        string.Join(" / ", element.Texts), element.Note);

    private static IEnumerable<LabelLine> Beside(BatchLabel label) =>
    [
        new("Confirmed by", "a competent person", label.ConfirmedAt is null ? "missing" : "there", label.ConfirmedBy, null),
        new("Label and formula version", "batch record", label.LabelVersion is null ? "missing" : label.LabelVersion == label.VersionNumber ? "there" : "differs",
            label.LabelVersion is { } of ? $"v{of}, batch v{label.VersionNumber}" : null, null),
    ];

    private static readonly SheetOf<LabelLine> Elements = new SheetOf<LabelLine>()
        .Text("Element", l => l.Title).Text("From", l => l.From).Text("State", l => l.State).Text("Says", l => l.Says).Text("Note", l => l.Note);

    private static readonly SheetOf<LegibilityCheck> Legibility = new SheetOf<LegibilityCheck>()
        .Text("Measured", c => c.Title).Text("Here", c => c.Found).Text("Asked for", c => c.Asked)
        .Text("State", c => c.Verdict switch { Legible.Yes => "reached", Legible.BelowWish => "below the wish", _ => "too small" })
        .Text("Asked by", c => c.Source.Text).Text("How well it is known", c => c.Source.Caution);

    private static SheetOf<LabelPrintRow> Prints(string code) => new SheetOf<LabelPrintRow>()
        .Text("Batch", _ => code).Moment("On", r => r.At).Number("Labels (each)", r => r.Count).Number("From place", r => r.FirstPlace).Date("Best before", r => r.BestBefore).Text("By", r => r.Initials);

    private static readonly SheetOf<LabelStockItem> Drawer = new SheetOf<LabelStockItem>()
        .Text("Labels", r => r.Name).Number("Width (mm)", r => r.Stock.Width).Number("Height (mm)", r => r.Stock.Height)
        .Text("On", r => r.Stock.Sheet is null ? "a roll" : "sheets").Number("Side by side", r => r.Stock.Sheet?.Columns).Number("Rows", r => r.Stock.Sheet?.Rows)
        .Number("Page width (mm)", r => r.Stock.Sheet?.PageWidth).Number("Page height (mm)", r => r.Stock.Sheet?.PageHeight)
        .Number("Left margin (mm)", r => r.Stock.Sheet?.MarginLeft).Number("Top margin (mm)", r => r.Stock.Sheet?.MarginTop)
        .Number("Label to label, across (mm)", r => r.Stock.Sheet?.PitchAcross).Number("Label to label, down (mm)", r => r.Stock.Sheet?.PitchDown)
        .Number("Printer offset, across (mm)", r => r.OffsetAcross).Number("Printer offset, down (mm)", r => r.OffsetDown);

    private sealed record LabelLine(string Title, string From, string State, string? Says, string? Note);
}
