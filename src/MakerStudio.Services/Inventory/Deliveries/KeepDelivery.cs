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

public sealed record DeliveryDraftRow(Guid Id, string? Supplier, string InvoiceNumber, int LineCount, string KeptBy, DateTimeOffset KeptAt);

public sealed partial class Deliveries
{
    internal static readonly TypedDrafts<DeliveryDraft> Typing = new("delivery", "this delivery", "posted", "the deliveries");

    public Task<Outcome<DraftKept>> KeepAsync(Actor actor, KeepDelivery request, CancellationToken cancel = default) =>
        store.RunAsync<KeepDelivery, DraftKept>(
            actor, request, null, command => Typing.KeepAsync(command, request.DraftId, request.Seen, request.Draft), cancel: cancel);

    public Task<Outcome<Nothing>> DiscardAsync(Actor actor, DiscardDelivery request, CancellationToken cancel = default) =>
        store.RunAsync<DiscardDelivery, Nothing>(actor, request, null, async command =>
        {
            if (await Typing.LockAsync(command, request.DraftId) is not { } draft)
            {
                return Typing.Gone;
            }

            command.Db.Drafts.Remove(draft);
            command.Record("delivery", draft.Id, "Put a delivery draft away", Topics.Lots);
            return Nothing.Value;
        }, cancel: cancel);

    public async Task<OpenDraft<DeliveryDraft>?> ReadDraftAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await Typing.FindAsync(db, id, cancel);
    }

    /// <summary>Drafts waiting to be posted, the last kept first.</summary>
    public async Task<IReadOnlyList<DeliveryDraftRow>> DraftsAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var drafts = await Typing.ListAsync(db, PageSize, cancel);
        var suppliers = await db.Suppliers.ToDictionaryAsync(s => s.Id, s => s.Name, cancel);
        return [.. drafts.Select(d => new DeliveryDraftRow(
            d.Id, d.Draft.SupplierId is { } id ? suppliers.GetValueOrDefault(id) : null, d.Draft.InvoiceNumber ?? "", d.Draft.Lines.Count, d.KeptBy, d.KeptAt))];
    }
}
