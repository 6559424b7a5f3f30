using MakerStudio.Core.Exchange;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Storeroom;

/// <summary>The tables of one material's page and of one lot's papers as files.</summary>
internal static class MaterialSheets
{
    private const string Page = "/storeroom/materials/{id:guid}";

    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapSheet($"{Page}/lots", "lots of a material", async asked =>
            StoreroomSheets.Lots(asked.Currency).Of(await asked.Get<Lots>().OfMaterialAsync(asked.Id("id"), asked.Cancel), asked.Zone));
        app.MapView($"{Page}/papers", "papers", (view, asked) => Papers.Of(view.Papers, asked.Zone));
        app.MapView($"{Page}/suppliers", "suppliers of a material", (view, asked) => Suppliers.Of(view.Facts.Suppliers, asked.Zone));
        app.MapView($"{Page}/formulas", "formulas with a material", (view, asked) => Formulas.Of(view.Formulas, asked.Zone));
        app.MapView($"{Page}/changes", "changes of a material", (view, asked) => Changes.Of(view.Acts, asked.Zone));
        app.MapSheet($"{Page}/composition", "composition", async asked =>
            await asked.Get<Materials>().SafetyAsync(asked.Id("id"), asked.Cancel) is { } safety ? Composition.Of(safety.Composition, asked.Zone) : null);
        app.MapSheet($"{Page}/certificate", "fragrance certificate", async asked =>
            await asked.Get<Materials>().SafetyAsync(asked.Id("id"), asked.Cancel) is { } safety ? Certificate(safety).Of(safety.CertificateLimits, asked.Zone) : null);
        app.MapSheet("/storeroom/lots/{code}/papers", "papers", async asked =>
            await asked.Get<Lots>().FindAsync(asked.Route("code"), asked.Cancel) is { } lot
                ? Papers.Of(await asked.Get<Papers>().ListAsync(lot.MaterialId, lot.Id, asked.Cancel), asked.Zone)
                : null);
    }

    private static void MapView(this IEndpointRouteBuilder app, string path, string name, Func<MaterialView, SheetAsked, Sheet> sheet) =>
        app.MapSheet(path, name, async asked => await asked.Get<Materials>().ViewAsync(asked.Id("id"), asked.Cancel) is { } view ? sheet(view, asked) : null);

    private static readonly SheetOf<PaperRow> Papers = new SheetOf<PaperRow>()
        .Text("Paper", r => PaperKinds.Name(r.Kind)).Text("Of", r => r.LotCode ?? "material").Text("Edition", r => r.Edition).Date("Edition of", r => r.EditionDate)
        .Text("File", r => r.FileName).Number("Size (bytes)", r => r.Size).Moment("Filed", r => r.AddedAt).Text("Filed by", r => r.AddedBy);

    private static readonly SheetOf<SupplierLine> Suppliers = new SheetOf<SupplierLine>()
        .Text("Supplier", r => r.Name).Text("Their code", r => r.Code).Number("Lead time (days)", r => r.LeadTimeDays).Text("Pack", r => r.PackNote)
        .Number("Least they sell (g or each)", r => r.Minimum).Number("In packs of (g or each)", r => r.Pack);

    private static readonly SheetOf<FormulaUse> Formulas = new SheetOf<FormulaUse>()
        .Text("Formula", r => r.Name).Text("Version", r => r.Number is null ? null : $"v{r.Number}")
        .Text("State", r => r.State switch { null => r.As, FormulaState.Draft => "Draft", _ when r.IsOld => "Frozen, replaced", _ => "Frozen" })
        .Number("Share (% w/w)", r => Percent(r.Fraction));

    private static readonly SheetOf<MaterialAct> Changes = new SheetOf<MaterialAct>().Moment("When", r => r.At).Text("Who", r => r.Who).Text("What", r => r.What);

    private static readonly SheetOf<SubstanceLine> Composition = new SheetOf<SubstanceLine>()
        .Text("Substance", r => r.Name).Text("CAS", r => r.Cas).Number("From (% w/w)", r => r.LowPercent).Number("To (% w/w)", r => r.HighPercent)
        .Number("Given (% w/w)", r => r.StatedPercent).Text("Classes", r => r.Hazards.Classes ?? SafetyDefault.For(r.Cas)?.Hazards.Classes)
        .Text("Classes are from", r => r.Hazards.Classes is not null ? "the supplier’s sheet" : SafetyDefault.For(r.Cas) is null ? null : "the built-in table, from memory")
        .Text("Besides", r => SafetyWords.More(r.Hazards) is { Length: > 0 } more ? more : null);

    private static SheetOf<CategoryLine> Certificate(SetSafety safety) => new SheetOf<CategoryLine>()
        .Text("Category", r => r.Category).Number("At most (% of the finished product)", r => r.MaxPercent).Text("For", r => SafetyWords.Use(r.Category))
        .Text("Amendment", _ => safety.CertificateAmendment).Date("Issued", _ => safety.CertificateIssuedOn);
}
