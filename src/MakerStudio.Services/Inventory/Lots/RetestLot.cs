using FluentValidation;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>A passed re-test: moves the retest date, never the supplier's expiry.</summary>
public sealed record RetestLot : StudioRequest
{
    public Guid LotId { get; set; }

    /// <summary>What was found: "re-smelled, passed".</summary>
    public string Finding { get; set; } = "";

    /// <summary>The new retest date is this many days from today.</summary>
    public int Days { get; set; }
}

public sealed class RetestLotValidator : AbstractValidator<RetestLot>
{
    /// <summary>Most days a re-test gives; the house's own bound.</summary>
    public const int MostDays = 1096;

    public RetestLotValidator()
    {
        RuleFor(r => r.Finding).NotEmpty().WithMessage("Say what you found, for example: re-smelled, passed.").MaximumLength(200).WithMessage("Say it in at most 200 characters.");
        RuleFor(r => r.Days).InclusiveBetween(1, MostDays).WithMessage("A re-test gives from 1 to 1,096 days.");
    }
}

/// <param name="UseBy">The date that now ends its use; another date than the retest may come first.</param>
public sealed record LotRetested(DateOnly RetestOn, LotExpiry UseBy);

public sealed partial class Lots
{
    private static readonly RetestLotValidator RetestShape = new();

    public Task<Outcome<LotRetested>> RetestAsync(Actor actor, RetestLot request, CancellationToken cancel = default) =>
        store.RunAsync<RetestLot, LotRetested>(actor, request, RetestShape, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            if (lot.Status == LotStatus.Rejected)
            {
                return new RejectedIsFinal(lot.Code, lot.StatusReason);
            }

            if (lot.ExpiresOn is { } expiry && expiry < command.Today)
            {
                return new Because(
                    $"The supplier's expiry of {lot.Code}, {AmountWords.Day(expiry)}, has passed. A re-test moves the retest date only.",
                    "Ask the supplier for a new statement, or reject the lot.");
            }

            var on = command.Today.AddDays(request.Days);
            LotLog.Add(command, lot, LotEventKind.Retested, request.Finding.Trim(), $"+{request.Days} d", lot.RetestOn, on);
            lot.RetestOn = on;
            command.Record("lot", lot.Id, $"{lot.Code}: {request.Finding.Trim()}, retest {AmountWords.Day(on)}", Topics.Lots);
            return new LotRetested(on, LotDates.Expiry(lot.ExpiresOn, on, lot.OpenedOn, lot.Material!.LifeAfterOpeningDays)!);
        }, cancel: cancel);
}
