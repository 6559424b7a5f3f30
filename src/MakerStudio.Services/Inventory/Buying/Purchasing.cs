using MakerStudio.Core.Buying;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Purchase orders: what to order, drafts, what was sent and what of it came.</summary>
public sealed partial class Purchasing(StudioStore store)
{
    private const int PageSize = 50;

    /// <summary>Orders that were sent, newest first.</summary>
    /// <param name="before">The last row of the page before; null for the first page.</param>
    public async Task<IReadOnlyList<OrderRow>> ListAsync(OrderRow? before = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var orders = db.PurchaseOrders.AsQueryable();
        if (before is not null)
        {
            orders = orders.Where(o => o.SentAt < before.SentAt || (o.SentAt == before.SentAt && o.Id < before.Id));
        }

        return (await ViewsAsync(db, orders.OrderByDescending(o => o.SentAt).ThenByDescending(o => o.Id).Take(PageSize), cancel)).ConvertAll(v => v.Order);
    }

    /// <summary>All of them, newest first, read page by page.</summary>
    public async IAsyncEnumerable<OrderRow> AllAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel = default)
    {
        for (var page = await ListAsync(null, cancel); page.Count > 0; page = await ListAsync(page[^1], cancel))
        {
            foreach (var row in page)
            {
                yield return row;
            }
        }
    }

    /// <summary>One order with its lines and deliveries, by code; null when there is none.</summary>
    public async Task<OrderView?> FindAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await FindAsync(db, code, cancel);
    }

    /// <summary>The order of each of these lines.</summary>
    public async Task<IReadOnlyDictionary<Guid, string>> CodesOfAsync(IEnumerable<Guid> lineIds, CancellationToken cancel = default)
    {
        var ids = lineIds.Distinct().ToArray();
        if (ids.Length == 0)
        {
            return new Dictionary<Guid, string>();
        }

        await using var db = await store.ReadAsync(cancel);
        return await db.PurchaseOrderLines.Where(l => ids.Contains(l.Id)).ToDictionaryAsync(l => l.Id, l => l.Order!.Code, cancel);
    }

    private static async Task<OrderView?> FindAsync(StudioDb db, string code, CancellationToken cancel)
    {
        var wanted = code.Trim().ToUpperInvariant();
        if ((await ViewsAsync(db, db.PurchaseOrders.Where(o => o.Code == wanted), cancel)).SingleOrDefault() is not { } view)
        {
            return null;
        }

        var codes = await db.MaterialSuppliers.Where(s => s.SupplierId == view.SupplierId).ToDictionaryAsync(s => s.MaterialId, s => s.SupplierCode, cancel);
        var deliveries = await (
            from line in db.DeliveryLines
            join delivery in Deliveries.Standing(db) on line.DeliveryId equals delivery.Id
            where db.PurchaseOrderLines.Any(l => l.OrderId == view.Order.Id && l.Id == line.OrderLineId)
            select new { delivery.Code, delivery.ReceivedOn, delivery.PostedAt }).Distinct().OrderBy(d => d.PostedAt).ToListAsync(cancel);
        return view with
        {
            Lines = [.. view.Lines.Select(l => l with { SupplierCode = codes.GetValueOrDefault(l.MaterialId) })],
            Deliveries = [.. deliveries.Select(d => new OrderDelivery(d.Code, d.ReceivedOn))],
        };
    }

    /// <summary>Orders with their lines and sums; what came of them is told by <see cref="OrderView.Deliveries"/> on the page alone.</summary>
    private static async Task<List<OrderView>> ViewsAsync(StudioDb db, IQueryable<PurchaseOrder> orders, CancellationToken cancel)
    {
        var rows = await orders.Select(o => new
        {
            o.Id, o.Code, o.SupplierId, Supplier = o.Supplier!.Name, o.Supplier.Address, o.OrderedOn, o.ExpectedOn, o.SentAt, o.Freight, o.TaxRate, o.Note,
            SentBy = db.Users.Where(p => p.Id == o.SentById).Select(p => p.DisplayName).First(),
            ClosedBecause = o.Closing == null ? null : o.Closing.Reason,
        }).ToListAsync(cancel);
        var ids = rows.ConvertAll(r => r.Id);
        var lines = (await OnOrder.LinesAsync(db, db.PurchaseOrderLines.Where(l => ids.Contains(l.OrderId)), cancel)).ToLookup(l => l.OrderId);
        return rows.ConvertAll(r =>
        {
            IReadOnlyList<OrderLineRow> of = [.. lines[r.Id]];
            var totals = PurchaseOrders.Totals([.. of.Select(l => new OrderLine(l.Material, l.Quantity, l.UnitPrice, l.Discount))], r.Freight, r.TaxRate);
            var row = new OrderRow(
                r.Id, r.Code, r.Supplier, r.OrderedOn, r.ExpectedOn, r.SentAt, r.SentBy, of.Count, of.Count(l => l.Outstanding > 0),
                totals.Total, StateOf(of, r.ClosedBecause is not null), r.ClosedBecause);
            return new OrderView(row, r.SupplierId, r.Address, r.Freight, r.TaxRate, r.Note, totals, [.. of.Select((l, i) => l with { Total = totals.Lines[i] })], []);
        });
    }

    private static OrderState StateOf(IReadOnlyList<OrderLineRow> lines, bool isClosed) =>
        isClosed ? OrderState.Closed
        : lines.All(l => l.Outstanding == 0) ? OrderState.Received
        : lines.Any(l => l.Received > 0) ? OrderState.PartReceived
        : OrderState.Sent;
}

