using MakerStudio.Core.Allergens;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using MakerStudio.Web.Shell.Sheets;
using static MakerStudio.Web.Shell.Sheets.SheetNumbers;

namespace MakerStudio.Web.Library.Workbench;

/// <summary>What follows from a version, and versions beside one another, as files. A draft counts as it was kept last.</summary>
internal static class VersionSheets
{
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapFormula("versions", "versions", (sheet, asked) => Versions(sheet).Of(sheet.Versions, asked.Zone));
        app.MapFormula("sizes", "sizes", (sheet, asked) => Sizes(sheet).Of(sheet.Sizes.Where(s => s.RetiredAt is null), asked.Zone));
        app.MapFormula("v/{number:int}/allergens", "allergens", (sheet, asked) =>
            sheet.Versions.FirstOrDefault(v => v.Number == int.Parse(asked.Route("number"))) is { } version && Consequences.Of(sheet, version).Result is { } result
                ? Allergens.Of(result.Allergens.Found, asked.Zone)
                : null);
        app.MapSheet("/library/{id:guid}/compare/lines", "compared lines", async asked =>
            await PairAsync(asked) is { } pair ? pair.Columns(Lines).Of(Compared.Lines(pair.Old, pair.New, pair.Sheet, pair.OldSheet), asked.Zone) : null);
        app.MapSheet("/library/{id:guid}/compare/follows", "compared results", async asked =>
            await PairAsync(asked) is { } pair ? pair.Columns(Follows).Of(Compared.Results(pair.Old, pair.New), asked.Zone) : null);
    }

    private static void MapFormula(this IEndpointRouteBuilder app, string what, string name, Func<FormulaSheet, SheetAsked, Sheet?> sheet) =>
        app.MapSheet($"/library/{{id:guid}}/{what}", name, async asked =>
            await asked.Get<Formulas>().ReadAsync(asked.Id("id"), asked.Cancel) is { } formula ? sheet(formula, asked) : null);

    private static SheetOf<VersionRow> Versions(FormulaSheet sheet) => new SheetOf<VersionRow>()
        .Text("Formula", _ => sheet.Formula.Name).Text("Version", v => $"v{v.Number}").Text("State", v => v.IsDraft ? "Draft" : "Frozen")
        .Text("By", v => v.ReleasedBy ?? v.CreatedBy).Moment("Since", v => v.ReleasedAt ?? v.CreatedAt)
        .Text("What changed", v => sheet.Before(v) is { } before ? Said.Changes(VersionChanges.Between(sheet, before, v)) : null).Text("Why", v => v.Why)
        .Number("Batches", v => v.Batches);

    private static SheetOf<SizeRow> Sizes(FormulaSheet sheet) => new SheetOf<SizeRow>()
        .Text("Formula", _ => sheet.Formula.Name).Text("Size", s => s.Name).Number("Nominal (mL)", s => s.NominalMillilitres).Number("Nominal (g)", s => Grams(s.NominalMilligrams))
        .Number("Overfill (g)", s => Grams(s.OverfillMilligrams))
        .Text("Packaging", s => string.Join("; ", s.Parts.Select(p => $"{p.CountPerUnit} × {sheet.Materials[p.MaterialId].Name}")));

    private static readonly SheetOf<AllergenShare> Allergens = new SheetOf<AllergenShare>()
        .Text("Allergen", a => a.Allergen.Name).Number("Share (% of the product)", a => a.Percent).Text("Declared", a => a.IsDeclared ? "yes" : "no");

    private static SheetOf<ComparedLine> Lines(string old, string now) => new SheetOf<ComparedLine>()
        .Text("Material", l => l.Material).Number($"{old} (% w/w)", l => l.Old).Number($"{now} (% w/w)", l => l.New);

    private static SheetOf<ComparedResult> Follows(string old, string now) => new SheetOf<ComparedResult>()
        .Text("What follows", r => r.What).Text(old, r => r.Old).Text(now, r => r.New);

    /// <summary>The two versions that are asked for; null where one is not there or does not add up.</summary>
    private static async Task<Pair?> PairAsync(SheetAsked asked)
    {
        var one = await asked.Get<Formulas>().ReadAsync(asked.Id("id"), asked.Cancel);
        var beside = asked.QueryId("with") is { } other && other != asked.Id("id") ? await asked.Get<Formulas>().ReadAsync(other, asked.Cancel) : one;
        if (one?.Versions.FirstOrDefault(v => v.Number == asked.QueryNumber("a")) is not { } old
            || beside?.Versions.FirstOrDefault(v => v.Number == asked.QueryNumber("b")) is not { } now)
        {
            return null;
        }

        var pair = new Pair(one, Consequences.Of(one, old), beside, Consequences.Of(beside, now));
        return pair is { Old.Worked.AddsUp: true, New.Worked.AddsUp: true } ? pair : null;
    }

    private sealed record Pair(FormulaSheet OldSheet, Consequences Old, FormulaSheet Sheet, Consequences New)
    {
        /// <summary>Headed by what tells the two apart; a version beside itself gets a second heading.</summary>
        public SheetOf<T> Columns<T>(Func<string, string, SheetOf<T>> columns)
        {
            string Name(FormulaSheet sheet, Consequences of) => OldSheet == Sheet ? $"v{of.Version.Number}" : $"{sheet.Formula.Name} v{of.Version.Number}";
            var (old, now) = (Name(OldSheet, Old), Name(Sheet, New));
            return columns(old, now == old ? $"{now} again" : now);
        }
    }
}
