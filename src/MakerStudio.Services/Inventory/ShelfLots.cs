using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A lot that holds something, with what the sheet and the choice of lots need.</summary>
internal sealed record ShelfLot(
    Guid MaterialId, LotOnShelf Lot, LotExpiry? Expiry, string? Shelf, long? TareMilligrams, decimal UnitCost, decimal? Density);

internal static class ShelfLots
{
    /// <summary>All lots of these materials with something on hand, whether they may be used or not.</summary>
    public static async Task<List<ShelfLot>> OfAsync(StudioDb db, IReadOnlyCollection<Guid> materials, CancellationToken cancel = default)
    {
        var rows = await db.Lots.AsNoTracking()
            .Where(l => materials.Contains(l.MaterialId) && l.Balance!.OnHand > 0)
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

    /// <summary>What may be taken today, base units by material: released and in date.</summary>
    public static Dictionary<Guid, long> Usable(IEnumerable<ShelfLot> lots, DateOnly today) => lots
        .Where(l => LotChoice.WhyNot(l.Lot, today) is null)
        .GroupBy(l => l.MaterialId)
        .ToDictionary(g => g.Key, g => g.Sum(l => l.Lot.OnHand.Units));

    /// <summary>Why a lot may not be weighed from, as it stands beside it in a list; null when it may.</summary>
    public static string? WhyNot(LotOnShelf lot, DateOnly today) => LotChoice.WhyNot(lot, today) switch
    {
        null => null,
        LotRefusal.Rejected => "rejected",
        LotRefusal.NotReleased { Status: LotStatus.Quarantine } => "in quarantine",
        LotRefusal.NotReleased => "on hold",
        LotRefusal.Expired expired => $"date passed {MassText.Day(expired.On)}",
        _ => "nothing left",
    };

    /// <summary>Today in the studio's time zone, for reads.</summary>
    public static async Task<DateOnly> TodayAsync(StudioDb db, TimeProvider clock, CancellationToken cancel)
    {
        var zone = await db.Studio.Select(s => s.TimeZone).SingleAsync(cancel);
        return DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(clock.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(zone)).DateTime);
    }
}
