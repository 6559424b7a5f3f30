using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>Begins a delivery with what is still to come of an order. Nothing is in stock before that is posted.</summary>
public sealed record ReceiveOrder : StudioRequest
{
    public Guid OrderId { get; set; }
}

/// <param name="DraftId">Of the delivery.</param>
public sealed record OrderBeingReceived(Guid DraftId);

public sealed partial class Purchasing
{
    public Task<Outcome<OrderBeingReceived>> ReceiveAsync(Actor actor, ReceiveOrder request, CancellationToken cancel = default) =>
        store.RunAsync<ReceiveOrder, OrderBeingReceived>(actor, request, null, async command =>
        {
            if (await LockAsync(command, request.OrderId) is not { } order || await FindAsync(command.Db, order.Code, cancel) is not { } page)
            {
                return new NotFound("This order");
            }

            if (!page.Order.IsOpen)
            {
                return new Because($"Order {order.Code} has nothing still to come.", "If more came, receive it as a delivery of its own.");
            }

            if (await BeingReceivedAsync(command.Db, page, cancel) is { } begun)
            {
                return new OrderBeingReceived(begun);
            }

            var draftId = Guid.CreateVersion7();
            Deliveries.Typing.Put(command, null, draftId, DraftOf(page, command.Today));
            command.Record("order", order.Id, $"Began to receive Order {order.Code}", Topics.Lots);
            return new OrderBeingReceived(draftId);
        }, cancel: cancel);

    /// <summary>A delivery of this order that is typed and not posted: it is gone on with, so that two people make one.</summary>
    private static async Task<Guid?> BeingReceivedAsync(Schema.StudioDb db, OrderView page, CancellationToken cancel)
    {
        var lines = page.Lines.Select(l => l.Id).ToHashSet();
        return (await Deliveries.Typing.ListAsync(db, PageSize, cancel))
            .FirstOrDefault(d => d.Draft.Lines.Any(l => l.OrderLineId is { } id && lines.Contains(id)))?.Id;
    }

    private static DeliveryDraft DraftOf(OrderView page, DateOnly today) => new()
    {
        SupplierId = page.SupplierId, ReceivedOn = today,
        Freight = page.Deliveries.Count == 0 ? TypedNumbers.Text(page.Freight) : null,
        Lines = [.. page.Lines.Where(l => l.Outstanding > 0).Select(l => new DeliveryLineDraft
        {
            MaterialId = l.MaterialId, OrderLineId = l.Id, Unit = AmountUnits.Symbol(l.Unit), Quantity = TypedNumbers.Text(l.StillToCome),
            Price = TypedNumbers.Text(decimal.Round(l.StillToCome * l.UnitPrice, MoneyDecimals, MidpointRounding.AwayFromZero)),
            Discount = TypedNumbers.Text(decimal.Round(l.StillToCome * l.UnitPrice * l.Discount, MoneyDecimals, MidpointRounding.AwayFromZero)),
        })],
    };

    private const int MoneyDecimals = 2;
}
