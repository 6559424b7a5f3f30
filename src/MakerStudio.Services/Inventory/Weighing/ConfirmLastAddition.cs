using FluentValidation;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>All is in, stirred and closed (or poured): the batch rests and its clock starts now. Whole or not at all.</summary>
public sealed record ConfirmLastAddition : StudioRequest
{
    public Guid BatchId { get; set; }
    public bool StirredConfirmed { get; set; }
    public string? Place { get; set; }
    public decimal? RoomCelsius { get; set; }
}

/// <param name="DueAt">The shortest rest is over; elapsed hours, so a clock change moves its local hour.</param>
public sealed record ClockStarted(Guid BatchId, DateTimeOffset At, DateTimeOffset DueAt, DateTimeOffset IdealAt);

public sealed class ConfirmLastAdditionValidator : AbstractValidator<ConfirmLastAddition>
{
    public ConfirmLastAdditionValidator()
    {
        RuleFor(r => r.StirredConfirmed).Equal(true).WithMessage("Confirm that it is stirred and closed.");
        RuleFor(r => r.Place).MaximumLength(80).WithMessage("The place has room for 80 characters.");
        RuleFor(r => r.RoomCelsius).InclusiveBetween(-30, 60).When(r => r.RoomCelsius is not null).WithMessage("The room is between −30 and 60 °C.");
    }
}

/// <summary>Some lines are not done.</summary>
public sealed record LinesOpen(string Code, IReadOnlyList<OpenLine> Lines) : WeighRefusal
{
    public override string Happened => Lines.Count == 1
        ? $"One line of {Code} is open: {Lines[0]}."
        : $"{Lines.Count} lines of {Code} are open: {string.Join("; ", Lines)}.";

    public override string Kept => "The batch stays open with everything recorded on it.";

    public override string ToDo => "Finish them, then confirm the last addition.";
}

public sealed record OpenLine(Guid LineId, string MaterialName, long RemainingMilligrams)
{
    public override string ToString() => $"{MaterialName}, {AmountWords.Grams(RemainingMilligrams)} to go";
}

/// <summary>Somebody confirmed it before; the clock runs from then.</summary>
public sealed record ClockRuns(string Code, DateTimeOffset Since, string By) : Refusal
{
    public override string Happened => $"{By} confirmed the last addition of {Code} already.";

    public override string Kept => "The clock runs from that moment; nothing was posted twice.";
}

public sealed partial class WeighSheets
{
    private static readonly ConfirmLastAdditionValidator ConfirmLastAdditionShape = new();

    public Task<Outcome<ClockStarted>> ConfirmLastAdditionAsync(Actor actor, ConfirmLastAddition request, CancellationToken cancel = default) =>
        store.RunAsync<ConfirmLastAddition, ClockStarted>(actor, request, ConfirmLastAdditionShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch is { State: BatchState.Resting, ClockStartedAt: { } since })
            {
                var by = await command.Db.Users.Where(p => p.Id == batch.ClockStartedById).Select(p => p.DisplayName).SingleOrDefaultAsync(cancel);
                return new ClockRuns(batch.Code, since, by ?? "Somebody");
            }

            if (batch.State != BatchState.Weighing)
            {
                return new NotWeighing(batch.Code, batch.State);
            }

            var sheet = await OpenSheet.OfLockedAsync(command, batch);
            var open = sheet.Lines.Where(l => l.DoneAt is null)
                .Select(l => new OpenLine(l.Id, l.MaterialName, Math.Max(0, l.TargetMilligrams - sheet.Recorded(l)))).ToList();
            if (open.Count > 0)
            {
                return new LinesOpen(batch.Code, open);
            }

            batch.State = BatchState.Resting;
            batch.ClockStartedAt = command.Now;
            batch.ClockStartedById = command.PersonId;
            batch.Place = string.IsNullOrWhiteSpace(request.Place) ? batch.Place : request.Place.Trim();
            batch.RoomCelsius = request.RoomCelsius ?? batch.RoomCelsius;
            command.Record("batch", batch.Id, $"Confirmed the last addition of {batch.Code}; its clock started", Topics.Batches);
            return new ClockStarted(
                batch.Id, command.Now, command.Now.AddHours(batch.CureMinHours), command.Now.AddHours(batch.CureIdealHours));
        }, cancel: cancel);
}
