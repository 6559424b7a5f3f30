using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A lot that holds something, with what the choice of lots, the sheet and the filling need.</summary>
/// <param name="UnitCost">Landed, of one gram or one piece.</param>
/// <param name="Density">g/mL, its own or the material's.</param>
internal sealed record ShelfLot(
    Guid MaterialId, LotOnShelf Lot, LotExpiry? Expiry, string? Shelf, long? TareMilligrams, decimal UnitCost, decimal? Density);

/// <summary>Lots as Core's rules of picking see them. Every read of "what may I use" goes through here.</summary>
internal static class Shelf
{
    /// <summary>All lots of these materials with something on hand, whether they may be used or not. Nothing is locked.</summary>
    public static async Task<List<ShelfLot>> LotsOfAsync(StudioDb db, IEnumerable<Guid> materialIds, CancellationToken cancel = default)
    {
        var ids = materialIds.Distinct().ToArray();
        var rows = await db.Lots.AsNoTracking()
            .Where(l => ids.Contains(l.MaterialId) && l.Balance!.OnHand > 0)
            .Select(l => new
            {
                l.Id, l.Code, l.MaterialId, l.Status, l.Balance!.OnHand, l.ExpiresOn, l.RetestOn, l.OpenedOn, l.ReceivedOn, l.Shelf,
                l.TareMilligrams, l.UnitCost, Density = l.Density ?? l.Material!.Density, l.Material!.StockedIn, l.Material.LifeAfterOpeningDays,
            })
            .ToListAsync(cancel);
        return rows.ConvertAll(l =>
        {
            var expiry = LotDates.Expiry(l.ExpiresOn, l.RetestOn, l.OpenedOn, l.LifeAfterOpeningDays);
            var lot = new LotOnShelf(l.Id, l.Code, l.Status, new StockAmount(l.OnHand, l.StockedIn), expiry?.On, l.OpenedOn is not null, l.ReceivedOn);
            return new ShelfLot(l.MaterialId, lot, expiry, l.Shelf, l.TareMilligrams, l.UnitCost, l.Density);
        });
    }

    /// <summary>One lot, loaded with its balance and material.</summary>
    public static LotOnShelf View(Lot lot) => new(
        lot.Id, lot.Code, lot.Status, new StockAmount(lot.Balance!.OnHand, lot.Material!.StockedIn), ExpiryOf(lot)?.On, lot.OpenedOn is not null, lot.ReceivedOn);

    public static LotExpiry? ExpiryOf(Lot lot) => LotDates.Expiry(lot.ExpiresOn, lot.RetestOn, lot.OpenedOn, lot.Material!.LifeAfterOpeningDays);

    /// <summary>Those that may be taken today, in the order in which they would be picked.</summary>
    public static IEnumerable<LotOnShelf> Usable(IEnumerable<LotOnShelf> lots, DateOnly today) =>
        LotChoice.InPickOrder(lots.Where(l => LotChoice.WhyNot(l, today) is null));

    /// <summary>What may be taken today, base units by material: released and in date.</summary>
    public static Dictionary<Guid, long> UsableByMaterial(IEnumerable<ShelfLot> lots, DateOnly today) => lots
        .GroupBy(l => l.MaterialId)
        .ToDictionary(g => g.Key, g => Usable(g.Select(l => l.Lot), today).Sum(l => l.OnHand.Units));
}
