using FluentValidation;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>An act on a lot that needs a reason.</summary>
public abstract record LotActWithReason : StudioRequest
{
    public Guid LotId { get; set; }
    public string Reason { get; set; } = "";
}

/// <summary>Puts a lot on hold: nothing is weighed from it until the hold is lifted.</summary>
public sealed record HoldLot : LotActWithReason;

public sealed record LiftHold : LotActWithReason;

/// <summary>Puts a lot back into quarantine.</summary>
public sealed record QuarantineLot : LotActWithReason;

/// <summary>Rejects a lot for good.</summary>
public sealed record RejectLot : LotActWithReason;

public sealed class LotReasonValidator : AbstractValidator<LotActWithReason>
{
    /// <summary>Longest reason, characters; the house's own bound.</summary>
    public const int Longest = 200;

    public LotReasonValidator() =>
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why; the reason stays with the lot.").MaximumLength(Longest).WithMessage("Say it in at most 200 characters.");
}

public sealed partial class Lots
{
    private static readonly LotReasonValidator ReasonShape = new();

    public Task<Outcome<Nothing>> HoldAsync(Actor actor, HoldLot request, CancellationToken cancel = default) =>
        ChangeStatusAsync(actor, request, LotStatus.OnHold, cancel);

    public Task<Outcome<Nothing>> QuarantineAsync(Actor actor, QuarantineLot request, CancellationToken cancel = default) =>
        ChangeStatusAsync(actor, request, LotStatus.Quarantine, cancel);

    public Task<Outcome<Nothing>> RejectAsync(Actor actor, RejectLot request, CancellationToken cancel = default) =>
        ChangeStatusAsync(actor, request, LotStatus.Rejected, cancel);

    /// <summary>Released again, or in quarantine when a paper is missing by now; answers with the status it has after.</summary>
    public Task<Outcome<LotLifted>> LiftHoldAsync(Actor actor, LiftHold request, CancellationToken cancel = default) =>
        store.RunAsync<LiftHold, LotLifted>(actor, request, ReasonShape, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            if (lot.Status != LotStatus.OnHold)
            {
                return new Because($"{lot.Code} is not on hold; it is {LotWords.Status(lot.Status).ToLowerInvariant()}.");
            }

            var missing = await LotPapers.MissingAsync(command.Db, lot);
            var to = missing.Count == 0 ? LotStatus.Released : LotStatus.Quarantine;
            LotLog.ChangeStatus(command, lot, to, missing.Count == 0
                ? $"Hold lifted: {request.Reason.Trim()}"
                : $"Hold lifted: {request.Reason.Trim()}; {LotPapers.Words(missing)} missing");
            return new LotLifted(to);
        }, cancel: cancel);

    private Task<Outcome<Nothing>> ChangeStatusAsync<T>(Actor actor, T request, LotStatus to, CancellationToken cancel)
        where T : LotActWithReason =>
        store.RunAsync<T, Nothing>(actor, request, ReasonShape, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            if (lot.Status == LotStatus.Rejected)
            {
                return new RejectedIsFinal(lot.Code, lot.StatusReason);
            }

            if (lot.Status == to)
            {
                return new Because($"{lot.Code} is {(to == LotStatus.OnHold ? "on hold" : "in quarantine")} already: {lot.StatusReason}.");
            }

            LotLog.ChangeStatus(command, lot, to, request.Reason.Trim());
            return Nothing.Value;
        }, cancel: cancel);
}

public sealed record LotLifted(LotStatus Status);
