using FluentValidation;

namespace MakerStudio.Services.Inventory;

/// <summary>Gives a batch up. What was weighed into it stays used; what it had reserved is free again.</summary>
public sealed record DiscardBatch : StudioRequest
{
    public Guid BatchId { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class DiscardBatchValidator : AbstractValidator<DiscardBatch>
{
    public DiscardBatchValidator() =>
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why, for the record.").MaximumLength(400).WithMessage("The reason has room for 400 characters.");
}

public sealed partial class Batches
{
    private static readonly DiscardBatchValidator DiscardBatchShape = new();

    public Task<Outcome<Nothing>> DiscardAsync(Actor actor, DiscardBatch request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, DiscardBatchShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State is BatchState.Filled or BatchState.Closed or BatchState.Discarded)
            {
                return new NotNow(batch.Code, batch.State, "Only a batch that is not filled can be discarded.");
            }

            batch.State = BatchState.Discarded;
            batch.DiscardedAt = command.Now;
            batch.DiscardReason = request.Reason.Trim();
            command.Record("batch", batch.Id, $"Discarded {batch.Code}: {batch.DiscardReason}", Topics.Batches);
            return (Outcome<Nothing>)Nothing.Value;
        }, cancel: cancel);
}
