using System.Globalization;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Services.Exchange;

/// <summary>Reads the rows of one formula and says what is wrong with each.</summary>
internal sealed class FormulaRowsReader(FormulasHere here)
{
    private static readonly NewFormulaValidator NameShape = new();
    private static readonly (string, ProductKind)[] Kinds = [.. ProductKinds.All.Select(k => (k.Name, k))];

    /// <summary>More than a draft may have, so that the validator says it.</summary>
    private const decimal LargestHours = 1_000_000m;

    public FormulasHere Here => here;

    public TypedFormula Read(IReadOnlyList<CsvCells> rows)
    {
        var head = rows[0];
        var name = head.Text(FormulaTable.FormulaColumn);
        if (name is null)
        {
            Refuse(rows, FormulaTable.FormulaColumn, "No formula is named.");
        }

        var kind = KindOf(rows);
        var lines = rows.Select(r => (Cells: r, Line: LineOf(r), At: r.Number(FormulaTable.Line, 0))).ToList();
        JudgeOrder(lines.ConvertAll(l => (l.Cells, l.At)));
        var ordered = lines.OrderBy(l => l.At ?? 0).ToList();
        AgreeOnTheWhole(rows);
        var draft = DraftOf(ordered.ConvertAll(l => l.Cells), kind, ordered.ConvertAll(l => l.Line));
        var typed = ordered.Select(l => l.Line).OfType<BroughtLine>().ToList();
        var skip = name is not null && kind is not null && rows.All(r => r.Problems.Count == 0) ? JudgeKnown(head, name, kind, typed) : null;
        return new TypedFormula(name ?? "", kind, typed, draft, [.. lines.Select(l => new CheckedRow(l.Cells, Say(name, kind, l.Cells, l.Line), skip))]);
    }

    private static ProductKind? KindOf(IReadOnlyList<CsvCells> rows)
    {
        var text = rows[0].Text(FormulaTable.MadeAs);
        var kind = Kinds.FirstOrDefault(k => string.Equals(k.Item1, text, StringComparison.OrdinalIgnoreCase) || string.Equals(k.Item2.Key, text, StringComparison.OrdinalIgnoreCase)).Item2;
        if (kind is null)
        {
            Refuse(rows, FormulaTable.MadeAs, text is null ? "Say what it is made as." : $"“{text}” is none of: {string.Join("; ", Kinds.Select(k => k.Item1))}.");
        }

        return kind;
    }

    private BroughtLine? LineOf(CsvCells cells)
    {
        var material = cells.Text(FormulaTable.MaterialColumn);
        if ((material is null ? "No material is named." : here.WhyNot(material)) is { } whyNot)
        {
            cells.Refuse(FormulaTable.MaterialColumn, whyNot);
        }

        var amount = cells.Number(FormulaTable.Amount);
        var (basis, why) = cells.Text(FormulaTable.CountedIn) is { } text ? LineBases.Read(text) : (null, "Say what the amount is counted in.");
        if (why is not null)
        {
            cells.Refuse(FormulaTable.CountedIn, why);
        }

        return material is null || basis is not { } known ? null : new BroughtLine(material, amount, known, cells.Text(FormulaTable.Note));
    }

    private static void JudgeOrder(List<(CsvCells Cells, decimal? At)> rows)
    {
        var seen = new Dictionary<decimal, long>();
        foreach (var (cells, at) in rows.Where(r => r.Cells.Problems.All(p => p.Field != FormulaTable.Line)))
        {
            if (at is null && rows.Exists(r => r.At is not null))
            {
                cells.Refuse(FormulaTable.Line, "Other rows of this formula say their place, this one does not.");
            }
            else if (at is { } place && !seen.TryAdd(place, cells.Line))
            {
                cells.Refuse(FormulaTable.Line, $"Line {seen[place]} has this place in the formula too.");
            }
        }
    }

    private static void AgreeOnTheWhole(IReadOnlyList<CsvCells> rows)
    {
        foreach (var column in FormulaTable.OfTheWhole)
        {
            var first = rows.FirstOrDefault(r => r.Text(column) is not null);
            foreach (var other in rows.Where(r => r.Text(column) is { } text && text != first!.Text(column)))
            {
                other.Refuse(column, column == FormulaTable.Version
                    ? $"The rows of this formula are of {first!.Text(column)} and {other.Text(column)}. Keep those of one."
                    : $"Line {first!.Line} says otherwise of this formula.");
            }
        }
    }

