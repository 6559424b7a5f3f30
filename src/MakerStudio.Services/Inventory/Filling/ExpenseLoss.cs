using FluentValidation;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Something abnormal was lost from the vessel: a dropped carboy, a spoiled part. It is expensed, so the bottles do not carry it.</summary>
public sealed record ExpenseLoss : StudioRequest
{
    public Guid BatchId { get; set; }
    public decimal? Grams { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class ExpenseLossValidator : AbstractValidator<ExpenseLoss>
{
    public ExpenseLossValidator()
    {
        RuleFor(r => r.Grams).NotNull().WithMessage("Weigh or estimate what was lost.").GreaterThan(0).WithMessage("The loss is more than 0 g.")
            .LessThan(1_000_000).WithMessage("That is over a tonne; check the unit.").Must(GramRules.AreWhole).WithMessage(GramRules.TooFine);
        RuleFor(r => r.Reason).OneLine("The reason", 200);
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say what happened, for the record.");
    }
}

/// <param name="Expensed">At what went in cost, not rounded.</param>
public sealed record LossExpensed(string Code, decimal Expensed);

public sealed partial class Fills
{
    private static readonly ExpenseLossValidator LossShape = new();

    public Task<Outcome<LossExpensed>> ExpenseLossAsync(Actor actor, ExpenseLoss request, CancellationToken cancel = default) =>
        store.RunAsync<ExpenseLoss, LossExpensed>(actor, request, LossShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (batch.State is not (BatchState.Weighing or BatchState.Resting or BatchState.Ready))
            {
                return new NotNow(batch.Code, batch.State, "A loss from the vessel is recorded before filling; broken bottles are recorded under Finished.");
            }

            var uses = await MaterialUsesAsync(command.Db, batch.Id, cancel);
            var weighed = Mass.FromGrams(uses.Sum(u => u.Quantity)).Milligrams;
            var before = await LostAsync(command.Db, batch.Id, cancel);
            var lost = Mass.FromGrams(request.Grams!.Value).Milligrams;
            if (before + lost > weighed)
            {
                return new MoreThanThereIs("Lost", request.Grams.Value, Mass.FromMilligrams(weighed - before).Grams);
            }

            command.Db.BatchLosses.Add(new BatchLoss
            {
                BatchId = batch.Id, Milligrams = lost, Reason = request.Reason.Trim(), PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
            });
            var cost = uses.Sum(u => u.Cost);
            command.Record("batch", batch.Id, $"{batch.Code}: {AmountWords.Grams(lost)} lost and expensed: {request.Reason.Trim()}", Topics.Batches);
            return new LossExpensed(batch.Code, cost * (LostPart(weighed, before + lost, null) - LostPart(weighed, before, null)));
        }, cancel: cancel);

    internal static Task<long> LostAsync(StudioDb db, Guid batchId, CancellationToken cancel) =>
        db.BatchLosses.Where(l => l.BatchId == batchId).SumAsync(l => l.Milligrams, cancel);

    /// <summary>What went in without what was lost abnormally: the quantities stay, each use bears its share of the loss.</summary>
    /// <param name="kept">Milligrams that reached filling or the jar; null before.</param>
    internal static async Task<IReadOnlyList<CostedUse>> KeptUsesAsync(StudioDb db, Guid batchId, long? kept, CancellationToken cancel) =>
        Kept(await MaterialUsesAsync(db, batchId, cancel), await LostAsync(db, batchId, cancel), kept);

    /// <summary>Part of what was weighed in that is expensed: lost ÷ (lost + kept), as good output is valued.</summary>
    internal static decimal LostPart(long weighed, long lost, long? kept) =>
        lost == 0 || weighed == 0 ? 0m : Math.Min(1m, (decimal)lost / (lost + (kept ?? Math.Max(0, weighed - lost))));

    internal static IReadOnlyList<CostedUse> Kept(IReadOnlyList<CostedUse> uses, long lost, long? kept)
    {
        var part = lost == 0 ? 0m : LostPart(Mass.FromGrams(uses.Sum(u => u.Quantity)).Milligrams, lost, kept);
        return part == 0m ? uses : [.. uses.Select(u => u with { UnitCost = u.UnitCost * (1m - part) })];
    }
}
