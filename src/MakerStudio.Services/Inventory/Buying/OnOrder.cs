using System.Linq.Expressions;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <param name="Units">Ordered, milligrams or pieces.</param>
/// <param name="Received">The same, of deliveries that stand.</param>
internal sealed record OrderedLine(
    Guid OrderId, string Code, DateOnly? ExpectedOn, bool IsClosed, int Position, Guid MaterialId, decimal Quantity, AmountUnit Unit, long Units,
    decimal UnitPrice, decimal Discount, long Received)
{
    public long Outstanding => Math.Max(0, Units - Received);
}

/// <summary>An amount on its way. All in milligrams or pieces.</summary>
/// <param name="ExpectedOn">The earliest day that was named; null when none was.</param>
public sealed record OnItsWay(long Units, DateOnly? ExpectedOn, IReadOnlyList<string> Orders);

/// <summary>
/// What was ordered and has not come: ordered less what deliveries brought that name the line. It is worked out and
/// stored nowhere, so it cannot drift.
/// </summary>
internal static class OnOrder
{
    /// <param name="only">One material; null for all.</param>
    public static async Task<Dictionary<Guid, OnItsWay>> OfAsync(StudioDb db, Guid? only, CancellationToken cancel)
    {
        var lines = await LinesAsync(db, l => l.Order!.Closing == null && (only == null || l.MaterialId == only), cancel);
        return lines.Where(l => l.Outstanding > 0).GroupBy(l => l.MaterialId).ToDictionary(
            g => g.Key, g => new OnItsWay(g.Sum(l => l.Outstanding), g.Min(l => l.ExpectedOn), [.. g.Select(l => l.Code).Distinct().Order(StringComparer.Ordinal)]));
    }

    public static Task<List<OrderedLine>> LinesAsync(StudioDb db, Expression<Func<PurchaseOrderLine, bool>> where, CancellationToken cancel)
    {
        var standing = Deliveries.Standing(db).Select(d => d.Id);
        return db.PurchaseOrderLines.Where(where).Select(l => new OrderedLine(
            l.OrderId, l.Order!.Code, l.Order.ExpectedOn, l.Order.Closing != null, l.Position, l.MaterialId, l.Quantity, l.Unit, l.Units, l.UnitPrice, l.Discount,
            db.DeliveryLines.Where(d => d.OrderLineId == l.Id && standing.Contains(d.DeliveryId)).Sum(d => (long?)d.Quantity) ?? 0)).ToListAsync(cancel);
    }
}
