using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Deliveries: drafts of invoices, posting them, and what was posted.</summary>
public sealed partial class Deliveries(StudioStore store)
{
    private const int PageSize = 50;

    /// <summary>Posted deliveries, newest first.</summary>
    /// <param name="before">The last row of the page before; null for the first page.</param>
    public async Task<IReadOnlyList<DeliveryRow>> ListAsync(DeliveryRow? before = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var all = db.Deliveries.AsQueryable();
        if (before is not null)
        {
            all = all.Where(d => d.PostedAt < before.PostedAt || (d.PostedAt == before.PostedAt && d.Id < before.Id));
        }

        return await Rows(db, all.OrderByDescending(d => d.PostedAt).ThenByDescending(d => d.Id).Take(PageSize)).ToListAsync(cancel);
    }

    /// <summary>All of them, newest first, read page by page.</summary>
    public async IAsyncEnumerable<DeliveryRow> AllAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel = default)
    {
        for (var page = await ListAsync(null, cancel); page.Count > 0; page = await ListAsync(page[^1], cancel))
        {
            foreach (var row in page)
            {
                yield return row;
            }
        }
    }

    /// <summary>One delivery with its lines and lots, by code; null when there is none.</summary>
    public async Task<DeliveryPage?> FindAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var wanted = code.Trim().ToUpperInvariant();
        var row = await Rows(db, db.Deliveries.Where(d => d.Code == wanted)).SingleOrDefaultAsync(cancel);
        if (row is null)
        {
            return null;
        }

        var lines = await db.DeliveryLines.Where(l => l.DeliveryId == row.Id).OrderBy(l => l.Position)
            .Select(l => new DeliveryLineRow(
                l.Material!.Name, l.Material.Kind, l.Material.StockedIn, l.QuantityTyped, l.Unit, l.Quantity, l.DensityUsed, l.Price, l.GrossKilograms,
                l.Duty, l.Surcharge, l.Discount, l.FreightShare, l.LandedTotal, l.UnitCost, l.PriceAnswer,
                db.Lots.Where(t => t.DeliveryLineId == l.Id).Select(t => new DeliveryLotRow(t.Id, t.Code, t.SupplierLot, t.Status, t.Balance!.OnHand)).First()))
            .ToListAsync(cancel);
        var facts = await db.Deliveries.Where(d => d.Id == row.Id).Select(d => new { d.Freight, d.FreightBasis, d.InvoiceTotal }).SingleAsync(cancel);
        return new DeliveryPage(row, facts.Freight, facts.FreightBasis, facts.InvoiceTotal, lines);
    }

    /// <summary>Deliveries whose receipts were not taken back.</summary>
    internal static IQueryable<Delivery> Standing(StudioDb db) =>
        db.Deliveries.Where(d => !db.Movements.Any(m =>
            m.DeliveryId == d.Id && m.Kind == MovementKind.Receipt && db.Movements.Any(r => r.ReversesId == m.Id)));

    private static IQueryable<DeliveryRow> Rows(StudioDb db, IQueryable<Delivery> deliveries) => deliveries.Select(d => new DeliveryRow(
        d.Id, d.Code, d.Supplier!.Name, d.InvoiceNumber, d.ReceivedOn, d.PostedAt,
        db.Users.Where(p => p.Id == d.PostedById).Select(p => p.DisplayName).First(),
        d.Lines.Count, d.Lines.Sum(l => l.LandedTotal),
        db.Movements.Where(m => m.DeliveryId == d.Id && m.Kind == MovementKind.Receipt)
            .SelectMany(m => db.Movements.Where(r => r.ReversesId == m.Id)).Select(r => r.Note).FirstOrDefault()));
}

/// <param name="Total">Landed total: what the bill came to, recoverable tax left out.</param>
/// <param name="TakenBack">Why it was taken back; null while it stands.</param>
public sealed record DeliveryRow(
    Guid Id, string Code, string Supplier, string? InvoiceNumber, DateOnly ReceivedOn, DateTimeOffset PostedAt, string PostedBy,
    int LineCount, decimal Total, string? TakenBack);

/// <param name="Quantity">Milligrams or pieces.</param>
/// <param name="UnitCost">Landed, of one gram or one piece.</param>
public sealed record DeliveryLineRow(
    string Material, Core.Materials.MaterialKind Kind, Core.Quantities.StockUnit StockedIn, decimal QuantityTyped, Core.Quantities.AmountUnit Unit, long Quantity,
    decimal? DensityUsed, decimal Price, decimal? GrossKilograms, decimal Duty, decimal Surcharge, decimal Discount, decimal FreightShare,
    decimal LandedTotal, decimal UnitCost, string? PriceAnswer, DeliveryLotRow Lot);

public sealed record DeliveryLotRow(Guid Id, string Code, string? SupplierLot, LotStatus Status, long OnHand);

public sealed record DeliveryPage(
    DeliveryRow Delivery, decimal Freight, Core.Costing.FreightBasis FreightBasis, decimal? InvoiceTotal, IReadOnlyList<DeliveryLineRow> Lines);
