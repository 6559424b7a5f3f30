using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Changes a released version by starting the next one as a draft with the same lines.</summary>
public sealed record StartDraft : StudioRequest
{
    public Guid FromVersionId { get; set; }
}

public sealed record DraftStarted(Guid FormulaId, Guid VersionId, int Number);

/// <summary>A formula has one draft at a time.</summary>
public sealed record DraftExists(int Number) : Refusal
{
    public override string Happened => $"v{Number} is already being written.";
    public override string ToDo => "Go on with that draft, or release it first.";
}

public sealed partial class Versions
{
    public Task<Outcome<DraftStarted>> StartDraftAsync(Actor actor, StartDraft request, CancellationToken cancel = default) =>
        store.RunAsync<StartDraft, DraftStarted>(actor, request, null, async command =>
        {
            var db = command.Db;
            var from = await FormulaRows.LockVersionAsync(db, request.FromVersionId, cancel);
            if (from is null)
            {
                return new NotFound("This version");
            }

            if (from.Formula!.ArchivedAt is not null)
            {
                return new PutAwayFirst(from.Formula.Name);
            }

            // One draft a formula: two people starting at once wait here, and the second is told.
            await db.Database.ExecuteSqlAsync($"select 1 from formulas where id = {from.FormulaId} for update", cancel);
            var others = await db.FormulaVersions.Where(v => v.FormulaId == from.FormulaId).Select(v => new { v.Number, v.State }).ToListAsync(cancel);
            if (others.FirstOrDefault(v => v.State == FormulaState.Draft) is { } draft)
            {
                return new DraftExists(draft.Number);
            }

            await db.Entry(from).Collection(v => v.Overrides).LoadAsync(cancel);
            var next = Copy(from, others.Max(v => v.Number) + 1, command);
            db.FormulaVersions.Add(next);
            command.Record("formula version", next.Id, $"Started {from.Formula.Name} v{next.Number} from v{from.Number}", Topics.Formulas);
            return new DraftStarted(from.FormulaId, next.Id, next.Number);
        }, cancel: cancel);

    /// <summary>What was typed, not what was frozen; a measured density belongs to the mixture it was measured on.</summary>
    private static FormulaVersion Copy(FormulaVersion from, int number, Command command)
    {
        var next = new FormulaVersion
        {
            FormulaId = from.FormulaId, Number = number, State = FormulaState.Draft, Method = from.Method,
            CureMinHours = from.CureMinHours, CureIdealHours = from.CureIdealHours, CureLatestHours = from.CureLatestHours,
            TolerancePercent = from.TolerancePercent, ExpectedLossPercent = from.ExpectedLossPercent,
            CreatedById = command.PersonId, CreatedAt = command.Now, KeptAt = command.Now,
        };
        next.Lines.AddRange(from.Lines.OrderBy(l => l.Position).Select(l => new FormulaLine
        {
            Position = l.Position, MaterialId = l.MaterialId, Amount = l.Amount, Basis = l.Basis, Method = l.Method,
        }));
        // They hold while the lines they speak of stay as they are; who said so and when stays too.
        next.Overrides.AddRange(from.Overrides.Where(o => o.TakenBackAt is null).Select(o => new AdviceOverride
        {
            Rule = o.Rule, Subject = o.Subject, Kind = o.Kind, Measure = o.Measure, Reason = o.Reason, PersonId = o.PersonId, At = o.At,
        }));
        return next;
    }
}
