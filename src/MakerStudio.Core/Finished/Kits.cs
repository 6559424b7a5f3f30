using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Finished;

/// <summary>Units of one batch that went into an assembly of kits, with the money in them.</summary>
/// <param name="Count">In all its kits together.</param>
public sealed record KitComponent(Guid ProductId, Guid BatchId, string BatchCode, int Count, decimal Value);

/// <summary>Taking kits apart.</summary>
public abstract record KitUndoResult
{
    private KitUndoResult()
    {
    }

    /// <param name="Back">Units that go back to their batches, with their money.</param>
    /// <param name="BoxValue">Money of the boxes: back on the shelf if they can be used again, else expensed.</param>
    /// <param name="Left">The kits still together; null when none is.</param>
    public sealed record Undone(IReadOnlyList<KitComponent> Back, decimal BoxValue, KitAssembly? Left) : KitUndoResult;

    /// <param name="Says">Why, in a sentence.</param>
    public sealed record NotPossible(string Says) : KitUndoResult;
}

/// <summary>
/// Kits assembled together. The batch codes of all components belong to each of them: which bottle is in which box
/// is not written down, so a recall of one code finds every kit of the assembly. A batch has one line.
/// </summary>
/// <param name="Kits">Above 0.</param>
/// <param name="BoxValue">Money of boxes and filling material of all of them.</param>
public sealed record KitAssembly(int Kits, IReadOnlyList<KitComponent> Components, decimal BoxValue)
{
    /// <summary>Units and boxes; exact.</summary>
    public decimal Cost => Components.Sum(c => c.Value) + BoxValue;

    /// <summary>Not rounded.</summary>
    public decimal UnitCost => Cost / Kits;

    public IEnumerable<string> BatchCodes => Components.Select(c => c.BatchCode).Distinct().Order(StringComparer.Ordinal);

    /// <summary>The units of so many kits when only one batch of each product is in them; null when somebody must read the codes off.</summary>
    public IReadOnlyDictionary<Guid, int>? Obvious(int kits) => Components.GroupBy(c => c.ProductId).Any(p => p.Count() > 1)
        ? null
        : Components.ToDictionary(c => c.BatchId, c => c.Count / Kits * kits);

    /// <param name="kits">From 1 to all of them.</param>
    /// <param name="back">Units that came out, by batch.</param>
    public KitUndoResult Undo(int kits, IReadOnlyDictionary<Guid, int> back)
    {
        ArgumentNullException.ThrowIfNull(back);
        if (WhyNot(kits, back) is { } says)
        {
            return new KitUndoResult.NotPossible(says);
        }

        var split = Components.Select(c => (Of: c, Parts: new ValuePool(c.Count, c.Value).Take(back.GetValueOrDefault(c.BatchId)))).ToList();
        var boxes = new ValuePool(Kits, BoxValue).Take(kits);
        return new KitUndoResult.Undone(
            [.. split.Select(s => With(s.Of, s.Parts.Taken)).Where(c => c.Count > 0)],
            boxes.Taken.Value,
            kits == Kits ? null : new KitAssembly(Kits - kits, [.. split.Select(s => With(s.Of, s.Parts.Left)).Where(c => c.Count > 0)], boxes.Left.Value));
    }

    private string? WhyNot(int kits, IReadOnlyDictionary<Guid, int> back)
    {
        if (kits < 1 || kits > Kits)
        {
            return $"There are {Kits} kits to take apart.";
        }

        if (Components.FirstOrDefault(c => back.GetValueOrDefault(c.BatchId) > c.Count) is { } tooMany)
        {
            return $"Only {tooMany.Count} of {tooMany.BatchCode} went into these kits.";
        }

        if (back.Any(b => b.Value < 0 || Components.All(c => c.BatchId != b.Key)))
        {
            return "Name only batches that are in these kits.";
        }

        return Components.GroupBy(c => c.ProductId)
            .Where(p => p.Sum(c => back.GetValueOrDefault(c.BatchId)) * Kits != p.Sum(c => c.Count) * kits)
            .Select(p => $"{(kits == 1 ? "1 kit holds" : $"{kits} kits hold")} {p.Sum(c => c.Count) / Kits * kits} of {string.Join(", ", p.Select(c => c.BatchCode))}; read the codes off and say how many of each.")
            .FirstOrDefault();
    }

    private static KitComponent With(KitComponent component, ValuePool pool) => component with { Count = (int)pool.Quantity, Value = pool.Value };
}
