using System.Globalization;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange;

/// <summary>A file of materials. One that is here as it stands is skipped; one that is here otherwise is refused, never overwritten.</summary>
internal static class MaterialTable
{
    /// <summary>What stands at the head of a preview's row: name to flash point.</summary>
    private const int FieldsTold = 7;

    /// <summary>Taken, and said, where a file gives a density and no temperature: sheets nearly always state 20 °C (common practice, no source).</summary>
    private const decimal UsualDensityCelsius = 20m;

    public static IReadOnlyList<FileColumn> Columns { get; } = [.. MaterialColumns.All.Select(c => c.Told)];

    private static string NameColumn => Columns[0].Heading;

    public static async Task<CheckedFile> CheckAsync(TypedFile file, CheckContext context)
    {
        if (context.Command is { } command)
        {
            await Materials.LockNamesAsync(command, context.Cancel);
        }

        var here = (await Materials.FormsAsync(context.Db, context.Cancel)).ToLookup(m => Key(m.Name));
        var first = new Dictionary<string, long>();
        var add = new List<MaterialForm>();
        var rows = new List<CheckedRow>();
        foreach (var cells in file.Rows)
        {
            var known = here[Key(cells.Text(NameColumn))].FirstOrDefault();
            MaterialForm form = known is null ? New(cells) : Known(cells, known);
            if (Key(form.Name).Length > 0 && !first.TryAdd(Key(form.Name), cells.Line))
            {
                cells.Refuse(NameColumn, $"This name stands on line {first[Key(form.Name)]} too. Keep one row of it.");
            }

            if (known is not null && cells.Problems.Count == 0 && MaterialFields.Compare(known, known, form) is { Count: > 0 } differences)
            {
                cells.Refuse(NameColumn, $"It is here already, with {Told(differences)}. Change it on its own page, or take this row out.");
            }

            rows.Add(new CheckedRow(cells, Say(form), known is null ? null : "It is here already, just so.", Note(cells, form)));
            if (known is null && cells.Problems.Count == 0)
            {
                add.Add(form);
            }
        }

        return new CheckedFile(rows, add.Count == 1 ? "1 material" : $"{add.Count.ToString("N0", CultureInfo.CurrentCulture)} materials", (to, cancel) => PutAsync(to, add, cancel));
    }

    private static async Task PutAsync(Command command, List<MaterialForm> add, CancellationToken cancel)
    {
        foreach (var form in add)
        {
            var row = await Materials.PutAsync(command, form, cancel);
            command.Record("material", row.Id, $"Added {row.Name}, from a file", Topics.Materials);
        }
    }

    private static AddMaterial New(CsvCells cells)
    {
        var form = new AddMaterial();
        var (name, kind) = (MaterialColumns.All[0], MaterialColumns.All[1]);
        name.Take(form, cells, name.Told.Heading);
        kind.Take(form, cells, kind.Told.Heading);
        if (form.Kind is { } chosen)
        {
            (form.StockedIn, form.RequiredPapers) = (MaterialKinds.DefaultStockUnit(chosen), [.. MaterialKinds.DefaultPapers(chosen)]);
        }

        Take(form, cells, MaterialColumns.All.Skip(2));
        form.DensityAtCelsius ??= form.Density is null ? null : UsualDensityCelsius;
        Judge(form, cells);
        return form;
    }

    /// <summary>What the file says of a material that is here; an empty cell says nothing, capitals of its name neither.</summary>
    private static ChangeMaterial Known(CsvCells cells, ChangeMaterial known)
    {
        var form = known.Copy<ChangeMaterial>();
        Take(form, cells, MaterialColumns.All.Skip(1));
        Judge(form, cells);
        return form;
    }

    private static void Take(MaterialForm form, CsvCells cells, IEnumerable<MaterialColumns.Column> columns)
    {
        foreach (var column in columns.Where(c => cells.Text(c.Told.Heading) is not null))
        {
            column.Take(form, cells, column.Told.Heading);
        }
    }

    /// <summary>By the rules of the form; a column that could not be read is not judged a second time.</summary>
    private static void Judge(MaterialForm form, CsvCells cells)
    {
        foreach (var error in Materials.FormShape.Validate(form).Errors)
        {
            var property = error.PropertyName.Split('[')[0];
            var heading = MaterialColumns.All.FirstOrDefault(c => c.Property == property)?.Told.Heading ?? NameColumn;
            if (cells.Problems.All(p => p.Field != heading))
            {
                cells.Refuse(heading, error.ErrorMessage);
            }
        }
    }

    private static string? Note(CsvCells cells, MaterialForm form) =>
        form.DensityAtCelsius is not null && cells.Text(MaterialColumns.DensityAt) is null ? "No temperature stands beside the density: taken at 20 °C." : null;

    private static string Told(IReadOnlyList<MaterialDifference> differences) =>
        string.Join(", ", differences.Select(d => $"{d.Field.Label.ToLowerInvariant()} {(d.Theirs.Length == 0 ? "not stated" : d.Theirs)} and not {d.Yours}"));

    private static string Key(string? name) => name?.Trim().ToLowerInvariant() ?? "";

    private static string Say(MaterialForm form) => string.Join(", ", MaterialFields.All.Take(FieldsTold).Select(f => f.Read(form)).Where(t => t.Length > 0));
}
