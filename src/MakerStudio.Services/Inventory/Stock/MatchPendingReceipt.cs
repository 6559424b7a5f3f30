using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Matches material that was used ahead of its receipt with the lot it came from.</summary>
public sealed record MatchPendingReceipt : StudioRequest
{
    public Guid PendingId { get; set; }
    public Guid LotId { get; set; }
}

/// <param name="Lots">Lots it could be matched with, as "P-4".</param>
public sealed record PendingReceiptRow(
    Guid Id, Guid MaterialId, string Material, string BatchCode, long Milligrams, decimal EstimatedUnitCost, string? Reason, string Who, DateTimeOffset At,
    IReadOnlyList<PendingLotRow> Lots);

public sealed record PendingLotRow(Guid LotId, string Code, long OnHand, decimal UnitCost);

/// <param name="CostBefore">Materials cost of the batch at the estimate, not rounded.</param>
/// <param name="CostAfter">At the lot's own cost.</param>
/// <param name="LotOnHand">Milligrams left in the lot.</param>
public sealed record ReceiptMatched(string BatchCode, string LotCode, decimal CostBefore, decimal CostAfter, long LotOnHand);

public sealed partial class Stock
{
    /// <summary>Receipts to follow, oldest first.</summary>
    public async Task<IReadOnlyList<PendingReceiptRow>> PendingAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.PendingReceipts.Where(p => p.MatchedAt == null).OrderBy(p => p.At).Select(p => new PendingReceiptRow(
            p.Id, p.MaterialId, p.Material!.Name, p.Batch!.Code, p.Milligrams, p.EstimatedUnitCost, p.Reason,
            db.Users.Where(u => u.Id == p.PersonId).Select(u => u.DisplayName).First(), p.At,
            db.Lots.Where(l => l.MaterialId == p.MaterialId && l.Status == LotStatus.Released && l.Balance!.OnHand >= p.Milligrams)
                .OrderBy(l => l.ReceivedOn).Select(l => new PendingLotRow(l.Id, l.Code, l.Balance!.OnHand, l.UnitCost)).ToList())).ToListAsync(cancel);
    }

    public Task<Outcome<ReceiptMatched>> MatchAsync(Actor actor, MatchPendingReceipt request, CancellationToken cancel = default) =>
        store.RunAsync<MatchPendingReceipt, ReceiptMatched>(actor, request, null, async command =>
        {
            var batchId = await command.Db.PendingReceipts.Where(p => p.Id == request.PendingId).Select(p => (Guid?)p.BatchId).SingleOrDefaultAsync(cancel);
            if (batchId is null || await Ledger.LockBatchAsync(command, batchId.Value) is not { } batch)
            {
                return new NotFound("This receipt to follow");
            }

            var lot = await LotLog.LockAsync(command, request.LotId);
            var pending = await command.Db.PendingReceipts.SingleAsync(p => p.Id == request.PendingId, cancel);
            var weighings = await command.Db.Weighings.Where(w => w.BatchId == batch.Id && w.ReversedAt == null).ToListAsync(cancel);
            if (WhyNotMatch(pending, weighings, lot) is { } refusal)
            {
                return refusal;
            }

            var before = CostOf(weighings);
            var weighing = weighings.Single(w => w.Id == pending.WeighingId);
            Ledger.Post(command, lot!, MovementKind.Use, -pending.Milligrams, m =>
            {
                m.BatchId = batch.Id;
                m.WeighingId = weighing.Id;
                m.Note = "Receipt to follow, matched";
            });
            weighing.LotId = lot!.Id;
            weighing.UnitCost = lot.UnitCost;
            pending.MatchedLotId = lot.Id;
            pending.MatchedAt = command.Now;
            var after = CostOf(weighings);
            await RecostAsync(command, batch, pending, lot, weighings, before, cancel);
            command.Record("batch", batch.Id, $"{batch.Code}: {AmountWords.Amount(pending.Milligrams, StockUnit.Gram)} matched with {lot.Code}, {Change(before, after)}", Topics.Lots);
            command.Announce(Topics.Batches, batch.Id);
            return new ReceiptMatched(batch.Code, lot.Code, before, after, lot.Balance!.OnHand);
        }, cancel: cancel);

    private static Refusal? WhyNotMatch(PendingReceipt pending, List<Weighing> weighings, Lot? lot) =>
        lot is null ? new NotFound("This lot")
        : pending.MatchedAt is not null ? new Because("This receipt to follow was matched already.")
        : weighings.All(w => w.Id != pending.WeighingId) ? new Because("The weighing it belongs to was taken back, so nothing is to follow.")
        : lot.MaterialId != pending.MaterialId ? new Because($"{lot.Code} is {lot.Material!.Name}, another material than was used.", "Choose a lot of the same material.")
        : lot.Status != LotStatus.Released ? new Because($"{lot.Code} is {LotWords.Status(lot.Status).ToLowerInvariant()}; only a released lot goes into a batch.", "Release it first.")
        : lot.Balance!.OnHand < pending.Milligrams ? new HoldsLess(lot.Code, lot.Balance.OnHand, pending.Milligrams, StockUnit.Gram)
        : null;

    private static IReadOnlyList<CostedUse> Uses(IEnumerable<Weighing> weighings) =>
        [.. weighings.Select(w => new CostedUse(w.Id.ToString(), Mass.FromMilligrams(w.NetMilligrams).Grams, w.UnitCost))];

    private static decimal CostOf(IEnumerable<Weighing> weighings) => Uses(weighings).Sum(u => u.Cost);

    private static string Change(decimal before, decimal after) => $"materials {AmountWords.MoneyInFull(before)} → {AmountWords.MoneyInFull(after)}";

    /// <summary>Leaves the change on the batch record and, when the batch is filled, mends the sums stored with the filling.</summary>
    private static async Task RecostAsync(
        Command command, Batch batch, PendingReceipt pending, Lot lot, List<Weighing> weighings, decimal before, CancellationToken cancel)
    {
        if (await command.Db.Fills.SingleOrDefaultAsync(f => f.BatchId == batch.Id, cancel) is { } fill)
        {
            var stored = new BatchCostSheet(
                fill.MaterialsCost, fill.PackagingCost, fill.LabourCost, fill.OverheadCost, fill.TotalCost,
                fill.Filled, null, fill.Filled - fill.Rejected - fill.Retained, null);
            var sheet = BatchCost.WithMaterials(stored, Fills.Kept(Uses(weighings), await Fills.LostAsync(command.Db, batch.Id, cancel), fill.ToFillingMilligrams));
            fill.MaterialsCost = sheet.MaterialsTotal;
            fill.TotalCost = sheet.Total;
        }

        else
        {
            await MadeLots.RecostAsync(command, batch.Id, cancel);
        }

        command.Db.Deviations.Add(new Deviation
        {
            BatchId = batch.Id, BatchLineId = weighings.Single(w => w.Id == pending.WeighingId).BatchLineId, Choice = DeviationChoice.Accepted,
            What = $"Receipt to follow: {AmountWords.Amount(pending.Milligrams, StockUnit.Gram)} of {lot.Material!.Name} matched with {lot.Code}, {Change(before, CostOf(weighings))}",
            Reason = pending.Reason, PersonId = command.PersonId, At = command.Now,
        });
    }
}
