namespace MakerStudio.Core.Stock;

/// <summary>
/// Replays movements and keeps where the money is. What goes out before anything is there waits for the next
/// receipt, and takes its cost from that.
/// </summary>
internal abstract class CostFlow
{
    private readonly Dictionary<long, decimal> _issues = [];
    private readonly List<(long Id, string Pool, decimal Quantity)> _waiting = [];
    private decimal _received;
    private decimal _quantity;

    public void Post(ValuedMovement movement)
    {
        _quantity += movement.Quantity;
        if (movement.Quantity > 0)
        {
            _received += movement.Value;
            Put(movement, CoverWaiting(PoolOf(movement), new ValuePool(movement.Quantity, movement.Value)));
            return;
        }

        var (wanted, value) = (-movement.Quantity, 0m);
        while (wanted > 0 && Take(movement, wanted) is { Quantity: > 0 } taken)
        {
            wanted -= taken.Quantity;
            value += taken.Value;
        }

        _issues[movement.Id] = value;
        if (wanted > 0)
        {
            _waiting.Add((movement.Id, PoolOf(movement), wanted));
        }
    }

    public StockValue Value() => new(
        _quantity, _received, Ending, _issues.Values.Sum(), _waiting.Sum(w => w.Quantity), _issues);

    protected abstract decimal Ending { get; }

    protected abstract string PoolOf(ValuedMovement movement);

    protected abstract void Put(ValuedMovement movement, ValuePool received);

    /// <summary>Up to the wanted quantity; nothing when there is nothing.</summary>
    protected abstract ValuePool Take(ValuedMovement movement, decimal wanted);

    private ValuePool CoverWaiting(string pool, ValuePool received)
    {
        while (received.Quantity > 0 && _waiting.FindIndex(w => w.Pool == pool) is >= 0 and var at)
        {
            var (id, _, owed) = _waiting[at];
            (var taken, received) = received.Take(Math.Min(owed, received.Quantity));
            _issues[id] += taken.Value;
            _waiting.RemoveAt(at);
            if (owed > taken.Quantity)
            {
                _waiting.Insert(at, (id, pool, owed - taken.Quantity));
            }
        }

        return received;
    }
}

/// <summary>A layer for each receipt; the oldest is used up first.</summary>
internal sealed class FirstInFirstOut : CostFlow
{
    private readonly Queue<ValuePool> _layers = new();
    private ValuePool _oldest;

    protected override decimal Ending => _oldest.Value + _layers.Sum(l => l.Value);

    protected override string PoolOf(ValuedMovement movement) => string.Empty;

    protected override void Put(ValuedMovement movement, ValuePool received) => _layers.Enqueue(received);

    protected override ValuePool Take(ValuedMovement movement, decimal wanted)
    {
        while (_oldest.Quantity == 0 && _layers.TryDequeue(out var next))
        {
            _oldest = next;
        }

        (var taken, _oldest) = _oldest.Take(Math.Min(wanted, _oldest.Quantity));
        return taken;
    }
}

/// <summary>One average for each pool: a pool a lot, or one for everything.</summary>
internal sealed class PoolOfEach(Func<ValuedMovement, string> poolOf) : CostFlow
{
    private readonly Dictionary<string, ValuePool> _pools = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, ValuePool> Pools => _pools;

    protected override decimal Ending => _pools.Values.Sum(p => p.Value);

    protected override string PoolOf(ValuedMovement movement) => poolOf(movement);

    protected override void Put(ValuedMovement movement, ValuePool received) =>
        _pools[poolOf(movement)] = _pools.GetValueOrDefault(poolOf(movement)) + received;

    protected override ValuePool Take(ValuedMovement movement, decimal wanted)
    {
        var pool = _pools.GetValueOrDefault(poolOf(movement));
        var (taken, left) = pool.Take(Math.Min(wanted, pool.Quantity));
        _pools[poolOf(movement)] = left;
        return taken;
    }
}
