using FluentValidation;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Takes one entry of a lot's ledger back with a second one that names it. Both stay.</summary>
public sealed record ReverseMovement : StudioRequest
{
    public long MovementId { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class ReverseMovementValidator : AbstractValidator<ReverseMovement>
{
    public ReverseMovementValidator() =>
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why it is taken back.").MaximumLength(200).WithMessage("Say it in at most 200 characters.");
}

/// <summary>The entry belongs to something that is taken back as a whole.</summary>
public sealed record TakeBackElsewhere(string Fact, string Where) : Refusal
{
    public override string Happened => Fact;
    public override string ToDo => Where;
}

public sealed partial class Lots
{
    private static readonly ReverseMovementValidator ReverseShape = new();

    public Task<Outcome<LotAdjusted>> ReverseAsync(Actor actor, ReverseMovement request, CancellationToken cancel = default) =>
        store.RunAsync<ReverseMovement, LotAdjusted>(actor, request, ReverseShape, async command =>
        {
            var entry = await command.Db.Movements.AsNoTracking().SingleOrDefaultAsync(m => m.Id == request.MovementId, cancel);
            if (entry is null || await LotLog.LockAsync(command, entry.LotId) is not { } lot)
            {
                return new NotFound("This entry");
            }

            if (await WhyNotReverseAsync(command, entry, lot, cancel) is { } refusal)
            {
                return refusal;
            }

            var movement = Ledger.Post(command, lot, MovementKind.Reversal, -entry.Change, m =>
            {
                m.ReversesId = entry.Id;
                m.Reason = entry.Reason;
                m.UnitCost = entry.UnitCost;
                m.Note = request.Reason.Trim();
            });
            var unit = lot.Material!.StockedIn;
            command.Record("lot", lot.Id, $"{lot.Code}: took back {LotWords.Kind(entry.Kind).ToLowerInvariant()} {AmountWords.Change(entry.Change, unit)}", Topics.Lots);
            await command.Db.SaveChangesAsync(cancel);
            return new LotAdjusted(movement.Id, lot.Balance!.OnHand, ValueOf(-entry.Change, lot));
        }, cancel: cancel);

    private static async Task<Refusal?> WhyNotReverseAsync(Command command, Movement entry, Lot lot, CancellationToken cancel)
    {
        if (entry.Kind == MovementKind.Reversal)
        {
            return new Because("This entry is itself a reversal.", "Post the entry once more instead.");
        }

        if (await command.Db.Movements.AnyAsync(m => m.ReversesId == entry.Id, cancel))
        {
            return new Because("This entry was taken back already.", "Both lines stand in the lot's history.");
        }

        return await WhoseAsync(command, entry, cancel) is { } elsewhere ? elsewhere
            : lot.Balance!.OnHand - entry.Change < 0 ? new HoldsLess(lot.Code, lot.Balance.OnHand, entry.Change, lot.Material!.StockedIn)
            : null;
    }

    private static async Task<TakeBackElsewhere?> WhoseAsync(Command command, Movement entry, CancellationToken cancel)
    {
        var batch = entry.BatchId is null ? null : await command.Db.Batches.Where(b => b.Id == entry.BatchId).Select(b => b.Code).SingleAsync(cancel);
        switch (entry.Kind)
        {
            case MovementKind.Use:
                return new TakeBackElsewhere($"This entry is a weighing of batch {batch ?? "–"}.", "Take the weighing back on the batch's weigh sheet; the lot follows.");
            case MovementKind.Packaging or MovementKind.Return when entry.KitLotId is not null:
                return new TakeBackElsewhere("This entry is packaging of a kit.", "Take the kits apart on their own page; what can be used again comes back.");
            case MovementKind.Packaging:
                return new TakeBackElsewhere($"This entry is packaging of the filling of batch {batch ?? "–"}.", "It belongs to the filling; what broke or was left over is an adjustment.");
            case MovementKind.Made:
                return new TakeBackElsewhere($"This entry is what batch {batch ?? "–"} made.", "It belongs to the batch; adjust the lot when the quantity is wrong.");
            case MovementKind.Receipt when entry.DeliveryId is not null:
                var delivery = await command.Db.Deliveries.Where(d => d.Id == entry.DeliveryId).Select(d => d.Code).SingleAsync(cancel);
                return new TakeBackElsewhere($"This entry is a receipt of Delivery {delivery}.", $"Take Delivery {delivery} back as a whole; its lines come back as a draft.");
            default:
                return null;
        }
    }
}
