using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>What a formula line needs to know of its material, with the shelf as it stood when read.</summary>
/// <param name="Density">g/mL, null where not known.</param>
/// <param name="OnHand">Base units in released, unexpired lots.</param>
/// <param name="Available">On hand less what planned and weighing batches still need; below zero when promised twice.</param>
/// <param name="FirstLot">The lot that would be picked first, or null.</param>
/// <param name="UnitCost">Of one gram or piece, landed, of the newest lot; null where none ever came.</param>
/// <param name="ScentShare">How much of it is scent, 0 to 1: 1 for oils, worked out for a pre-blend.</param>
public sealed record LineMaterial(
    Guid Id, string Name, MaterialKind Kind, StockUnit StockedIn, decimal? Density, decimal? DropMilligrams, bool PutAway,
    long OnHand, long Available, string? FirstLot, decimal? UnitCost, decimal ScentShare)
{
    public Density? DensityKnown => Core.Quantities.Density.WherePossible(Density);
}

/// <summary>A lot that may be weighed from today.</summary>
public sealed record UsableLot(Guid LotId, string Code, Guid MaterialId, long OnHand);

/// <summary>Reads what formulas need to know of materials. Nothing is locked: the numbers are for planning.</summary>
internal static class LineMaterials
{
    public static async Task<Dictionary<Guid, LineMaterial>> OfAsync(
        StudioDb db, IEnumerable<Guid> materialIds, DateOnly today, CancellationToken cancel)
    {
        var ids = materialIds.Distinct().ToArray();
        var lots = (await UsableLotsAsync(db, ids, today, cancel)).ToLookup(l => l.MaterialId);
        var reserved = (await Outstanding.OfAsync(db, ids, cancel)).ToLookup(r => r.MaterialId, r => r.Units);
        var costs = await db.Lots.Where(l => ids.Contains(l.MaterialId) && l.Status != LotStatus.Rejected)
            .GroupBy(l => l.MaterialId)
            .Select(g => new { g.Key, g.OrderByDescending(l => l.ReceivedOn).ThenByDescending(l => l.Id).First().UnitCost })
            .ToDictionaryAsync(c => c.Key, c => c.UnitCost, cancel);
        var scent = await ScentShares.ReadAsync(db, cancel);
        var materials = await db.Materials.Where(m => ids.Contains(m.Id))
            .Select(m => new { m.Id, m.Name, m.Kind, m.StockedIn, m.Density, m.DropMilligrams, PutAway = m.ArchivedAt != null })
            .ToListAsync(cancel);
        return materials.ToDictionary(m => m.Id, m =>
        {
            var onHand = lots[m.Id].Sum(l => l.OnHand);
            return new LineMaterial(
                m.Id, m.Name, m.Kind, m.StockedIn, m.Density, m.DropMilligrams, m.PutAway, onHand, onHand - reserved[m.Id].Sum(),
                lots[m.Id].FirstOrDefault()?.Code, costs.TryGetValue(m.Id, out var cost) ? cost : null, scent.Of(m.Id, m.Kind));
        });
    }

    /// <summary>Released, unexpired, with something in them; in the order they would be picked.</summary>
    public static async Task<IReadOnlyList<UsableLot>> UsableLotsAsync(StudioDb db, Guid[] materialIds, DateOnly today, CancellationToken cancel)
    {
        var lots = await Shelf.LotsOfAsync(db, materialIds, cancel);
        var materialOf = lots.ToDictionary(l => l.Lot.LotId, l => l.MaterialId);
        return [.. Shelf.Usable(lots.Select(l => l.Lot), today).Select(l => new UsableLot(l.LotId, l.Code, materialOf[l.LotId], l.OnHand.Units))];
    }
}
