using System.Text.Json;
using System.Text.Json.Serialization;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Keeps a filling as it is being typed, one a batch, so that a reload or a locked phone loses nothing.</summary>
public sealed record KeepFill : StudioRequest
{
    public RecordFill Typed { get; set; } = new();
}

public sealed record FillKept(DateTimeOffset KeptAt);

public sealed record FillDraft(RecordFill Typed, string KeptBy, DateTimeOffset KeptAt);

public sealed partial class Fills
{
    private const string DraftKind = "fill";
    private static readonly JsonSerializerOptions DraftJson = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    /// <summary>The last one who types wins: both see who kept it and when.</summary>
    public Task<Outcome<FillKept>> KeepAsync(Actor actor, KeepFill request, CancellationToken cancel = default) =>
        store.RunAsync<KeepFill, FillKept>(actor, request, null, async command =>
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

            var draft = await command.Db.Drafts.SingleOrDefaultAsync(d => d.Id == batch.Id, cancel);
            if (draft is null)
            {
                draft = new Draft { Id = batch.Id, Kind = DraftKind, Body = "" };
                command.Db.Drafts.Add(draft);
            }

            draft.Body = JsonSerializer.Serialize(request.Typed, DraftJson);
            draft.KeptById = command.PersonId;
            draft.KeptAt = command.Now;
            return new FillKept(draft.KeptAt);
        }, cancel: cancel);

    /// <summary>What was typed before, with a request id of its own: a new form is a new request.</summary>
    private static async Task<FillDraft?> DraftAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        var found = await db.Drafts.Where(d => d.Id == batchId && d.Kind == DraftKind)
            .Select(d => new { d.Body, d.KeptAt, By = db.Users.Where(p => p.Id == d.KeptById).Select(p => p.DisplayName).First() })
            .SingleOrDefaultAsync(cancel);
        return found is null ? null : new FillDraft(
            JsonSerializer.Deserialize<RecordFill>(found.Body, DraftJson)! with { RequestId = Guid.CreateVersion7(), BatchId = batchId }, found.By, found.KeptAt);
    }

    private static Task DropDraftAsync(StudioDb db, Guid batchId, CancellationToken cancel) =>
        db.Drafts.Where(d => d.Id == batchId && d.Kind == DraftKind).ExecuteDeleteAsync(cancel);
}
