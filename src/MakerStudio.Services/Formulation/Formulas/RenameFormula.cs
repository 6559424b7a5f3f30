using FluentValidation;
using MakerStudio.Core.Products;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Gives a formula another name. Batches keep the name they were made under.</summary>
public sealed record RenameFormula : StudioRequest
{
    public Guid FormulaId { get; set; }
    public string Name { get; set; } = "";

    /// <summary>The formula row's version the form was opened with.</summary>
    public uint Version { get; set; }
}

public sealed class RenameFormulaValidator : AbstractValidator<RenameFormula>
{
    public RenameFormulaValidator()
    {
        RuleFor(r => r.Name).OneLine("The name", Formulas.LongestName);
        RuleFor(r => r.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("The scent needs a name.");
    }
}

public sealed partial class Formulas
{
    private static readonly RenameFormulaValidator RenameShape = new();

    public Task<Outcome<Nothing>> RenameAsync(Actor actor, RenameFormula request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, RenameShape, async command =>
        {
            var formula = await command.Db.Formulas.SingleOrDefaultAsync(f => f.Id == request.FormulaId, cancel);
            if (formula is null)
            {
                return new NotFound("This formula");
            }

            var name = request.Name.Trim();
            if (await TakenAsync(command.Db, name, ProductKinds.Get(formula.ProductKind), formula.Id, cancel) is { } taken)
            {
                return taken;
            }

            command.ExpectVersion(formula, request.Version);
            command.Record("formula", formula.Id, $"Renamed {formula.Name} to {name}", Topics.Formulas);
            formula.Name = name;
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale("this formula", "Somebody");
        }, cancel: cancel);
}
