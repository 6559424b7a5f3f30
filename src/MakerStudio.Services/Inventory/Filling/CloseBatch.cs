namespace MakerStudio.Services.Inventory;

/// <summary>Closes the record of a filled batch: labels checked, leftovers dealt with, nothing more to do.</summary>
public sealed record CloseBatch : StudioRequest
{
    public Guid BatchId { get; set; }
}

/// <summary>Only a filled batch can be closed.</summary>
public sealed record NotFilled(string Code, BatchState State) : Refusal
{
    public override string Happened => $"{Code} is {BatchStates.Say(State)}.";
    public override string ToDo => "A record is closed after filling.";
}

public sealed partial class Fills
{
    public Task<Outcome<Nothing>> CloseAsync(Actor actor, CloseBatch request, CancellationToken cancel = default) =>
        store.RunAsync<CloseBatch, Nothing>(actor, request, null, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State != BatchState.Filled)
            {
                return batch.State == BatchState.Closed ? Nothing.Value : new NotFilled(batch.Code, batch.State);
            }

            batch.State = BatchState.Closed;
            batch.ClosedAt = command.Now;
            command.Record("batch", batch.Id, $"Closed {batch.Code}", Topics.Batches);
            return Nothing.Value;
        }, cancel: cancel);
}
