using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Books;

/// <summary>Replays finished units. A unit costs what its batch cost, under every method: batches are told apart.</summary>
internal sealed class UnitBooks(IReadOnlyDictionary<Guid, decimal> costs)
{
    private readonly Dictionary<Guid, ValuePool> _sold = [];
    private readonly Dictionary<Guid, ValuePool> _lost = [];
    private readonly Dictionary<(Guid Kit, Guid Batch), ValuePool> _inKits = [];
    private readonly Dictionary<(Guid Kit, Guid Batch), decimal> _cameOutOfSold = [];
    private readonly Dictionary<Guid, decimal> _openKits = [];
    private readonly HashSet<Guid> _begun = [];
    private readonly Dictionary<UnitMoveKind, decimal> _why = [];

    public Dictionary<Guid, ValuePool> Held { get; } = [];

    /// <summary>Batches whose cost has gone into units.</summary>
    public IReadOnlySet<Guid> Begun => _begun;

    /// <summary>Found on counting, at the cost of the units beside them.</summary>
    public decimal Found { get; private set; }

    /// <summary>Sold, by batch or assembly, less what came back.</summary>
    public IReadOnlyDictionary<Guid, ValuePool> Sold => _sold;

    public decimal CostOfSales => _sold.Values.Sum(p => p.Value);

    /// <summary>Units lost or given away, by why: a move without a kind counts as <see cref="UnitMoveKind.Breakage"/>.</summary>
    public IReadOnlyDictionary<UnitMoveKind, decimal> Lost => _why;

    /// <summary>What lay in the boxes of kits that were taken apart.</summary>
    public decimal KitBoxes => _openKits.Values.Sum();

    public void Post(BookUnits move)
    {
        var id = move.BatchId;
        switch (move.Effect)
        {
            case BookEffect.FromBatch when move.Count > 0:
                Put(id, new(move.Count, _begun.Add(id) ? costs.GetValueOrDefault(id) : 0m));
                break;
            case BookEffect.FromBatch or BookEffect.Expensed when move.Count < 0:
                var gone = Take(id, -move.Count);
                Add(_lost, id, gone);
                Say(move, gone.Value);
                break;
            case BookEffect.Expensed:
                var again = TakeFrom(_lost, id, move.Count);
                Put(id, again);
                Say(move, -again.Value);
                break;
            case BookEffect.BackFromSale when move.Count < 0:
                GoBack(id, -move.Count);
                break;
            case BookEffect.CostOfSales when move.Count < 0:
                Add(_sold, id, Take(id, -move.Count));
                break;
            case BookEffect.CostOfSales or BookEffect.BackFromSale:
                ComeBack(id, move.Count);
                break;
            case BookEffect.Found when move.Count > 0:
                var value = decimal.Round((Held.GetValueOrDefault(id).UnitCost ?? 0m) * move.Count, ValuePool.ShareDecimals);
                Put(id, new(move.Count, value));
                Found += value;
                break;
            case BookEffect.Found:
                Found -= Take(id, -move.Count).Value;
                break;
            case BookEffect.Kit:
                PostKit(move);
                break;
            default:
                break;
        }
    }

    /// <summary>Units sold by themselves come back first; then those that were sold inside a kit, at what they went into it with.</summary>
    private void ComeBack(Guid id, int count)
    {
        var alone = (int)Math.Min(count, _sold.GetValueOrDefault(id).Quantity);
        Put(id, TakeFrom(_sold, id, alone));
        var left = count - alone;
        foreach (var key in _inKits.Keys.Where(k => k.Batch == id && _sold.GetValueOrDefault(k.Kit).Quantity > 0).ToList())
        {
            var back = TakeFrom(_inKits, key, Math.Min(left, _inKits[key].Quantity));
            var kit = _sold[key.Kit];
            var value = Math.Min(back.Value, kit.Value);
            _sold[key.Kit] = kit with { Value = kit.Value - value };
            _cameOutOfSold[key] = _cameOutOfSold.GetValueOrDefault(key) + back.Quantity;
            Put(id, back with { Value = value });
            left -= (int)back.Quantity;
        }

        if (left > 0)
        {
            throw new ArgumentOutOfRangeException(nameof(count), $"{left} more come back than were sold.");
        }
    }

    /// <summary>A return that is taken back: units go into the kits they came out of, then to those sold by themselves.</summary>
    private void GoBack(Guid id, int count)
    {
        decimal left = count;
        foreach (var key in _cameOutOfSold.Where(c => c.Key.Batch == id && c.Value > 0).Select(c => c.Key).ToList())
        {
            var units = Take(id, Math.Min(left, _cameOutOfSold[key]));
            _cameOutOfSold[key] -= units.Quantity;
            _sold[key.Kit] = _sold[key.Kit] with { Value = _sold[key.Kit].Value + units.Value };
            Add(_inKits, key, units);
            left -= units.Quantity;
        }

        Add(_sold, id, Take(id, left));
    }

    /// <summary>
    /// Units go into an assembly with their money and come out with it; what they do not take along of a kit that is
    /// taken apart lay in its box, and is expensed.
    /// </summary>
    private void PostKit(BookUnits move)
    {
        var isComponent = move.KitId is { } of && of != move.BatchId;
        var kit = move.KitId ?? move.BatchId;
        if (isComponent && move.Count < 0)
        {
            var taken = Take(move.BatchId, -move.Count);
            Add(_inKits, (kit, move.BatchId), taken);
            _openKits[kit] = _openKits.GetValueOrDefault(kit) + taken.Value;
        }
        else if (isComponent)
        {
            var back = TakeFrom(_inKits, (kit, move.BatchId), move.Count);
            Put(move.BatchId, back);
            _openKits[kit] = _openKits.GetValueOrDefault(kit) - back.Value;
        }
        else if (move.Count > 0)
        {
            Put(kit, new(move.Count, _openKits.GetValueOrDefault(kit) + (_begun.Add(kit) ? costs.GetValueOrDefault(kit) : 0m)));
            _openKits[kit] = 0m;
        }
        else
        {
            _openKits[kit] = _openKits.GetValueOrDefault(kit) + Take(kit, -move.Count).Value;
        }
    }

    private void Say(BookUnits move, decimal value)
    {
        var kind = move.Kind ?? UnitMoveKind.Breakage;
        _why[kind] = _why.GetValueOrDefault(kind) + value;
    }

    private void Put(Guid id, ValuePool pool) => Add(Held, id, pool);

    private ValuePool Take(Guid id, decimal count) => TakeFrom(Held, id, count);

    private static void Add<TKey>(Dictionary<TKey, ValuePool> pools, TKey key, ValuePool pool)
        where TKey : notnull => pools[key] = pools.GetValueOrDefault(key) + pool;

    /// <exception cref="ArgumentOutOfRangeException">More goes than was there: the ledger never holds such moves.</exception>
    private static ValuePool TakeFrom<TKey>(Dictionary<TKey, ValuePool> pools, TKey key, decimal count)
        where TKey : notnull
    {
        (var taken, pools[key]) = pools.GetValueOrDefault(key).Take(count);
        return taken;
    }
}
