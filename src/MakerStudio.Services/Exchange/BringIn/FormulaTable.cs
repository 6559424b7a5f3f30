using System.Globalization;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Products;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Exchange;

/// <summary>
/// A file of formulas, one row a line: each formula becomes a draft. One that is here with the same lines is skipped; one
/// of the same name and kind with others is refused.
/// </summary>
internal static class FormulaTable
{
    public const string FormulaColumn = "Formula";
    public const string MadeAs = "Made as";
    public const string Version = "Version";
    public const string Line = "Line";
    public const string MaterialColumn = "Material";
    public const string Amount = "Amount (empty is the rest)";
    public const string CountedIn = "Counted in";
    public const string Note = "Note";
    public const string Method = "Method";
    public const string ShortestRest = "Shortest rest (h)";
    public const string IdealRest = "Ideal rest (h)";
    public const string ExpectedLoss = "Expected loss (%)";

    /// <summary>They belong to the whole formula and stand in each of its rows, or in its first.</summary>
    public static readonly IReadOnlyList<string> OfTheWhole = [Version, Method, ShortestRest, IdealRest, ExpectedLoss];

    public static IReadOnlyList<FileColumn> Columns { get; } =
    [
        new(FormulaColumn, CellKind.Text, "The scent’s name; rows of one name and kind are one formula.", true),
        new(MadeAs, CellKind.Text, string.Join("; ", ProductKinds.All.Select(k => k.Name)) + ".", true),
        new(MaterialColumn, CellKind.Text, "Its name in the storeroom. Bring the materials in first.", true),
        new(Amount, CellKind.Number, "Empty is the rest.", true),
        new(CountedIn, CellKind.Text, string.Join(", ", Enum.GetValues<LineBasis>().Select(LineBases.Name)) + ".", true),
        new(Line, CellKind.Number, "Order of addition; without it the rows are taken in their order."),
        new(Note, CellKind.Text, "Of the line."),
        new(Method, CellKind.Text, "Of the formula, one step a line of text."),
        new(ShortestRest, CellKind.Number, "Empty takes what is usual for the kind, as the two that follow."),
        new(IdealRest, CellKind.Number, "Not below the shortest."),
        new(ExpectedLoss, CellKind.Number, "What stays in vessel and filter."),
        new(Version, CellKind.Text, "Not kept: what comes in is a draft. All rows of a formula have one."),
    ];

    public static async Task<CheckedFile> CheckAsync(TypedFile file, CheckContext context)
    {
        var reader = new FormulaRowsReader(await FormulasHere.OfAsync(file, context));
        var rows = new List<CheckedRow>();
        var add = new List<TypedFormula>();
        foreach (var group in file.Rows.GroupBy(r => (Name: r.Text(FormulaColumn)?.ToLowerInvariant(), MadeAs: r.Text(MadeAs)?.ToLowerInvariant())))
        {
            var formula = reader.Read([.. group]);
            rows.AddRange(formula.Rows);
            if (formula.Rows.All(r => r.Fate == RowFate.New))
            {
                add.Add(formula);
            }
        }

        var makes = add.Count == 1 ? "1 formula as a draft" : $"{add.Count.ToString("N0", CultureInfo.CurrentCulture)} formulas as drafts";
        return new CheckedFile([.. rows.OrderBy(r => r.Cells.Line)], makes, (command, cancel) => PutAsync(command, add, reader.Here, cancel));
    }

    /// <summary>What pre-blends become is there before any line can name it.</summary>
    private static async Task PutAsync(Command command, List<TypedFormula> add, FormulasHere here, CancellationToken cancel)
    {
        var ids = new Dictionary<string, Guid>();
        foreach (var blend in add.Where(f => !f.Kind!.IsSold))
        {
            ids[FormulasHere.Key(blend.Name)] = await Formulas.MadeMaterialAsync(command, blend.Name, cancel);
        }

        foreach (var typed in add)
        {
            var draft = Formulas.FirstDraft(command, typed.Kind!);
            (draft.Method, draft.CureMinHours, draft.CureIdealHours, draft.ExpectedLossPercent) = (typed.Draft.Method, typed.Draft.CureMinHours, typed.Draft.CureIdealHours, typed.Draft.ExpectedLossPercent);
            draft.Lines.AddRange(typed.Lines.Select((l, i) => new FormulaLine
            {
                Position = i + 1, MaterialId = here.Weighed(l.Material) ?? ids[FormulasHere.Key(l.Material)], Amount = l.Amount, Basis = l.Basis, Method = l.Note,
            }));
            var formula = new Formula { Name = typed.Name, ProductKind = typed.Kind!.Key, CreatedAt = command.Now, Versions = { draft }, MakesMaterialId = typed.Kind.IsSold ? null : ids[FormulasHere.Key(typed.Name)] };
            command.Db.Formulas.Add(formula);
            command.Record("formula", formula.Id, $"Brought in {typed.Name}, {typed.Kind.Name}, from a file", Topics.Formulas);
        }
    }
}

/// <param name="Material">Its name.</param>
/// <param name="Amount">Null is the rest.</param>
internal sealed record BroughtLine(string Material, decimal? Amount, LineBasis Basis, string? Note);

/// <summary>A formula as its rows say it.</summary>
/// <param name="Kind">Null where its rows are refused.</param>
/// <param name="Draft">Method, rest and loss; shaped as a kept draft so that its rules hold.</param>
internal sealed record TypedFormula(string Name, ProductKind? Kind, IReadOnlyList<BroughtLine> Lines, KeepDraft Draft, IReadOnlyList<CheckedRow> Rows);
