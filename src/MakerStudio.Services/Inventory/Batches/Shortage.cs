using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What a batch still needs and cannot have yet. Amounts are base units: milligrams or pieces.</summary>
/// <param name="Needed">Still to be taken by this batch.</param>
/// <param name="Usable">Released and in date, on the shelf now.</param>
/// <param name="ReservedBefore">Of that, needed by batches planned earlier.</param>
/// <param name="ReservedBy">Their codes.</param>
public sealed record Shortage(
    Guid MaterialId, string MaterialName, StockUnit Unit, long Needed, long Usable, long ReservedBefore, IReadOnlyList<string> ReservedBy)
{
    /// <summary>Above zero.</summary>
    public long ShortBy => Needed - Math.Max(0, Usable - ReservedBefore);

    public override string ToString()
    {
        var reserved = ReservedBy.Count == 0 ? "" : $", {AmountWords.Amount(ReservedBefore, Unit)} of it reserved before by {string.Join(", ", ReservedBy)}";
        return $"{MaterialName} is short {AmountWords.Amount(ShortBy, Unit)}: needs {AmountWords.Amount(Needed, Unit)}, {AmountWords.Amount(Usable, Unit)} usable{reserved}.";
    }
}

internal static class Shortages
{
    /// <summary>The shortages of every batch that still needs something, by batch. Who planned first is served first.</summary>
    /// <param name="only">Looks at these materials alone; null for all.</param>
    public static async Task<Dictionary<Guid, List<Shortage>>> ByBatchAsync(
        StudioDb db, DateOnly today, IReadOnlyCollection<Guid>? only = null, CancellationToken cancel = default)
    {
        var rows = await Outstanding.OfAsync(db, only, cancel);
        var ids = rows.Select(r => r.MaterialId).Distinct().ToArray();
        var usable = Shelf.UsableByMaterial(await Shelf.LotsOfAsync(db, ids, cancel), today);
        var materials = await db.Materials.AsNoTracking().Where(m => ids.Contains(m.Id))
            .ToDictionaryAsync(m => m.Id, m => new { m.Name, m.StockedIn }, cancel);
        var found = new Dictionary<Guid, List<Shortage>>();
        foreach (var need in rows.GroupBy(r => (r.BatchId, r.MaterialId, r.PlannedAt)))
        {
            var before = rows.Where(r => r.MaterialId == need.Key.MaterialId && r.BatchId != need.Key.BatchId
                && (r.PlannedAt, r.BatchId).CompareTo((need.Key.PlannedAt, need.Key.BatchId)) < 0).ToList();
            var material = materials[need.Key.MaterialId];
            var shortage = new Shortage(
                need.Key.MaterialId, material.Name, material.StockedIn, need.Sum(r => r.Units), usable.GetValueOrDefault(need.Key.MaterialId),
                before.Sum(r => r.Units), [.. before.Select(r => r.BatchCode).Distinct()]);
            if (shortage.ShortBy > 0)
            {
                (found.TryGetValue(need.Key.BatchId, out var list) ? list : found[need.Key.BatchId] = []).Add(shortage);
            }
        }

        return found;
    }

    public static async Task<List<Shortage>> OfAsync(StudioDb db, Guid batchId, DateOnly today, CancellationToken cancel = default)
    {
        var materials = await db.BatchLines.Where(l => l.BatchId == batchId).Select(l => l.MaterialId)
            .Union(db.BatchParts.Where(p => p.BatchId == batchId).Select(p => p.MaterialId)).ToListAsync(cancel);
        return (await ByBatchAsync(db, today, materials, cancel)).GetValueOrDefault(batchId) ?? [];
    }
}
