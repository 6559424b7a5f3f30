using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Bench;

/// <summary>What is planned and on the scale, as a file.</summary>
internal static class BenchSheets
{
    public static void Map(IEndpointRouteBuilder app) =>
        app.MapSheet("/bench/batches", "bench", async asked => Batches.Of(await asked.Get<Batches>().OnTheBenchAsync(asked.Cancel), asked.Zone));

    private static readonly SheetOf<BenchRow> Batches = new SheetOf<BenchRow>()
        .Text("Batch", r => r.Code).Text("Formula", r => r.ScentName).Text("Version", r => $"v{r.VersionNumber}").Text("Made as", r => r.ProductName)
        .Text("State", r => r.State == BatchState.Weighing ? "Weighing" : "Planned")
        .Number("Target (g)", r => Grams(r.TargetMilligrams)).Number("Recorded (g)", r => Grams(r.RecordedMilligrams))
        .Number("Units planned", r => r.PlannedUnits).Text("Size", r => r.SizeName)
        .Number("Lines", r => r.Lines).Number("Lines done", r => r.LinesDone)
        .Text("Planned by", r => r.PlannedBy).Moment("Planned", r => r.PlannedAt)
        .Text("Weighing", r => r.WeighingBy).Moment("Weighing since", r => r.WeighingSince)
        .Text("Short of", r => string.Join("; ", r.Shortages.Select(s => $"{s.MaterialName} {new StockAmount(s.ShortBy, s.Unit)}")));

    private static decimal Grams(long milligrams) => Mass.FromMilligrams(milligrams).Grams;
}
