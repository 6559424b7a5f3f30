using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Finished;

/// <summary>Saleable units of one batch that are here.</summary>
/// <param name="BestBefore">Last day on which they are sold; null when none is stated.</param>
/// <param name="IsBlocked">The batch is on hold.</param>
public sealed record BatchOnShelf(Guid BatchId, string Code, int Count, DateOnly? BestBefore, DateOnly FilledOn, bool IsBlocked = false);

/// <param name="Picks">In the order in which to take them.</param>
/// <param name="Missing">Units no batch could give; 0 when the demand is met.</param>
/// <param name="PassedOver">Batches that may not be sold from, with the reason.</param>
public sealed record UnitPlan(
    IReadOnlyList<(Guid BatchId, string Code, int Count)> Picks, int Missing, IReadOnlyList<(Guid BatchId, string Code, LotRefusal Why)> PassedOver)
{
    public bool IsMet => Missing == 0;
}

/// <summary>Chooses finished units by first expired, first out, by the very rules lots are chosen by.</summary>
public static class UnitChoice
{
    /// <param name="count">0 or more.</param>
    /// <param name="batches">Of one product and size.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is below zero.</exception>
    public static UnitPlan For(int count, IEnumerable<BatchOnShelf> batches, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(batches);
        var plan = LotChoice.For(StockAmount.OfPieces(count), batches.Select(AsLot), today);
        return new UnitPlan(
            [.. plan.Picks.Select(p => (p.LotId, p.Code, (int)p.Amount.Units))],
            (int)plan.Shortfall.Units,
            [.. plan.PassedOver.Select(p => (p.Lot.LotId, p.Lot.Code, p.Why))]);
    }

    private static LotOnShelf AsLot(BatchOnShelf batch) => new(
        batch.BatchId, batch.Code, batch.IsBlocked ? LotStatus.OnHold : LotStatus.Released,
        StockAmount.OfPieces(batch.Count), batch.BestBefore, false, batch.FilledOn);
}
