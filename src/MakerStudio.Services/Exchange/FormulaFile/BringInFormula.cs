using FluentValidation;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>Brings a file of the open format in as a new formula with one draft, and the materials that are not here yet. All or nothing.</summary>
public sealed record BringInFormula : StudioRequest
{
    /// <summary>The file's text.</summary>
    public string Json { get; set; } = "";

    /// <summary>What the formula is to be called here; empty takes the file's name for it.</summary>
    public string? Name { get; set; }
}

public sealed class BringInFormulaValidator : AbstractValidator<BringInFormula>
{
    public const int MostCharacters = 1024 * 1024;

    public BringInFormulaValidator()
    {
        RuleFor(r => r.Json).Must(json => json.Length <= MostCharacters).WithMessage("The file is larger than 1 MB. It is none of a formula; choose another.");
        RuleFor(r => r.Name).OneLine("The name", Formulas.LongestName);
    }
}

/// <param name="Added">Names of the materials that were added.</param>
public sealed record FormulaBroughtIn(Guid FormulaId, string Name, IReadOnlyList<string> Added);

/// <summary>The file cannot be brought in as it is.</summary>
public sealed record FileHasFaults(IReadOnlyList<FileFault> Faults) : Refusal
{
    public override string Happened => Faults.Count == 1 ? "The file has a fault." : $"The file has {Faults.Count} faults.";
    public override string Kept => "Nothing was brought in.";
    public override string ToDo => "Mend it where it was made, then choose it once more.";
}

public sealed partial class FormulaFiles
{
    private static readonly BringInFormulaValidator Shape = new();

    public Task<Outcome<FormulaBroughtIn>> BringInAsync(Actor actor, BringInFormula request, CancellationToken cancel = default) =>
        store.RunAsync<BringInFormula, FormulaBroughtIn>(actor, request, Shape, async command =>
        {
            var (document, faults) = Read(request.Json);
            if (document is null)
            {
                return new FileHasFaults(faults);
            }

            var name = string.IsNullOrWhiteSpace(request.Name) ? document.Name : request.Name.Trim();
            if (await Formulas.TakenAsync(command.Db, name, document.Kind, null, cancel) is { } taken)
            {
                return taken;
            }

            var seen = await SeeAsync(command.Db, document, cancel);
            var ids = new Dictionary<string, Guid>(StringComparer.Ordinal);
            foreach (var (material, found) in document.Materials.Zip(seen))
            {
                if (found.MaterialId is { } known)
                {
                    ids.Add(material.Key, known);
                }
                else if (await Materials.NameTakenAsync(command, material.Facts.Name, null, cancel) is { } since)
                {
                    return since;
                }
                else
                {
                    ids.Add(material.Key, Add(command, material));
                }
            }

            if (await NotWeighedAsync(command, ids.Values, cancel) is { } refusal)
            {
                return refusal;
            }

            var formula = await FormulaOfAsync(command, document, name, ids, cancel);
            command.Db.Formulas.Add(formula);
            command.Record("formula", formula.Id, $"Brought in {name}, {document.Kind.Name}, from a file", Topics.Formulas);
            return new FormulaBroughtIn(formula.Id, name, [.. seen.Where(each => each.MaterialId is null).Select(each => each.Name)]);
        }, cancel: cancel);

    private static Guid Add(Command command, FileMaterial material)
    {
        var row = new Material { Name = material.Facts.Name, CreatedAt = command.Now };
        Materials.Fill(row, MaterialForms.FormOf(material));
        command.Db.Materials.Add(row);
        if (MaterialForms.SaysAnything(material.Facts))
        {
            var safety = new MaterialSafety { MaterialId = row.Id };
            Materials.Fill(safety, MaterialForms.SafetyOf(material.Facts));
            command.Db.MaterialSafety.Add(safety);
        }

        command.Record("material", row.Id, $"Added {row.Name}, from the file of a formula", Topics.Materials);
        return row.Id;
    }

    /// <summary>A material that was found by its name may be counted in pieces here.</summary>
    private static async Task<Because?> NotWeighedAsync(Command command, IEnumerable<Guid> ids, CancellationToken cancel)
    {
        Guid[] found = [.. ids];
        var counted = await command.Db.Materials.Where(m => found.Contains(m.Id) && m.StockedIn != StockUnit.Gram).Select(m => m.Name).FirstOrDefaultAsync(cancel);
        return counted is null ? null : new Because($"{counted} is counted in pieces here, so no formula can hold it.", "Give the material another name in the file.");
    }

    private static async Task<Formula> FormulaOfAsync(
        Command command, FormulaDocument document, string name, Dictionary<string, Guid> ids, CancellationToken cancel)
    {
        var kind = document.Kind;
        var measured = document.Measured;
        var draft = Formulas.FirstDraft(command, kind);
        draft.Method = document.Note;
        (draft.MeasuredDensity, draft.MeasuredFlashPoint, draft.MeasuredBoilingPoint) = (measured.Density?.GramsPerMillilitre, measured.FlashPoint?.Degrees, measured.BoilingPoint?.Degrees);
        (draft.SustainsCombustion, draft.MeasuredViscosity, draft.MeasuredPh) = (measured.SustainsCombustion, measured.ViscosityMm2PerSecond, measured.Ph);
        draft.Lines.AddRange(document.Lines.Select((line, i) => new FormulaLine
        {
            Position = i + 1, MaterialId = ids[line.Material], Amount = line.Amount, Basis = line.Basis,
        }));
        return new()
        {
            Name = name, ProductKind = kind.Key, CreatedAt = command.Now, Versions = { draft },
            EnoughScentPercent = document.EnoughScentPercent is > 0 ? document.EnoughScentPercent : null,
            MakesMaterialId = kind.IsSold ? null : await Formulas.MadeMaterialAsync(command, name, cancel),
        };
    }
}
