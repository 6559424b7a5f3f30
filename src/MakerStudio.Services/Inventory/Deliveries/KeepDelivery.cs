using System.Text.Json;
using System.Text.Json.Serialization;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Keeps an invoice as it is being typed.</summary>
public sealed record KeepDelivery : StudioRequest
{
    /// <summary>Made by the page when the draft is begun.</summary>
    public Guid DraftId { get; set; }

    /// <summary>When the version on this screen was kept; null for a new draft.</summary>
    public DateTimeOffset? Seen { get; set; }
    public DeliveryDraft Draft { get; set; } = new();
}

/// <summary>Puts a draft away for good.</summary>
public sealed record DiscardDelivery : StudioRequest
{
    public Guid DraftId { get; set; }
}

public sealed record DraftKept(Guid DraftId, DateTimeOffset KeptAt);

public sealed record DeliveryDraftRow(Guid Id, string? Supplier, string InvoiceNumber, int LineCount, string KeptBy, DateTimeOffset KeptAt);

public sealed record OpenDeliveryDraft(Guid Id, DeliveryDraft Draft, string KeptBy, DateTimeOffset KeptAt);

/// <summary>The draft was posted or put away meanwhile.</summary>
public sealed record DraftGone : Refusal
{
    public override string Happened => "This draft was posted or put away since you opened it.";
    public override string Kept => "What you typed is still on this page.";
    public override string ToDo => "Look at the deliveries before you post it again.";
}

public sealed partial class Deliveries
{
    private const string DraftKind = "delivery";
    private static readonly JsonSerializerOptions DraftJson = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    public Task<Outcome<DraftKept>> KeepAsync(Actor actor, KeepDelivery request, CancellationToken cancel = default) =>
        store.RunAsync<KeepDelivery, DraftKept>(actor, request, null, async command =>
        {
            var draft = await LockDraftAsync(command, request.DraftId);
            if (draft is null && request.Seen is not null)
            {
                return new DraftGone();
            }

            if (draft is not null && draft.KeptAt != request.Seen)
            {
                var other = await command.Db.Users.Where(p => p.Id == draft.KeptById).Select(p => p.DisplayName).SingleAsync(cancel);
                return new Stale("this delivery", other, draft.KeptAt);
            }

            if (draft is null)
            {
                draft = new Draft { Id = request.DraftId, Kind = DraftKind, Body = "" };
                command.Db.Drafts.Add(draft);
            }

            draft.Body = JsonSerializer.Serialize(request.Draft, DraftJson);
            draft.KeptById = command.PersonId;
            draft.KeptAt = command.Now;
            return new DraftKept(draft.Id, draft.KeptAt);
        }, cancel: cancel);

    public Task<Outcome<Nothing>> DiscardAsync(Actor actor, DiscardDelivery request, CancellationToken cancel = default) =>
        store.RunAsync<DiscardDelivery, Nothing>(actor, request, null, async command =>
        {
            if (await LockDraftAsync(command, request.DraftId) is not { } draft)
            {
                return new DraftGone();
            }

            command.Db.Drafts.Remove(draft);
            command.Record("delivery", draft.Id, "Put a delivery draft away", Topics.Lots);
            return Nothing.Value;
        }, cancel: cancel);

    public async Task<OpenDeliveryDraft?> ReadDraftAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var found = await db.Drafts.Where(d => d.Id == id && d.Kind == DraftKind)
            .Select(d => new { d.Body, d.KeptAt, KeptBy = db.Users.Where(p => p.Id == d.KeptById).Select(p => p.DisplayName).First() })
            .SingleOrDefaultAsync(cancel);
        return found is null ? null : new OpenDeliveryDraft(id, Typed(found.Body), found.KeptBy, found.KeptAt);
    }

    /// <summary>Drafts waiting to be posted, the last kept first.</summary>
    public async Task<IReadOnlyList<DeliveryDraftRow>> DraftsAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var drafts = await db.Drafts.Where(d => d.Kind == DraftKind).OrderByDescending(d => d.KeptAt).Take(PageSize)
            .Select(d => new { d.Id, d.Body, d.KeptAt, KeptBy = db.Users.Where(p => p.Id == d.KeptById).Select(p => p.DisplayName).First() })
            .ToListAsync(cancel);
        var suppliers = await db.Suppliers.ToDictionaryAsync(s => s.Id, s => s.Name, cancel);
        return [.. drafts.Select(d =>
        {
            var typed = Typed(d.Body);
            var supplier = typed.SupplierId is { } id ? suppliers.GetValueOrDefault(id) : null;
            return new DeliveryDraftRow(d.Id, supplier, typed.InvoiceNumber ?? "", typed.Lines.Count, d.KeptBy, d.KeptAt);
        })];
    }

    private static DeliveryDraft Typed(string body) => JsonSerializer.Deserialize<DeliveryDraft>(body, DraftJson)!;

    private static async Task<Draft?> LockDraftAsync(Command command, Guid id)
    {
        var found = await command.Db.Drafts.FromSql($"select * from drafts where id = {id} and kind = {DraftKind} for update").ToListAsync();
        return found is [var draft] ? draft : null;
    }
}
