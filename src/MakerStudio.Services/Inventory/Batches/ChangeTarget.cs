using FluentValidation;
using MakerStudio.Core.Blending;

namespace MakerStudio.Services.Inventory;

/// <summary>Another size for a batch that is still planned.</summary>
public sealed record ChangeTarget : StudioRequest
{
    public Guid BatchId { get; set; }
    public long TargetMilligrams { get; set; }

    /// <summary>Null leaves the number of bottles as it is.</summary>
    public int? PlannedUnits { get; set; }
}

public sealed class ChangeTargetValidator : AbstractValidator<ChangeTarget>
{
    public ChangeTargetValidator()
    {
        RuleFor(r => r.TargetMilligrams).InclusiveBetween(1, BatchSizes.LargestMilligrams).WithMessage("A batch is from 1 mg to 1,000 tonnes.");
        RuleFor(r => r.PlannedUnits).InclusiveBetween(1, Scaling.MostBottles).When(r => r.PlannedUnits is not null)
            .WithMessage("Give a number of bottles from 1 to 100,000.");
    }
}

/// <summary>The batch has moved on; the act belongs to an earlier state.</summary>
public sealed record NotNow(string Code, BatchState State, string Advice) : Refusal
{
    public override string Happened => State switch
    {
        BatchState.Planned => $"{Code} is planned; weighing has not started.",
        BatchState.Weighing => $"{Code} is being weighed.",
        BatchState.Resting => $"{Code} is resting: its last addition was confirmed.",
        BatchState.Ready => $"{Code} is ready.",
        BatchState.Filled => $"{Code} is filled.",
        BatchState.Closed => $"{Code} is closed.",
        _ => $"{Code} was discarded.",
    };

    public override string ToDo => Advice;
}

public sealed partial class Batches
{
    private static readonly ChangeTargetValidator ChangeTargetShape = new();

    /// <summary>Returns what is short at the new size.</summary>
    public Task<Outcome<PlannedBatch>> ChangeTargetAsync(Actor actor, ChangeTarget request, CancellationToken cancel = default) =>
        store.RunAsync<ChangeTarget, PlannedBatch>(actor, request, ChangeTargetShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State != BatchState.Planned)
            {
                return new NotNow(batch.Code, batch.State, "On the sheet it can be made smaller while the lines still allow it.");
            }

            if (Resize(batch, request.TargetMilligrams, isPlan: true) is { } why)
            {
                return why;
            }

            batch.PlannedUnits = request.PlannedUnits ?? batch.PlannedUnits;
            command.Record("batch", batch.Id, $"Changed {batch.Code} to {AmountWords.Grams(batch.TargetMilligrams)}", Topics.Batches);
            await command.Db.SaveChangesAsync(cancel);
            return new PlannedBatch(
                batch.Id, batch.Code, batch.TargetMilligrams, await Shortages.OfAsync(command.Db, batch.Id, command.Today, cancel), Cautions(batch, null));
        }, cancel: cancel);
}
