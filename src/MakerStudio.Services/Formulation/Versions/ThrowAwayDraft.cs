using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Removes a draft for good. Released versions stay; a formula that never had one goes with its draft.</summary>
public sealed record ThrowAwayDraft : StudioRequest
{
    public Guid VersionId { get; set; }

    /// <summary>The version the form was opened with, so that nobody throws away what they have not seen.</summary>
    public uint Version { get; set; }
}

/// <param name="FormulaGone">True when the formula had no other version and is gone too.</param>
public sealed record DraftThrownAway(string Name, int Number, bool FormulaGone);

public sealed partial class Versions
{
    public Task<Outcome<DraftThrownAway>> ThrowAwayDraftAsync(Actor actor, ThrowAwayDraft request, CancellationToken cancel = default) =>
        store.RunAsync<ThrowAwayDraft, DraftThrownAway>(actor, request, null, async command =>
        {
            var db = command.Db;
            var version = await FormulaRows.LockVersionAsync(db, request.VersionId, cancel);
            if (version is null)
            {
                return new NotFound("This draft");
            }

            if (await WhyNotEditAsync(command, version, request.Version, cancel) is { } refusal)
            {
                return refusal;
            }

            var formula = version.Formula!;
            await db.Database.ExecuteSqlAsync($"select 1 from formulas where id = {formula.Id} for update", cancel);
            var last = !await db.FormulaVersions.AnyAsync(v => v.FormulaId == formula.Id && v.Id != version.Id, cancel);
            db.FormulaVersions.Remove(version);
            if (last)
            {
                // What a pre-blend would have made stays as a material: other formulas may name it, and a new start finds it again.
                db.FormulaSizes.RemoveRange(await db.FormulaSizes.Include(s => s.Parts).Where(s => s.FormulaId == formula.Id).ToListAsync(cancel));
                db.Formulas.Remove(formula);
            }

            command.Record("formula", formula.Id, $"Threw away the draft of {formula.Name} v{version.Number}", Topics.Formulas);
            return new DraftThrownAway(formula.Name, version.Number, last);
        }, cancel: cancel);
}
