using FluentValidation;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Takes a posted delivery back whole: its receipts are reversed and its lines are a draft again.</summary>
public sealed record TakeBackDelivery : StudioRequest
{
    public Guid DeliveryId { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class TakeBackDeliveryValidator : AbstractValidator<TakeBackDelivery>
{
    public TakeBackDeliveryValidator() =>
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why the delivery is taken back.").MaximumLength(200).WithMessage("Say it in at most 200 characters.");
}

/// <param name="DraftId">The draft that now holds the lines as they were typed.</param>
public sealed record DeliveryTakenBack(Guid DraftId, IReadOnlyList<string> Lots);

public sealed partial class Deliveries
{
    private static readonly TakeBackDeliveryValidator TakeBackShape = new();

    public Task<Outcome<DeliveryTakenBack>> TakeBackAsync(Actor actor, TakeBackDelivery request, CancellationToken cancel = default) =>
        store.RunAsync<TakeBackDelivery, DeliveryTakenBack>(actor, request, TakeBackShape, async command =>
        {
            var delivery = await command.Db.Deliveries.Include(d => d.Lines).SingleOrDefaultAsync(d => d.Id == request.DeliveryId, cancel);
            if (delivery is null)
            {
                return new NotFound("This delivery");
            }

            var lineIds = delivery.Lines.Select(l => l.Id).ToList();
            var lotIds = await command.Db.Lots.Where(l => l.DeliveryLineId != null && lineIds.Contains(l.DeliveryLineId.Value)).Select(l => l.Id).ToListAsync(cancel);
            var lots = await Ledger.LockAsync(command, lotIds);
            var receipts = await command.Db.Movements.Where(m => m.DeliveryId == delivery.Id && m.Kind == MovementKind.Receipt).ToListAsync(cancel);
            if (await WhyNotTakeBackAsync(command, delivery, lots, receipts, cancel) is { } refusal)
            {
                return refusal;
            }

            foreach (var receipt in receipts)
            {
                TakeBack(command, lots[receipt.LotId], receipt, delivery, request.Reason.Trim());
            }

            var draft = Typing.Put(command, null, Guid.CreateVersion7(), Retyped(delivery, lots.Values));
            command.Record("delivery", delivery.Id, $"Took Delivery {delivery.Code} back: {request.Reason.Trim()}", Topics.Lots);
            return new DeliveryTakenBack(draft.Id, [.. lots.Values.Select(l => l.Code).Order(StringComparer.Ordinal)]);
        }, cancel: cancel);

    private static async Task<Refusal?> WhyNotTakeBackAsync(
        Command command, Delivery delivery, Dictionary<Guid, Lot> lots, List<Movement> receipts, CancellationToken cancel)
    {
        var receiptIds = receipts.Select(r => r.Id).ToList();
        if (await command.Db.Movements.AnyAsync(m => m.ReversesId != null && receiptIds.Contains(m.ReversesId.Value), cancel))
        {
            return new Because($"Delivery {delivery.Code} was already taken back.");
        }

        var touched = receipts.Where(r => lots[r.LotId].Balance!.OnHand < r.Change).Select(r => lots[r.LotId]).ToList();
        return touched.Count == 0 ? null : new Because(
            $"{string.Join(", ", touched.Select(l => $"{l.Code} holds {AmountWords.Amount(l.Balance!.OnHand, l.Material!.StockedIn)}"))}: less than came with Delivery {delivery.Code}, so it was used from.",
            "Reverse those uses first, or adjust the lot.");
    }

    private static void TakeBack(Command command, Lot lot, Movement receipt, Delivery delivery, string reason)
    {
        Ledger.Post(command, lot, MovementKind.Reversal, -receipt.Change, m =>
        {
            m.ReversesId = receipt.Id;
            m.DeliveryId = delivery.Id;
            m.Note = reason;
        });
        lot.Status = LotStatus.Rejected;
        lot.StatusReason = $"Delivery {delivery.Code} was taken back: {reason}";
        LotLog.Add(command, lot, LotEventKind.StatusChanged, "Rejected", lot.StatusReason);
    }

    private static DeliveryDraft Retyped(Delivery delivery, IEnumerable<Lot> lots)
    {
        var byLine = lots.ToDictionary(l => l.DeliveryLineId!.Value);
        return new DeliveryDraft
        {
            SupplierId = delivery.SupplierId, InvoiceNumber = delivery.InvoiceNumber ?? "", ReceivedOn = delivery.ReceivedOn,
            Freight = TypedNumbers.Text(delivery.Freight), FreightBasis = delivery.FreightBasis, InvoiceTotal = TypedNumbers.Text(delivery.InvoiceTotal),
            Lines = [.. delivery.Lines.OrderBy(l => l.Position).Select(l => Retyped(l, byLine[l.Id]))],
        };
    }

    private static DeliveryLineDraft Retyped(DeliveryLine line, Lot lot) => new()
    {
        MaterialId = line.MaterialId, Quantity = TypedNumbers.Text(line.QuantityTyped), Unit = AmountUnits.Symbol(line.Unit), Price = TypedNumbers.Text(line.Price),
        GrossKg = TypedNumbers.Text(line.GrossKilograms), Duty = TypedNumbers.Text(line.Duty), Surcharge = TypedNumbers.Text(line.Surcharge), Discount = TypedNumbers.Text(line.Discount),
        Density = TypedNumbers.Text(line.DensityUsed), SupplierLot = lot.SupplierLot ?? "", ExpiresOn = lot.ExpiresOn, RetestOn = lot.RetestOn, Shelf = lot.Shelf ?? "",
        OrderLineId = line.OrderLineId,
        Tare = lot.TareMilligrams is { } tare ? TypedNumbers.Text(Mass.FromMilligrams(tare).Grams) : null,
    };}
