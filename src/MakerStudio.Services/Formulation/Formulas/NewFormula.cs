using FluentValidation;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Starts a formula with an empty draft that carries the defaults of its product kind.</summary>
public sealed record NewFormula : StudioRequest
{
    public string Name { get; set; } = "";
    public string ProductKind { get; set; } = "";
}

public sealed class NewFormulaValidator : AbstractValidator<NewFormula>
{
    public NewFormulaValidator()
    {
        RuleFor(r => r.Name).OneLine("The name", Formulas.LongestName);
        RuleFor(r => r.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("The scent needs a name.");
        RuleFor(r => r.ProductKind).Must(k => ProductKinds.Find(k) is not null).WithMessage("Choose what it is made as.");
    }
}

/// <param name="VersionId">The empty draft, v1.</param>
public sealed record FormulaStarted(Guid FormulaId, Guid VersionId);

/// <summary>A formula of this name and kind is in use.</summary>
public sealed record FormulaNameTaken(string Name, string KindName, Guid FormulaId) : Refusal
{
    public override string Happened => $"There is already a {KindName} called {Name}.";
    public override string ToDo => "Open that one, or give this a name of its own.";
}

public sealed partial class Formulas
{
    private static readonly NewFormulaValidator NewShape = new();

    public Task<Outcome<FormulaStarted>> NewAsync(Actor actor, NewFormula request, CancellationToken cancel = default) =>
        store.RunAsync<NewFormula, FormulaStarted>(actor, request, NewShape, async command =>
        {
            var kind = ProductKinds.Get(request.ProductKind);
            var name = request.Name.Trim();
            if (await TakenAsync(command.Db, name, kind, null, cancel) is { } taken)
            {
                return taken;
            }

            var draft = FirstDraft(command, kind);
            var formula = new Formula { Name = name, ProductKind = kind.Key, CreatedAt = command.Now, Versions = { draft } };
            formula.MakesMaterialId = kind.IsSold ? null : await MadeMaterialAsync(command, name, cancel);
            command.Db.Formulas.Add(formula);
            command.Record("formula", formula.Id, $"Started {name}, {kind.Name}", Topics.Formulas);
            return new FormulaStarted(formula.Id, draft.Id);
        }, cancel: cancel);

    /// <summary>An empty v1 with the defaults of its kind.</summary>
    internal static FormulaVersion FirstDraft(Command command, ProductKind kind) => new()
    {
        Number = 1, State = FormulaState.Draft,
        CureMinHours = (int)kind.CureMin.TotalHours, CureIdealHours = (int)kind.CureIdeal.TotalHours,
        ExpectedLossPercent = InPercent(kind.ExpectedLossFraction),
        CreatedById = command.PersonId, CreatedAt = command.Now, KeptAt = command.Now,
    };

    /// <summary>1.5 rather than 1.500: it stands in a field.</summary>
    internal static decimal InPercent(decimal fraction) => fraction * 100m / 1.0000000000000000000000000000m;

    /// <summary>What a pre-blend becomes on the shelf: the material of that name which nothing makes yet, or a new one.</summary>
    internal static async Task<Guid> MadeMaterialAsync(Command command, string name, CancellationToken cancel)
    {
        var same = PlainText.SamePattern(name);
        var found = await command.Db.Materials
            .Where(m => m.Kind == MaterialKind.PreBlend && m.StockedIn == StockUnit.Gram && m.ArchivedAt == null && EF.Functions.ILike(m.Name, same)
                && !command.Db.Formulas.Any(f => f.MakesMaterialId == m.Id))
            .Select(m => (Guid?)m.Id).FirstOrDefaultAsync(cancel);
        if (found is { } id)
        {
            return id;
        }

        var material = new Material { Name = name, Kind = MaterialKind.PreBlend, StockedIn = StockUnit.Gram, CreatedAt = command.Now };
        command.Db.Materials.Add(material);
        command.Record("material", material.Id, $"Added {name}, made here as a pre-blend", Topics.Materials);
        return material.Id;
    }

    internal static async Task<FormulaNameTaken?> TakenAsync(StudioDb db, string name, ProductKind kind, Guid? except, CancellationToken cancel)
    {
        var same = PlainText.SamePattern(name);
        var other = await db.Formulas
            .Where(f => f.ProductKind == kind.Key && f.ArchivedAt == null && EF.Functions.ILike(f.Name, same) && f.Id != except)
            .Select(f => new { f.Id, f.Name }).FirstOrDefaultAsync(cancel);
        return other is null ? null : new(other.Name, kind.Name, other.Id);
    }
}
