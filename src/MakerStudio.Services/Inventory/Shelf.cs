using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Lots as Core's rules of picking see them.</summary>
internal static class Shelf
{
    /// <summary>Every lot of these materials that still holds something, or was never used up, by material.</summary>
    public static async Task<ILookup<Guid, LotOnShelf>> LotsOfAsync(StudioDb db, IEnumerable<Guid> materialIds, CancellationToken cancel = default)
    {
        var ids = materialIds.Distinct().ToArray();
        var lots = await db.Lots.AsNoTracking().Include(l => l.Balance).Include(l => l.Material)
            .Where(l => ids.Contains(l.MaterialId) && l.Balance!.OnHand > 0).ToListAsync(cancel);
        return lots.ToLookup(l => l.MaterialId, View);
    }

    /// <summary>One lot, loaded with its balance and material.</summary>
    public static LotOnShelf View(Lot lot) => new(
        lot.Id, lot.Code, lot.Status, new StockAmount(lot.Balance!.OnHand, lot.Material!.StockedIn), ExpiryOf(lot)?.On, lot.OpenedOn is not null, lot.ReceivedOn);

    public static LotExpiry? ExpiryOf(Lot lot) => LotDates.Expiry(lot.ExpiresOn, lot.RetestOn, lot.OpenedOn, lot.Material!.LifeAfterOpeningDays);
}
