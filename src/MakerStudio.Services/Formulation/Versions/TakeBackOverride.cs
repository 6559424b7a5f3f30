using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Lets advice on a draft speak again. What a version was released with stays.</summary>
public sealed record TakeBackOverride : StudioRequest
{
    public Guid OverrideId { get; set; }
}

public sealed partial class Versions
{
    public Task<Outcome<Nothing>> TakeBackAsync(Actor actor, TakeBackOverride request, CancellationToken cancel = default) =>
        store.RunAsync<TakeBackOverride, Nothing>(actor, request, null, async command =>
        {
            var made = await command.Db.AdviceOverrides.SingleOrDefaultAsync(o => o.Id == request.OverrideId && o.TakenBackAt == null, cancel);
            if (made is null)
            {
                return new NotFound("This override");
            }

            if (await FormulaRows.LockVersionAsync(command.Db, made.FormulaVersionId, cancel) is not { State: FormulaState.Draft } version)
            {
                return new Because("This version was released with it, so it stays in the record.", "Change it as the next version and take it back there.");
            }

            made.TakenBackAt = command.Now;
            command.Record("formula version", version.Id, $"Took back “{made.Reason}” on {version.Formula!.Name} v{version.Number}", Topics.Formulas);
            return Nothing.Value;
        }, cancel: cancel);
}
