using MakerStudio.Core.Costing;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Properties;

/// <summary>
/// A small studio in memory: lots, batches, finished units, kits and a shop. It books with the pure rules only, so
/// that what they promise about money can be tried over any sequence of operations.
/// </summary>
internal sealed class LedgerModel
{
    public static readonly Guid Shop = new("0193f2a0-0000-7000-8000-0000000000c1");

    private readonly Dictionary<Guid, ValuePool> _finished = [];
    private readonly Dictionary<Guid, ValuePool> _sold = [];
    private readonly Dictionary<Guid, int> _expensedUnits = [];
    private decimal _received;
    private decimal _conversion;
    private decimal _costOfSales;
    private decimal _expensed;

    public List<ValuePool> Lots { get; } = [];

    public List<decimal> Batches { get; } = [];

    public List<Guid> Made { get; } = [];

    public List<(Guid Id, KitAssembly Kit)> Kits { get; } = [];

    public UnitShelf Shelf { get; private set; } = UnitShelf.Empty;

    public ValueParts Parts => new(
        _received, _conversion, Lots.Sum(l => l.Value), Batches.Sum(), _finished.Values.Sum(f => f.Value), _costOfSales, _expensed);

    /// <summary>Units that carry money, counted two ways, which must agree.</summary>
    public bool CountsAgree => Made.All(id => _finished[id].Quantity == Shelf.Held.Where(h => h.Key.BatchId == id && UnitRules.CarriesValue(h.Key.Status)).Sum(h => h.Value));

    public void Receive(decimal milligrams, decimal coins)
    {
        Lots.Add(new(milligrams, coins));
        _received += coins;
    }

    public void Use(int lot, int batch, decimal milligrams)
    {
        (var taken, Lots[lot]) = Lots[lot].Take(milligrams);
        Batches[batch] += taken.Value;
    }

    public void Spill(int lot, decimal milligrams)
    {
        (var taken, Lots[lot]) = Lots[lot].Take(milligrams);
        _expensed += taken.Value;
    }

    public void Work(int batch, decimal money)
    {
        Batches[batch] += money;
        _conversion += money;
    }

    /// <summary>A part of a batch is lost in a way that is not normal.</summary>
    public void Drop(int batch, decimal part)
    {
        var (taken, left) = new ValuePool(1m, Batches[batch]).Take(part);
        Batches[batch] = left.Value;
        _expensed += taken.Value;
    }

    public void Fill(int batch, int filled, int rejected, int retained)
    {
        var id = Guid.NewGuid();
        var value = Batches[batch];
        Batches.RemoveAt(batch);
        var saleable = filled - rejected - retained;
        Made.Add(id);
        _finished[id] = default;
        foreach (var (kind, count) in new[] { (UnitMoveKind.Filled, saleable), (UnitMoveKind.RejectedAtFilling, rejected), (UnitMoveKind.RetainedAtFilling, retained) })
        {
            Shelf = count == 0 ? Shelf : ((UnitMoveResult.Moved)Shelf.Post(new(id, kind, count))).Shelf;
        }

        // Nothing to sell: the whole batch is a loss.
        _finished[id] = saleable > 0 ? new(saleable, value) : default;
        _expensed += saleable > 0 ? 0 : value;
    }

    /// <summary>Any move but those of filling and kits; false when the rules refuse it.</summary>
    public bool Move(UnitMove move)
    {
        if (move.Kind == UnitMoveKind.Return && _sold.GetValueOrDefault(move.BatchId).Quantity < move.Count)
        {
            return false;
        }

        if (Shelf.Post(move) is not UnitMoveResult.Moved moved)
        {
            return false;
        }

        Shelf = moved.Shelf;
        Book(move, moved.Effect);
        return true;
    }