    /// <summary>By the rules of the draft's own form.</summary>
    private static KeepDraft DraftOf(IReadOnlyList<CsvCells> rows, ProductKind? kind, List<BroughtLine?> lines)
    {
        CsvCells Of(string column) => rows.FirstOrDefault(r => r.Text(column) is not null) ?? rows[0];
        int? Hours(string column) => Of(column).Number(column, 0) is { } hours ? (int)Math.Min(hours, LargestHours) : null;
        var shortest = Hours(FormulaTable.ShortestRest) ?? (int)(kind?.CureMin.TotalHours ?? 0);
        var draft = new KeepDraft
        {
            Method = Of(FormulaTable.Method).Text(FormulaTable.Method), CureMinHours = shortest,
            CureIdealHours = Hours(FormulaTable.IdealRest) ?? Math.Max(shortest, (int)(kind?.CureIdeal.TotalHours ?? 0)),
            ExpectedLossPercent = Of(FormulaTable.ExpectedLoss).Number(FormulaTable.ExpectedLoss) ?? (kind is null ? 0 : Formulas.InPercent(kind.ExpectedLossFraction)),
            Lines = [.. lines.Select(l => new KeptLine { Amount = l?.Amount, Basis = l?.Basis ?? LineBasis.Grams, Method = l?.Note })],
        };
        foreach (var error in Versions.KeepShape.Validate(draft).Errors.Concat(NameShape.Validate(new NewFormula { Name = rows[0].Text(FormulaTable.FormulaColumn) ?? "-", ProductKind = ProductKinds.All[0].Key }).Errors))
        {
            var (cells, column) = error.PropertyName switch
            {
                nameof(NewFormula.Name) => (rows[0], FormulaTable.FormulaColumn),
                nameof(KeepDraft.Method) => (Of(FormulaTable.Method), FormulaTable.Method),
                nameof(KeepDraft.CureMinHours) => (Of(FormulaTable.ShortestRest), FormulaTable.ShortestRest),
                nameof(KeepDraft.CureIdealHours) => (Of(FormulaTable.IdealRest), FormulaTable.IdealRest),
                nameof(KeepDraft.ExpectedLossPercent) => (Of(FormulaTable.ExpectedLoss), FormulaTable.ExpectedLoss),
                var path => OfLine(path),
            };
            cells.Refuse(column, error.ErrorMessage);
        }

        return draft;

        (CsvCells, string) OfLine(string path)
        {
            var open = path.IndexOf('[', StringComparison.Ordinal);
            var at = open < 0 ? 0 : int.Parse(path.AsSpan()[(open + 1)..path.IndexOf(']', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
            return (rows[at], open < 0 ? FormulaTable.FormulaColumn : path.EndsWith(nameof(KeptLine.Method), StringComparison.Ordinal) ? FormulaTable.Note : FormulaTable.Amount);
        }
    }

    private string? JudgeKnown(CsvCells head, string name, ProductKind kind, List<BroughtLine> typed)
    {
        if (here.Lines(name, kind) is not { } known)
        {
            return null;
        }

        if (FormulasHere.AreSame(known, typed))
        {
            return "It is here already, with these lines.";
        }

        head.Refuse(FormulaTable.FormulaColumn, $"There is already a {kind.Name.ToLowerInvariant()} called {name}, with other lines. Give this one a name of its own, or take its rows out.");
        return null;
    }

    private static string Say(string? name, ProductKind? kind, CsvCells cells, BroughtLine? line)
    {
        var whole = string.Join(", ", new[] { name, kind?.Name ?? cells.Text(FormulaTable.MadeAs) }.OfType<string>());
        var part = line is null ? cells.Text(FormulaTable.MaterialColumn)
            : line.Amount is { } amount ? $"{line.Material} {QuantityFormat.Editable(amount, CultureInfo.CurrentCulture)} {LineBases.Name(line.Basis)}" : $"{line.Material}, the rest";
        return part is null ? whole : $"{whole}: {part}";
    }

    private static void Refuse(IReadOnlyList<CsvCells> rows, string column, string why)
    {
        foreach (var row in rows)
        {
            row.Refuse(column, why);
        }
    }
}