public enum OrderState
{
    Sent,
    PartReceived,
    Received,

    /// <summary>The rest is waited for no longer.</summary>
    Closed,
}

/// <param name="LinesOpen">Lines of which something is still to come.</param>
/// <param name="Total">With freight and tax.</param>
public sealed record OrderRow(
    Guid Id, string Code, string Supplier, DateOnly OrderedOn, DateOnly? ExpectedOn, DateTimeOffset SentAt, string SentBy, int LineCount, int LinesOpen,
    decimal Total, OrderState State, string? ClosedBecause)
{
    /// <summary>Something is still to come.</summary>
    public bool IsOpen => State is OrderState.Sent or OrderState.PartReceived;

    public bool IsLate(DateOnly today) => IsOpen && ExpectedOn < today;
}

/// <param name="Order">The code of its order.</param>
/// <param name="Units">Ordered, milligrams or pieces.</param>
/// <param name="UnitPrice">Per <paramref name="Unit"/>, before discount.</param>
/// <param name="Discount">A fraction.</param>
/// <param name="Received">Milligrams or pieces, of deliveries that stand.</param>
public sealed record OrderLineRow(
    Guid Id, Guid OrderId, string Order, DateOnly? ExpectedOn, Guid MaterialId, string Material, StockUnit StockedIn, decimal Quantity, AmountUnit Unit, long Units,
    decimal UnitPrice, decimal Discount, long Received)
{
    public string? SupplierCode { get; init; }

    /// <summary>Whole coins.</summary>
    public decimal Total { get; init; }

    /// <summary>Milligrams or pieces.</summary>
    public long Outstanding => (long)PurchaseOrders.Outstanding(Units, [Received]);

    /// <summary>More came than was ordered; milligrams or pieces.</summary>
    public long Over => Math.Max(0, Received - Units);

    /// <summary>The same in the unit of the order, to the quantity it was ordered in.</summary>
    public decimal StillToCome => Received == 0 ? Quantity : decimal.Round(Quantity * Outstanding / Units, UnitDecimals);

    private const int UnitDecimals = 6;
}

public sealed record OrderDelivery(string Code, DateOnly ReceivedOn);

public sealed record OrderView(
    OrderRow Order, Guid SupplierId, string? SupplierAddress, decimal Freight, decimal TaxRate, string? Note, OrderTotals Totals,
    IReadOnlyList<OrderLineRow> Lines, IReadOnlyList<OrderDelivery> Deliveries);
