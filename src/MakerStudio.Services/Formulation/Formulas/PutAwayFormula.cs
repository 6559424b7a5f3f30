using MakerStudio.Core.Products;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Puts a formula away, or takes it out again. Nothing is removed; its batches stay as they are.</summary>
public sealed record PutAwayFormula : StudioRequest
{
    public Guid FormulaId { get; set; }

    /// <summary>True takes it out again.</summary>
    public bool TakeOut { get; set; }
}

public sealed partial class Formulas
{
    public Task<Outcome<Nothing>> PutAwayAsync(Actor actor, PutAwayFormula request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, null, async command =>
        {
            var formula = await command.Db.Formulas.SingleOrDefaultAsync(f => f.Id == request.FormulaId, cancel);
            if (formula is null)
            {
                return new NotFound("This formula");
            }

            if (request.TakeOut && await TakenAsync(command.Db, formula.Name, ProductKinds.Get(formula.ProductKind), formula.Id, cancel) is { } taken)
            {
                return taken;
            }

            formula.ArchivedAt = request.TakeOut ? null : formula.ArchivedAt ?? command.Now;
            command.Record("formula", formula.Id, request.TakeOut ? $"Took {formula.Name} out again" : $"Put {formula.Name} away", Topics.Formulas);
            return await command.TrySaveAsync() ? Nothing.Value : (Outcome<Nothing>)new Stale("this formula", "Somebody");
        }, cancel: cancel);
}
