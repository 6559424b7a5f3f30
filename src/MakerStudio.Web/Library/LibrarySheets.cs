using MakerStudio.Core.Blending;
using MakerStudio.Core.Exchange;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Library;

/// <summary>The library's tables as files.</summary>
internal static class LibrarySheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet("/library/formulas", "formulas", async asked =>
        {
            var shelf = Enum.TryParse<LibraryShelf>(asked.Query("shelf"), out var wanted) ? wanted : LibraryShelf.InUse;
            return Formulas(asked.Currency).Of(await asked.Get<Formulas>().AllAsync(shelf, asked.Query("text"), asked.Cancel), asked.Zone);
        });
        app.MapSheet("/library/lines", "formula lines", async asked =>
            Lines.Of(await asked.Get<Formulas>().LinesAsync(null, null, asked.Cancel), asked.Zone));
        app.MapSheet("/library/{id:guid}/v/{number:int}/lines", "formula lines", async asked =>
            await asked.Get<Formulas>().LinesAsync(Guid.Parse(asked.Route("id")), int.Parse(asked.Route("number")), asked.Cancel) is { Count: > 0 } lines
                ? Lines.Of(lines, asked.Zone)
                : null);
    }

    private static SheetOf<LibraryRow> Formulas(string currency) => new SheetOf<LibraryRow>()
        .Text("Formula", r => r.Name).Text("Made as", r => Said.KindName(r.ProductKind)).Text("Version", r => $"v{r.Number}")
        .Text("State", r => r.PutAway ? "Put away" : r.State == FormulaState.Draft ? "Draft" : "Released")
        .Number("Load (%)", r => r.Load?.Fraction * 100m).Text("Load is a share of", r => r.Load?.Of)
        .Number($"Cost ({currency} per 100 mL or g)", r => r.CostPerHundred).Number("Lines", r => r.Lines).Number("Things to mend", r => r.Problems)
        .Moment("Kept", r => r.KeptAt);

    internal static readonly SheetOf<FormulaLineRow> Lines = new SheetOf<FormulaLineRow>()
        .Text("Formula", r => r.Formula).Text("Made as", r => Said.KindName(r.ProductKind)).Text("Version", r => $"v{r.Number}")
        .Text("State", r => r.State == FormulaState.Draft ? "Draft" : "Released")
        .Number("Line", r => r.Position).Text("Material", r => r.Material)
        .Number("Amount (empty is the rest)", r => r.Amount).Text("Counted in", r => LineBases.Name(r.Basis))
        .Number("Share (% w/w)", r => r.Fraction * 100m).Text("Note", r => r.Note).Text("Method", r => r.Method)
        .Number("Shortest rest (h)", r => r.CureMinHours).Number("Ideal rest (h)", r => r.CureIdealHours)
        .Number("Expected loss (%)", r => r.ExpectedLossPercent);
}
