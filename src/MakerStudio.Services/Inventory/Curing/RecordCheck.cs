using FluentValidation;
using MakerStudio.Core.Curing;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A re-smell: strength 0 to 5, character, clarity, and what follows from it.</summary>
public sealed record RecordCheck : StudioRequest
{
    public Guid BatchId { get; set; }

    /// <summary>0 nothing, 5 overwhelming.</summary>
    public int? Strength { get; set; }
    public string? Character { get; set; }
    public Clarity? Clarity { get; set; }
    public string? Note { get; set; }
    public CheckVerdict? Verdict { get; set; }
}

public sealed class RecordCheckValidator : AbstractValidator<RecordCheck>
{
    public RecordCheckValidator()
    {
        RuleFor(r => r.Strength).NotNull().WithMessage("Give the strength, 0 to 5.").InclusiveBetween(0, 5).WithMessage("Strength is from 0 to 5.");
        RuleFor(r => r.Verdict).NotNull().WithMessage("Say what follows: passed, rest longer, or hold.").IsInEnum();
        RuleFor(r => r.Clarity).NotNull().WithMessage("Say how clear it is, or that it does not apply.").IsInEnum();
        RuleFor(r => r.Character).MaximumLength(200).WithMessage("Keep the character to 200 letters.");
        RuleFor(r => r.Note).MaximumLength(2000).WithMessage("Keep the note to 2,000 letters.");
        RuleFor(r => r.Note).NotEmpty().When(r => r.Verdict == CheckVerdict.Hold).WithMessage("Say what you saw, so that the hold can be lifted.");
    }
}

/// <param name="State">Where the batch stands after this check.</param>
public sealed record CheckRecorded(CureState State, DateTimeOffset DueAt);

/// <summary>The batch is in a state that this act does not fit.</summary>
public sealed record NotResting(string Code, BatchState State) : Refusal
{
    public override string Happened => $"{Code} is {BatchStates.Say(State)}, not resting.";
    public override string Kept => "What you typed is kept.";
    public override string ToDo => State is BatchState.Planned or BatchState.Weighing
        ? "Its clock starts when the last addition is confirmed." : "Look at its record.";
}

public sealed partial class CureShelf
{
    private static readonly RecordCheckValidator RecordCheckShape = new();

    public Task<Outcome<CheckRecorded>> RecordCheckAsync(Actor actor, RecordCheck request, CancellationToken cancel = default) =>
        store.RunAsync<RecordCheck, CheckRecorded>(actor, request, RecordCheckShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State is not (BatchState.Resting or BatchState.Ready))
            {
                return new NotResting(batch.Code, batch.State);
            }

            var check = new Schema.CureCheck
            {
                BatchId = batch.Id, At = command.Now, PersonId = command.PersonId, Strength = request.Strength!.Value,
                Character = Trimmed(request.Character), Clarity = request.Clarity!.Value, Note = Trimmed(request.Note), Verdict = request.Verdict!.Value,
            };
            command.Db.CureChecks.Add(check);
            var state = await ApplyAsync(command, batch, check, cancel);
            command.Record("batch", batch.Id, $"Checked {batch.Code}: strength {check.Strength}, {Say(check.Verdict)}", Topics.Batches);
            return new CheckRecorded(state, CureClock.DueAt(batch.ClockStartedAt!.Value, WindowOf(batch)));
        }, cancel: cancel);

    /// <summary>A passed check makes the batch ready once its time is reached; anything else takes readiness away again.</summary>
    private static async Task<CureState> ApplyAsync(Command command, Batch batch, Schema.CureCheck check, CancellationToken cancel)
    {
        var initials = await command.Db.Users.Where(p => p.Id == command.PersonId).Select(p => p.Initials).SingleAsync(cancel);
        var fact = new CureCheckFact(check.At, check.Verdict == CheckVerdict.Passed, initials);
        batch.HeldReason = check.Verdict == CheckVerdict.Hold ? check.Note : null;
        batch.State = BatchState.Resting;
        var state = StandingOf(batch, WindowOf(batch), command.Now, fact);
        if (state == CureState.Ready)
        {
            batch.State = BatchState.Ready;
            batch.ReadyAt = command.Now;
            batch.ReadyById = command.PersonId;
        }
        else
        {
            (batch.ReadyAt, batch.ReadyById, batch.EarlyReason) = (null, null, null);
        }

        return state;
    }

    private static string Say(CheckVerdict verdict) => verdict switch
    {
        CheckVerdict.Passed => "passed",
        CheckVerdict.RestLonger => "rests longer",
        _ => "put on hold",
    };

    private static string? Trimmed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
