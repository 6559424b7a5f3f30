using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Batches whose rows are locked, with what stands where of them. The shelf follows what is posted.</summary>
internal sealed class LockedUnits(IReadOnlyDictionary<Guid, Batch> batches, UnitShelf shelf)
{
    public IReadOnlyDictionary<Guid, Batch> Batches => batches;
    public UnitShelf Shelf { get; set; } = shelf;

    public int At(Guid batch, Guid place, UnitStatus status = UnitStatus.Saleable) => Shelf[UnitLedger.Of(batch, place, status)];
}

/// <summary>What the legs of one act have in common.</summary>
internal sealed record UnitEntry(Guid Id, string? Reason = null)
{
    public Guid? SaleId { get; init; }
    public Guid? KitLotId { get; init; }
}

/// <summary>
/// The only way finished units change: lock the rows of their batches in id order, then post what the rules of Core
/// allow. Kits, then lots of packaging, are locked after. The database adds the balances up by itself.
/// </summary>
internal static class UnitLedger
{
    public static async Task<LockedUnits> LockAsync(Command command, IEnumerable<Guid> batchIds, CancellationToken cancel)
    {
        var ids = batchIds.Distinct().Order().ToArray();
        var batches = await command.Db.Batches
            .FromSql($"select *, xmin from batches where id = any({ids}) order by id for update").ToListAsync(cancel);
        var balances = await command.Db.UnitBalances.AsNoTracking().Where(b => ids.Contains(b.BatchId) && b.Count > 0).ToListAsync(cancel);
        return new LockedUnits(
            batches.ToDictionary(b => b.Id), UnitShelf.Of(balances.Select(b => KeyValuePair.Create(Of(b.BatchId, b.PlaceId, b.Status), b.Count))));
    }

    /// <summary>The studio's own shelf is "here"; every other place goes by its id.</summary>
    public static UnitsOf Of(Guid batch, Guid place, UnitStatus status) =>
        new(batch, place == Place.StudioId ? UnitPlace.Here : UnitPlace.At(place), status);

    /// <summary>
    /// Posts a move by its rule. A stall is ours, so what is done "here" is done there too: pass its id as <paramref name="here"/>.
    /// Callers refuse a shortage first; one that comes this far is a bug and throws.
    /// </summary>
    public static void Post(Command command, LockedUnits locked, UnitEntry entry, UnitMove move, Guid? here = null)
    {
        var rule = UnitRules.For(move.Kind);
        if (rule.WhyNot(move) is { } why)
        {
            throw new InvalidOperationException($"{move}: {why}");
        }

        var (from, to) = Ends(rule, move, here);
        var counts = locked.Shelf.Held.ToDictionary();
        if (from is { } source)
        {
            var left = counts.GetValueOrDefault(source) - move.Count;
            counts[source] = left >= 0 ? left : throw new InvalidOperationException($"{source} would fall to {left}.");
            Add(command, entry, move.Kind, source, -move.Count);
        }

        if (to is { } target)
        {
            counts[target] = counts.GetValueOrDefault(target) + move.Count;
            Add(command, entry, move.Kind, target, move.Count);
        }

        locked.Shelf = UnitShelf.Of(counts);
    }

    /// <summary>Posts the opposite of every leg; false, and nothing is posted, when units have moved on since.</summary>
    public static bool TryReverse(Command command, LockedUnits locked, UnitEntry entry, IReadOnlyList<UnitMovement> legs)
    {
        if (legs.GroupBy(l => (l.BatchId, l.PlaceId, l.Status)).Any(g => locked.At(g.Key.BatchId, g.Key.PlaceId, g.Key.Status) < g.Sum(l => l.Change)))
        {
            return false;
        }

        foreach (var leg in legs)
        {
            Add(command, entry, leg.Kind, Of(leg.BatchId, leg.PlaceId, leg.Status), -leg.Change, leg.Id);
        }

        return true;
    }

    /// <summary>What one saleable unit of each batch cost, not rounded; a batch with nothing saleable is left out.</summary>
    public static Task<Dictionary<Guid, decimal>> UnitCostsAsync(StudioDb db, IEnumerable<Guid> batchIds, CancellationToken cancel)
    {
        var ids = batchIds.Distinct().ToArray();
        return db.Fills.AsNoTracking().Where(f => ids.Contains(f.BatchId) && f.Filled > f.Rejected + f.Retained)
            .Select(f => new { f.BatchId, f.TotalCost, Saleable = f.Filled - f.Rejected - f.Retained })
            .ToDictionaryAsync(f => f.BatchId, f => f.TotalCost / f.Saleable, cancel);
    }

    private static (UnitsOf? From, UnitsOf? To) Ends(UnitRule rule, UnitMove move, Guid? here)
    {
        UnitPlace PlaceOf(PlaceRule at) => at switch
        {
            PlaceRule.Shop => new UnitPlace(move.ShopId),
            PlaceRule.HereOrShop when move.ShopId is not null => new UnitPlace(move.ShopId),
            _ => here is { } own && own != Place.StudioId ? UnitPlace.At(own) : UnitPlace.Here,
        };
        return (
            rule.From.Count == 0 ? null : new UnitsOf(move.BatchId, PlaceOf(rule.FromPlace), move.Status ?? rule.From[0]),
            rule.To is { } to ? new UnitsOf(move.BatchId, PlaceOf(rule.ToPlace), to) : null);
    }

    private static void Add(Command command, UnitEntry entry, UnitMoveKind kind, UnitsOf units, int change, long? reverses = null) =>
        command.Db.UnitMovements.Add(new UnitMovement
        {
            EntryId = entry.Id, Kind = kind, Reason = entry.Reason, SaleId = entry.SaleId, KitLotId = entry.KitLotId, ReversesId = reverses,
            BatchId = units.BatchId, PlaceId = units.Place.ShopId ?? Place.StudioId, Status = units.Status, Change = change,
            PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        });
}

/// <summary>Fewer units are there than were asked for.</summary>
/// <param name="What">As it stands in a sentence: "RS-1 at Tollgate House".</param>
public sealed record UnitsShort(string What, int Wanted, int There) : Refusal
{
    public override string Happened => $"{What}: {Wanted:#,0} wanted, {There:#,0} {(There == 1 ? "is" : "are")} there.";
    public override string ToDo => "Somebody may have moved or sold them just now. Take fewer, or choose another batch.";
}
