using FluentValidation;

namespace MakerStudio.Services.Inventory;

/// <summary>Says until when units of a batch are sold. The earliest date is picked first.</summary>
public sealed record SetBestBefore : StudioRequest
{
    public Guid BatchId { get; set; }
    public DateOnly? BestBefore { get; set; }
}

public sealed class SetBestBeforeValidator : AbstractValidator<SetBestBefore>
{
    public SetBestBeforeValidator() => RuleFor(r => r.BestBefore).SaneBestBefore();
}

internal static class BestBeforeRules
{
    // Own bounds, against a slip of the year.
    private static readonly DateOnly Earliest = new(2000, 1, 1);
    private static readonly DateOnly Latest = new(2100, 1, 1);

    public static void SaneBestBefore<T>(this IRuleBuilder<T, DateOnly?> rule) =>
        rule.LessThan(Latest).WithMessage("That is far off; check the year.").GreaterThan(Earliest).WithMessage("That is long past; check the year.");
}

public sealed partial class FinishedGoods
{
    private static readonly SetBestBeforeValidator SetBestBeforeShape = new();

    public Task<Outcome<Nothing>> SetBestBeforeAsync(Actor actor, SetBestBefore request, CancellationToken cancel = default) =>
        store.RunAsync<SetBestBefore, Nothing>(actor, request, SetBestBeforeShape, async command =>
        {
            var locked = await UnitLedger.LockAsync(command, [request.BatchId], cancel);
            if (!locked.Batches.TryGetValue(request.BatchId, out var batch))
            {
                return new NotFound("This batch");
            }

            var before = batch.BestBefore;
            batch.BestBefore = request.BestBefore;
            command.Record("batch", batch.Id, $"{batch.Code}: best before {Say(before)} → {Say(request.BestBefore)}", Topics.Finished);
            return Nothing.Value;

            static string Say(DateOnly? day) => day is { } known ? AmountWords.Day(known) : "not set";
        }, cancel: cancel);
}
