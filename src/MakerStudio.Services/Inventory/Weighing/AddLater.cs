using FluentValidation;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

/// <summary>Adds more of one of the batch's materials after the last addition. The clock starts again, unless it is kept with a reason.</summary>
public sealed record AddLater : StudioRequest
{
    public Guid BatchId { get; set; }
    public Guid LineId { get; set; }
    public Guid LotId { get; set; }
    public long NetMilligrams { get; set; }
    public bool KeepClock { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class AddLaterValidator : AbstractValidator<AddLater>
{
    public AddLaterValidator()
    {
        RuleFor(r => r.NetMilligrams).InclusiveBetween(1, BatchSizes.LargestMilligrams).WithMessage("The addition must be above zero.");
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why, for the record.").MaximumLength(400).WithMessage("The reason has room for 400 characters.");
    }
}

public sealed partial class WeighSheets
{
    private static readonly AddLaterValidator AddLaterShape = new();

    public Task<Outcome<ClockStarted>> AddLaterAsync(Actor actor, AddLater request, CancellationToken cancel = default) =>
        store.RunAsync<AddLater, ClockStarted>(actor, request, AddLaterShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch is not { State: BatchState.Resting or BatchState.Ready, ClockStartedAt: { } started })
            {
                return new NotNow(batch.Code, batch.State, batch.State == BatchState.Weighing ? "Record it on the weigh sheet." : "");
            }

            var sheet = await OpenSheet.OfLockedAsync(command, batch);
            var lots = await Ledger.LockAsync(command, [request.LotId]);
            if (sheet.Line(request.LineId) is not { } line || !lots.TryGetValue(request.LotId, out var lot))
            {
                return new NotFound("This line or lot");
            }

            if (WhyNotLot(lot, line, command.Today) is { } why)
            {
                return why;
            }

            if (request.NetMilligrams > lot.Balance!.OnHand)
            {
                return new Because(
                    $"{lot.Code} is short {AmountWords.Grams(request.NetMilligrams - lot.Balance.OnHand)}: it has {AmountWords.Grams(lot.Balance.OnHand)} left.",
                    "Use another lot, or add less.");
            }

            sheet.Weigh(line, lot, request.NetMilligrams, null, lot.UnitCost);
            var what = $"{AmountWords.Grams(request.NetMilligrams)} of {line.MaterialName} from {lot.Code} added later";
            sheet.Deviate(line, request.KeepClock ? DeviationChoice.ClockKept : DeviationChoice.Accepted, what, request.Reason);
            sheet.Tell($"{what}, to {batch.Code}; its clock {(request.KeepClock ? "runs on" : "started again")}", lot);
            return Restart(command, batch, request.KeepClock ? started : command.Now, request.KeepClock);
        }, cancel: cancel);

    private static ClockStarted Restart(Command command, Batch batch, DateTimeOffset at, bool keep)
    {
        if (!keep)
        {
            batch.State = BatchState.Resting;
            batch.ClockStartedAt = at;
            batch.ClockStartedById = command.PersonId;
            (batch.ReadyAt, batch.ReadyById, batch.EarlyReason) = (null, null, null);
        }

        return new(batch.Id, at, at.AddHours(batch.CureMinHours), at.AddHours(batch.CureIdealHours));
    }
}
