using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Opens the sheet of a planned batch in one's own name.</summary>
public sealed record StartWeighing : StudioRequest
{
    public Guid BatchId { get; set; }
}

/// <summary>Goes on with a sheet the partner had open.</summary>
public sealed record TakeOver : StudioRequest
{
    public Guid BatchId { get; set; }
}

public sealed partial class Batches
{
    public Task<Outcome<Nothing>> StartWeighingAsync(Actor actor, StartWeighing request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, null, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State != BatchState.Planned)
            {
                return new NotNow(batch.Code, batch.State, batch.State == BatchState.Weighing ? "Open its sheet; take it over if you go on with it." : "");
            }

            batch.State = BatchState.Weighing;
            batch.WeighingById = command.PersonId;
            batch.WeighingSince = command.Now;
            command.Record("batch", batch.Id, $"Started weighing {batch.Code}", Topics.Batches);
            return (Outcome<Nothing>)Nothing.Value;
        }, cancel: cancel);

    public Task<Outcome<Nothing>> TakeOverAsync(Actor actor, TakeOver request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, null, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State != BatchState.Weighing)
            {
                return new NotNow(batch.Code, batch.State, "Only a sheet that is being weighed can be taken over.");
            }

            var from = await command.Db.Users.Where(p => p.Id == batch.WeighingById).Select(p => p.DisplayName).SingleOrDefaultAsync(cancel);
            batch.WeighingById = command.PersonId;
            command.Record("batch", batch.Id, $"Took over weighing {batch.Code} from {from ?? "nobody"}", Topics.Batches);
            return (Outcome<Nothing>)Nothing.Value;
        }, cancel: cancel);
}
