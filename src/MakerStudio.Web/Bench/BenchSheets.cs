using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Bench;

/// <summary>What is planned and on the scale, as a file.</summary>
internal static class BenchSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/bench/batches", "bench", async asked =>
        {
            var rows = await asked.Get<Batches>().OnTheBenchAsync(asked.Cancel);
            return OnTheBench.Of(Enum.TryParse<BatchState>(asked.Query("state"), out var state) ? rows.Where(r => r.State == state) : rows, asked.Zone);
        });
        app.MapSheet("/bench/{code}/lines", "to weigh", async asked =>
            await asked.Get<Batches>().PlanOfAsync(asked.Route("code"), asked.Cancel) is { } plan ? Lines(plan).Of(plan.Lines, asked.Zone) : null);
    }

    private static readonly SheetOf<BenchRow> OnTheBench = new SheetOf<BenchRow>()
        .Text("Batch", r => r.Code).Text("Formula", r => r.ScentName).Text("Version", r => $"v{r.VersionNumber}").Text("Made as", r => r.ProductName)
        .Text("State", r => r.State == BatchState.Weighing ? "Weighing" : "Planned")
        .Number("Target (g)", r => Grams(r.TargetMilligrams)).Number("Recorded (g)", r => Grams(r.RecordedMilligrams))
        .Number("Units planned", r => r.PlannedUnits).Text("Size", r => r.SizeName)
        .Number("Lines", r => r.Lines).Number("Lines done", r => r.LinesDone)
        .Text("Planned by", r => r.PlannedBy).Moment("Planned", r => r.PlannedAt)
        .Text("Weighing", r => r.WeighingBy).Moment("Weighing since", r => r.WeighingSince)
        .Text("Short of", r => string.Join("; ", r.Shortages.Select(s => $"{s.MaterialName} {new StockAmount(s.ShortBy, s.Unit)}")));

    private static SheetOf<BatchPlanLine> Lines(BatchPlan plan) => new SheetOf<BatchPlanLine>()
        .Text("Batch", _ => plan.Code).Number("Add", l => l.Position).Text("Material", l => l.MaterialName).Text("Note", l => l.Method)
        .Number("Share (% w/w)", l => Percent(l.Fraction)).Number("Target (g)", l => Grams(l.TargetMilligrams)).Number("Tolerance (± g)", l => Grams(plan.ToleranceOf(l)))
        .Number("Weighed (g)", l => Grams(l.RecordedMilligrams)).Moment("Done", l => l.DoneAt);
}