    public bool MakeKits(int kits, Guid first, Guid second, int ofSecond, int lot, decimal boxes)
    {
        UnitMove[] moves = [new(first, UnitMoveKind.IntoKit, kits), new(second, UnitMoveKind.IntoKit, kits * ofSecond)];
        if (first == second || moves.Any(m => Shelf.Post(m) is not UnitMoveResult.Moved))
        {
            return false;
        }

        (var box, Lots[lot]) = Lots[lot].Take(boxes);
        var made = new KitAssembly(kits, [.. moves.Select(TakeForKit)], box.Value);
        var id = Guid.NewGuid();
        Shelf = ((UnitMoveResult.Moved)Shelf.Post(new(id, UnitMoveKind.KitMade, kits))).Shelf;
        _finished[id] = new(kits, made.Cost);
        Made.Add(id);
        Kits.Add((id, made));
        return true;
    }

    /// <summary>Takes kits apart that are whole and here; their boxes are thrown away.</summary>
    public bool UndoKits(int index, int kits)
    {
        var (id, made) = Kits[index];
        // Once some of an assembly were sold or broken, what is left of it is no longer known unit by unit.
        if (_finished[id].Quantity != made.Kits || made.Obvious(kits) is not { } back || made.Undo(kits, back) is not KitUndoResult.Undone undone
            || Shelf.Post(new(id, UnitMoveKind.KitUndone, kits)) is not UnitMoveResult.Moved moved)
        {
            return false;
        }

        Shelf = moved.Shelf;
        foreach (var component in undone.Back)
        {
            Shelf = ((UnitMoveResult.Moved)Shelf.Post(new(component.BatchId, UnitMoveKind.OutOfKit, component.Count))).Shelf;
            _finished[component.BatchId] += new ValuePool(component.Count, component.Value);
        }

        _expensed += undone.BoxValue;
        _finished[id] = undone.Left is { } left ? new(left.Kits, left.Cost) : default;
        Kits.RemoveAt(index);
        if (undone.Left is { } rest)
        {
            Kits.Add((id, rest));
        }

        return true;
    }

    /// <summary>The true cost of a filled batch is learned late; the supplier's bill changes by as much.</summary>
    public bool Relearn(Guid batch, decimal change)
    {
        var (stock, sold) = (_finished[batch], _sold.GetValueOrDefault(batch));
        var lost = _expensedUnits.GetValueOrDefault(batch);
        if (Kits.Any(k => k.Id == batch || k.Kit.Components.Any(c => c.BatchId == batch)) || stock.Quantity + sold.Quantity + lost < 1)
        {
            return false;
        }

        var shares = Recost.Spread(change, (int)stock.Quantity, (int)sold.Quantity, lost);
        _received += change;
        _finished[batch] = stock with { Value = stock.Value + shares.InStock };
        _sold[batch] = sold with { Value = sold.Value + shares.Sold };
        _costOfSales += shares.Sold;
        _expensed += shares.Expensed;
        return true;
    }

    private KitComponent TakeForKit(UnitMove move)
    {
        Shelf = ((UnitMoveResult.Moved)Shelf.Post(move)).Shelf;
        (var taken, _finished[move.BatchId]) = _finished[move.BatchId].Take(move.Count);
        return new KitComponent(move.BatchId, move.BatchId, "any", move.Count, taken.Value);
    }

    private void Book(UnitMove move, BookEffect effect)
    {
        var id = move.BatchId;
        switch (effect)
        {
            case BookEffect.CostOfSales:
                (var sold, _finished[id]) = _finished[id].Take(move.Count);
                _sold[id] = _sold.GetValueOrDefault(id) + sold;
                _costOfSales += sold.Value;
                break;
            case BookEffect.Expensed:
                (var lost, _finished[id]) = _finished[id].Take(move.Count);
                _expensedUnits[id] = _expensedUnits.GetValueOrDefault(id) + move.Count;
                _expensed += lost.Value;
                break;
            case BookEffect.BackFromSale:
                (var back, _sold[id]) = _sold[id].Take(move.Count);
                _finished[id] += back;
                _costOfSales -= back.Value;
                break;
            case BookEffect.Found:
                var found = (_finished[id].UnitCost ?? 0m) * move.Count;
                found = decimal.Round(found, ValuePool.ShareDecimals);
                _finished[id] += new ValuePool(move.Count, found);
                _received += found;
                break;
            default:
                break;
        }
    }
}
