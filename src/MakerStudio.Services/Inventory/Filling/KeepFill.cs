using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

/// <summary>Keeps a filling as it is being typed, one a batch, so that a reload or a locked phone loses nothing.</summary>
public sealed record KeepFill : StudioRequest
{
    public RecordFill Typed { get; set; } = new();
}

public sealed record FillDraft(RecordFill Typed, string KeptBy, DateTimeOffset KeptAt);

public sealed partial class Fills
{
    private static readonly TypedDrafts<RecordFill> Typing = new("fill", "this filling", "recorded", "the batch");

    /// <summary>The last one who types wins: both see who kept it and when.</summary>
    public Task<Outcome<DraftKept>> KeepAsync(Actor actor, KeepFill request, CancellationToken cancel = default) =>
        store.RunAsync<KeepFill, DraftKept>(actor, request, null, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.Typed.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State is not (BatchState.Resting or BatchState.Ready))
            {
                return new NotReady(batch.Code, [], batch.State);
            }

            var draft = Typing.Put(command, await Typing.LockAsync(command, batch.Id), batch.Id, request.Typed);
            return new DraftKept(draft.Id, draft.KeptAt);
        }, cancel: cancel);

    /// <summary>What was typed before, with a request id of its own: a new form is a new request.</summary>
    private static async Task<FillDraft?> DraftAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        return await Typing.FindAsync(db, batchId, cancel) is { } found
            ? new FillDraft(found.Draft with { RequestId = Guid.CreateVersion7(), BatchId = batchId }, found.KeptBy, found.KeptAt)
            : null;
    }

    private static Task DropDraftAsync(StudioDb db, Guid batchId, CancellationToken cancel) => Typing.DropAsync(db, batchId, cancel);
}
