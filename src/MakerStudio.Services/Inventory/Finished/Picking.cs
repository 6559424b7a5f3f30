using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

/// <summary>Units or kits taken for one line of a sale.</summary>
internal sealed record TakenUnits(Guid? BatchId, Guid? KitLotId, string Code, int Count, decimal Tag, string? Reason, decimal? KitCost = null);

/// <summary>Takes what a sale asks for from locked units, line by line: what one line took the next cannot have.</summary>
internal sealed class Picking(
    Command command, LockedUnits locked, Place place, Dictionary<(Guid, string?), List<Guid>> products, Dictionary<Guid, List<Guid>> kits)
{
    private readonly Dictionary<Guid, int> _taken = [];

    public List<TakenUnits> Taken { get; } = [];

    public async Task<Refusal?> TakeAsync(SoldLine line, CancellationToken cancel) => line switch
    {
        { KitLotId: { } kit } => await TakeKitsAsync(line, kit, cancel),
        { BatchId: { } batch } => TakeBatch(line, batch),
        _ => TakeProduct(line, (line.FormulaId!.Value, line.SizeName)),
    };

    /// <summary>Posts what was taken. Units in kits left the shelf when the kits were built.</summary>
    public void Move(UnitEntry entry)
    {
        foreach (var taken in Taken.Where(t => t.BatchId is not null))
        {
            UnitLedger.Post(command, locked, entry, new UnitMove(taken.BatchId!.Value, UnitMoveKind.Sale, taken.Count), place.Id);
        }
    }

    private Refusal? TakeProduct(SoldLine line, (Guid, string?) product)
    {
        var offers = Offers(product);
        var plan = UnitChoice.For(line.Quantity!.Value, offers, command.Today);
        if (!plan.IsMet)
        {
            var name = locked.Batches.Values.FirstOrDefault(b => products[product].Contains(b.Id))?.ScentName ?? "This product";
            return plan.PassedOver.Where(p => p.Why is not LotRefusal.Empty).ToList() is [var passed, ..] && plan.Picks.Count == 0
                ? new NotToBeSold(passed.Code, passed.Why)
                : new UnitsShort($"{name} at {place.Name}", line.Quantity.Value, line.Quantity.Value - plan.Missing);
        }

        foreach (var pick in plan.Picks)
        {
            Take(pick.BatchId, pick.Count, line);
        }

        return null;
    }

    private Refusal? TakeBatch(SoldLine line, Guid id)
    {
        if (!locked.Batches.TryGetValue(id, out var batch))
        {
            return new NotFound("This batch");
        }

        var available = Available(id);
        if (available < line.Quantity)
        {
            return new UnitsShort($"{batch.Code} at {place.Name}", line.Quantity!.Value, available);
        }

        var product = products.Single(p => p.Value.Contains(id)).Key;
        var hasReason = !string.IsNullOrWhiteSpace(line.Reason);
        if (NotToBeSold.Of(batch, command.Today) is { } refused && !(hasReason && refused.Why is LotRefusal.Expired))
        {
            return refused;
        }

        var first = UnitChoice.For(1, Offers(product), command.Today).Picks.Select(p => p.Code).FirstOrDefault();
        if (first is not null && first != batch.Code && !hasReason)
        {
            return new NotFirst(batch.Code, first);
        }

        Take(id, line.Quantity!.Value, line);
        return null;
    }

    private async Task<Refusal?> TakeKitsAsync(SoldLine line, Guid id, CancellationToken cancel)
    {
        if (!kits.TryGetValue(id, out var contents) || place.Kind != PlaceKind.Studio)
        {
            return new Because("These kits are not on this shelf.", "Kits are sold from the studio's own shelf.");
        }

        var lot = await Kits.LockLotAsync(command, id, cancel);
        if (lot.Left < line.Quantity)
        {
            return new UnitsShort($"Kits {lot.Code}", line.Quantity!.Value, lot.Left);
        }

        if (contents.Select(c => locked.Batches[c]).FirstOrDefault(b => b.HeldReason is not null) is { } held)
        {
            return new NotToBeSold(held.Code, new LotRefusal.NotReleased(LotStatus.OnHold));
        }

        (lot.Left, lot.Sold) = (lot.Left - line.Quantity!.Value, lot.Sold + line.Quantity.Value);
        Taken.Add(new TakenUnits(null, id, lot.Code, line.Quantity.Value, line.Tag!.Value, line.Reason, lot.UnitCost));
        return null;
    }

    private void Take(Guid batch, int count, SoldLine line)
    {
        _taken[batch] = _taken.GetValueOrDefault(batch) + count;
        Taken.Add(new TakenUnits(batch, null, locked.Batches[batch].Code, count, line.Tag!.Value, string.IsNullOrWhiteSpace(line.Reason) ? null : line.Reason.Trim()));
    }

    private int Available(Guid batch) => locked.At(batch, place.Id) - _taken.GetValueOrDefault(batch);

    private IEnumerable<BatchOnShelf> Offers((Guid, string?) product) =>
        products[product].Where(locked.Batches.ContainsKey).Select(id => OnShelf(locked.Batches[id]));

    private BatchOnShelf OnShelf(Batch batch) => new(
        batch.Id, batch.Code, Available(batch.Id), batch.BestBefore, DateOnly.FromDateTime((batch.FilledAt ?? batch.PlannedAt).UtcDateTime), batch.HeldReason is not null);
}
