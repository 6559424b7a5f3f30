using FluentValidation;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>Takes a quantity out of a lot, or puts one in, with a reason.</summary>
public sealed record AdjustLot : StudioRequest
{
    public Guid LotId { get; set; }

    /// <summary>Signed milligrams or pieces; below zero is out.</summary>
    public long Change { get; set; }
    public AdjustmentReason Reason { get; set; }
    public string? Note { get; set; }
}

public sealed class AdjustLotValidator : AbstractValidator<AdjustLot>
{
    /// <summary>Only these can find more than was booked.</summary>
    public static readonly IReadOnlyList<AdjustmentReason> MayAdd = [AdjustmentReason.CorrectionOfEntry, AdjustmentReason.TheftOrUnknown];

    /// <summary>Reasons offered; a count has its own form.</summary>
    public static readonly IReadOnlyList<AdjustmentReason> Offered = [.. Enum.GetValues<AdjustmentReason>().Where(r => r != AdjustmentReason.Count)];

    private const long MostUnits = 1_000_000_000_000_000;

    public AdjustLotValidator()
    {
        RuleFor(r => r.Change).NotEqual(0).WithMessage("Give the quantity that went or came.")
            .InclusiveBetween(-MostUnits, MostUnits).WithMessage("That is more than can be kept.");
        RuleFor(r => r.Reason).IsInEnum().Must(r => r != AdjustmentReason.Count).WithMessage("A count is recorded on its own form, gross less tare.");
        RuleFor(r => r.Change).LessThanOrEqualTo(0).Unless(r => MayAdd.Contains(r.Reason))
            .WithMessage(r => $"{LotWords.Reason(r.Reason)} only takes out. To put stock in, choose correction of entry.");
        RuleFor(r => r.Note).NotEmpty().When(r => r.Reason is AdjustmentReason.CorrectionOfEntry or AdjustmentReason.TheftOrUnknown)
            .WithMessage("Say what happened; this reason alone tells nothing.").MaximumLength(200).WithMessage("Say it in at most 200 characters.");
    }
}

/// <param name="OnHand">After it, milligrams or pieces.</param>
/// <param name="Value">Signed, at the lot's unit cost, not rounded.</param>
public sealed record LotAdjusted(long MovementId, long OnHand, decimal Value);

public sealed partial class Lots
{
    private static readonly AdjustLotValidator AdjustShape = new();

    public Task<Outcome<LotAdjusted>> AdjustAsync(Actor actor, AdjustLot request, CancellationToken cancel = default) =>
        store.RunAsync<AdjustLot, LotAdjusted>(actor, request, AdjustShape, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            var unit = lot.Material!.StockedIn;
            if (lot.Balance!.OnHand + request.Change < 0)
            {
                return new HoldsLess(lot.Code, lot.Balance.OnHand, -request.Change, unit);
            }

            var movement = Ledger.Post(command, lot, MovementKind.Adjustment, request.Change, m =>
            {
                m.Reason = request.Reason;
                m.Note = string.IsNullOrWhiteSpace(request.Note) ? null : request.Note.Trim();
            });
            command.Record("lot", lot.Id, $"{lot.Code}: {LotWords.Reason(request.Reason).ToLowerInvariant()} {AmountWords.Change(request.Change, unit)}", Topics.Lots);
            await command.Db.SaveChangesAsync(cancel);
            return new LotAdjusted(movement.Id, lot.Balance.OnHand, ValueOf(request.Change, lot));
        }, cancel: cancel);

    private static decimal ValueOf(long change, Schema.Lot lot) =>
        new Core.Quantities.StockAmount(change, lot.Material!.StockedIn).Display * lot.UnitCost;
}
