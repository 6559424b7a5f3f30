using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Keeps an order as it is being typed.</summary>
public sealed record KeepOrder : StudioRequest
{
    /// <summary>Made by the page when the draft is begun.</summary>
    public Guid DraftId { get; set; }

    /// <summary>When the version on this screen was kept; null for a new draft.</summary>
    public DateTimeOffset? Seen { get; set; }
    public OrderDraft Draft { get; set; } = new();
}

/// <summary>Puts a draft away for good.</summary>
public sealed record DiscardOrder : StudioRequest
{
    public Guid DraftId { get; set; }
}

public sealed record OrderDraftRow(Guid Id, string? Supplier, int LineCount, string KeptBy, DateTimeOffset KeptAt);

public sealed partial class Purchasing
{
    private static readonly TypedDrafts<OrderDraft> Typing = new("order", "this order", "sent", "the orders");

    public Task<Outcome<DraftKept>> KeepAsync(Actor actor, KeepOrder request, CancellationToken cancel = default) =>
        store.RunAsync<KeepOrder, DraftKept>(
            actor, request, null, command => Typing.KeepAsync(command, request.DraftId, request.Seen, request.Draft), cancel: cancel);

    public Task<Outcome<Nothing>> DiscardAsync(Actor actor, DiscardOrder request, CancellationToken cancel = default) =>
        store.RunAsync<DiscardOrder, Nothing>(actor, request, null, async command =>
        {
            if (await Typing.LockAsync(command, request.DraftId) is not { } draft)
            {
                return Typing.Gone;
            }

            command.Db.Drafts.Remove(draft);
            command.Record("order", draft.Id, "Put a purchase order away before it was sent", Topics.Orders);
            return Nothing.Value;
        }, cancel: cancel);

    public async Task<OpenDraft<OrderDraft>?> ReadDraftAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await Typing.FindAsync(db, id, cancel);
    }

    /// <summary>Orders that are typed and not sent, the last kept first.</summary>
    public async Task<IReadOnlyList<OrderDraftRow>> DraftsAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var drafts = await Typing.ListAsync(db, PageSize, cancel);
        var suppliers = await db.Suppliers.ToDictionaryAsync(s => s.Id, s => s.Name, cancel);
        return [.. drafts.Select(d => new OrderDraftRow(
            d.Id, d.Draft.SupplierId is { } id ? suppliers.GetValueOrDefault(id) : null, d.Draft.Lines.Count, d.KeptBy, d.KeptAt))];
    }
}
