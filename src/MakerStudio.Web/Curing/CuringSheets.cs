using MakerStudio.Core.Curing;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Curing;

/// <summary>The shelf as a file.</summary>
internal static class CuringSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/curing/shelf", "curing", async asked => Shelf.Of(await asked.Get<CureShelf>().RowsAsync(asked.Cancel), asked.Zone));
        app.MapSheet("/curing/{code}/checks", "checks", async asked =>
            await asked.Get<CureShelf>().FindAsync(asked.Route("code"), asked.Cancel) is { } rest ? Checks(rest.Row.Code).Of(rest.Checks.Reverse(), asked.Zone) : null);
    }

    private static readonly SheetOf<CureRow> Shelf = new SheetOf<CureRow>()
        .Text("Batch", r => r.Code).Text("Formula", r => r.ScentName).Text("Version", r => $"v{r.VersionNumber}")
        .Text("Made as", r => ProductKinds.Find(r.ProductKind)?.Name ?? r.ProductKind).Text("Size", r => r.SizeName)
        .Number("Weighed in (g)", r => Mass.FromMilligrams(r.TargetMilligrams).Grams).Number("Units planned", r => r.PlannedUnits)
        .Text("State", r => r.State switch
        {
            CureState.DueForCheck => "Due for check",
            CureState.OnHold => "On hold",
            CureState.Ready => "Ready",
            _ => "Resting",
        })
        .Moment("Clock started", r => r.StartedAt).Moment("Minimum reached", r => r.DueAt).Moment("Ideal", r => r.IdealAt).Moment("Latest", r => r.LatestAt)
        .Moment("Last check", r => r.LastCheck?.At).Text("Checked by", r => r.LastCheck?.Initials).Number("Strength (0 to 5)", r => r.LastCheck?.Strength)
        .Text("Why on hold", r => r.HeldReason).Text("Why released early", r => r.EarlyReason);

    private static SheetOf<CheckRow> Checks(string batch) => new SheetOf<CheckRow>()
        .Text("Batch", _ => batch).Moment("When", r => r.At).Number("Strength (0 to 5)", r => r.Strength).Text("Clarity", r => CheckWords.Clarity(r.Clarity))
        .Text("Character", r => r.Character).Text("Note", r => r.Note)
        .Text("Verdict", r => CheckWords.Verdicts.Single(v => v.Value == r.Verdict).Text).Text("By", r => r.Initials);
}
