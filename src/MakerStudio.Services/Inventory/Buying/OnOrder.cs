using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>An amount on its way. All in milligrams or pieces.</summary>
/// <param name="ExpectedOn">The earliest day that was named; null when none was.</param>
public sealed record OnItsWay(long Units, DateOnly? ExpectedOn, IReadOnlyList<string> Orders);

/// <summary>
/// What was ordered and has not come: ordered less what deliveries brought that name the line. It is worked out and
/// stored nowhere, so it cannot drift.
/// </summary>
internal static class OnOrder
{
    /// <param name="only">These materials; null for all.</param>
    public static async Task<Dictionary<Guid, OnItsWay>> OfAsync(StudioDb db, IReadOnlyCollection<Guid>? only, CancellationToken cancel)
    {
        var lines = await LinesAsync(db, db.PurchaseOrderLines.Where(l => l.Order!.Closing == null && (only == null || only.Contains(l.MaterialId))), cancel);
        return lines.Where(l => l.Outstanding > 0).GroupBy(l => l.MaterialId).ToDictionary(
            g => g.Key, g => new OnItsWay(g.Sum(l => l.Outstanding), g.Min(l => l.ExpectedOn), [.. g.Select(l => l.Order).Distinct().Order(StringComparer.Ordinal)]));
    }

    /// <summary>In the order of each order.</summary>
    public static Task<List<OrderLineRow>> LinesAsync(StudioDb db, IQueryable<PurchaseOrderLine> lines, CancellationToken cancel)
    {
        var standing = Deliveries.Standing(db).Select(d => d.Id);
        return lines.OrderBy(l => l.Position).Select(l => new OrderLineRow(
            l.Id, l.OrderId, l.Order!.Code, l.Order.ExpectedOn, l.MaterialId, l.Material!.Name, l.Material.StockedIn, l.Quantity, l.Unit, l.Units, l.UnitPrice, l.Discount,
            db.DeliveryLines.Where(d => d.OrderLineId == l.Id && standing.Contains(d.DeliveryId)).Sum(d => (long?)d.Quantity) ?? 0)).ToListAsync(cancel);
    }
}
