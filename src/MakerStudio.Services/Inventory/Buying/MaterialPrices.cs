using MakerStudio.Core.Buying;
using MakerStudio.Core.Curing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What a material cost, and what its suppliers ask for it by quantity.</summary>
public sealed partial class MaterialPrices(StudioStore store)
{
    /// <summary>Everything its page of prices shows; null when there is no such material.</summary>
    public async Task<MaterialPricesView?> ViewAsync(Guid materialId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var row = await db.Materials.Where(m => m.Id == materialId)
            .Select(m => new { m.Name, m.Kind, m.StockedIn, m.Density, m.ShelfLifeDays, m.LifeAfterOpeningDays }).SingleOrDefaultAsync(cancel);
        if (row is null)
        {
            return null;
        }

        var zone = await StudioDay.ZoneAsync(db, cancel);
        var today = StudioTime.Today(store.Clock, zone);
        var stock = (await Stock.RowsAsync(db, store.Clock, [materialId], cancel)).Single();
        var reckoned = (await LineMaterials.OfAsync(db, [materialId], today, cancel))[materialId].UnitCost;
        var facts = new PricedMaterial(materialId, row.Name, row.Kind, row.StockedIn, row.Density, row.ShelfLifeDays, row.LifeAfterOpeningDays, stock.Available, stock.UsePerDay);
        return new MaterialPricesView(
            facts, today, await PaidAsync(db, materialId, cancel), await ToFollowAsync(db, materialId, zone, cancel), reckoned,
            await SuppliersAsync(db, materialId, cancel), await BreaksAsync(db, facts, cancel));
    }

    /// <summary>Products on sale that are costed with the material, by name.</summary>
    public async Task<IReadOnlyList<string>> ProductsWithAsync(Guid materialId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var products = (await PriceBook.ReadAsync(db, store.Clock, cancel)).Products;
        return [.. products.Where(p => p.Plan is { } plan && (plan.Materials.Any(m => m.MaterialId == materialId) || plan.Parts.Any(m => m.MaterialId == materialId)))
            .Select(p => p.Name)];
    }

    /// <summary>Every line that was delivered, newest first; deliveries that were taken back are left out.</summary>
    private static Task<List<PaidRow>> PaidAsync(StudioDb db, Guid materialId, CancellationToken cancel) => (
        from line in db.DeliveryLines
        join delivery in Deliveries.Standing(db) on line.DeliveryId equals delivery.Id
        join lot in db.Lots on line.Id equals lot.DeliveryLineId
        where line.MaterialId == materialId
        orderby delivery.ReceivedOn descending, delivery.PostedAt descending, line.Position descending
        select new PaidRow(
            delivery.Code, delivery.ReceivedOn, delivery.SupplierId, delivery.Supplier!.Name, line.QuantityTyped, line.Unit, line.Quantity,
            line.Price, line.Discount, line.FreightShare, line.Duty + line.Surcharge, line.LandedTotal, line.UnitCost,
            lot.Code, lot.Status == LotStatus.Rejected)).ToListAsync(cancel);

    private static async Task<List<EstimateRow>> ToFollowAsync(StudioDb db, Guid materialId, TimeZoneInfo zone, CancellationToken cancel)
    {
        var rows = await db.PendingReceipts.Where(p => p.MaterialId == materialId && p.MatchedAt == null).OrderByDescending(p => p.At)
            .Select(p => new { p.Batch!.Code, p.At, p.Milligrams, p.EstimatedUnitCost, p.Reason }).ToListAsync(cancel);
        return rows.ConvertAll(p => new EstimateRow(p.Code, StudioTime.Today(p.At, zone), p.Milligrams, p.EstimatedUnitCost, p.Reason));
    }

    private static Task<List<AskingSupplier>> SuppliersAsync(StudioDb db, Guid materialId, CancellationToken cancel) =>
        db.MaterialSuppliers.Where(s => s.MaterialId == materialId).OrderBy(s => s.Supplier!.Name)
            .Select(s => new AskingSupplier(s.SupplierId, s.Supplier!.Name)).ToListAsync(cancel);
}

/// <param name="Density">g/mL; null where not known.</param>
/// <param name="Available">Milligrams or pieces; below zero when promised twice.</param>
/// <param name="UsePerDay">Grams or pieces a day over the last 60 days.</param>
public sealed record PricedMaterial(
    Guid Id, string Name, MaterialKind Kind, StockUnit Unit, decimal? Density, int? ShelfLifeDays, int? LifeAfterOpeningDays, long Available, decimal UsePerDay)
{
    /// <summary>
    /// Within so many days of its coming it must be used up: the shorter of shelf life and life after opening, as if it
    /// were opened on the day it comes. Cautious; null when neither is known.
    /// </summary>
    public int? LifeDays => ShelfLifeDays is { } shelf && LifeAfterOpeningDays is { } opened ? Math.Min(shelf, opened) : ShelfLifeDays ?? LifeAfterOpeningDays;
}

/// <param name="QuantityTyped">In <paramref name="Unit"/>, as invoiced.</param>
/// <param name="Quantity">Milligrams or pieces.</param>
/// <param name="Price">Of the line, before discount and freight.</param>
/// <param name="Charges">Duty and surcharge.</param>
/// <param name="UnitCost">Landed, of one gram or one piece.</param>
/// <param name="IsRejected">The lot was turned down; what it cost was still asked.</param>
public sealed record PaidRow(
    string DeliveryCode, DateOnly ReceivedOn, Guid SupplierId, string Supplier, decimal QuantityTyped, AmountUnit Unit, long Quantity,
    decimal Price, decimal Discount, decimal FreightShare, decimal Charges, decimal LandedTotal, decimal UnitCost, string LotCode, bool IsRejected);

/// <summary>Used ahead of its receipt, at a cost that is not known yet.</summary>
public sealed record EstimateRow(string BatchCode, DateOnly On, long Milligrams, decimal UnitCost, string? Reason);

public sealed record AskingSupplier(Guid Id, string Name);

/// <param name="Paid">Newest first.</param>
/// <param name="ToFollow">Newest first.</param>
/// <param name="Reckoned">What products are costed with today, of one gram or one piece: the newest lot that was not rejected. Null where none ever came.</param>
/// <param name="Breaks">Those in force, by supplier and quantity.</param>
public sealed record MaterialPricesView(
    PricedMaterial Material, DateOnly Today, IReadOnlyList<PaidRow> Paid, IReadOnlyList<EstimateRow> ToFollow, decimal? Reckoned,
    IReadOnlyList<AskingSupplier> Suppliers, IReadOnlyList<PriceBreakRow> Breaks)
{
    /// <summary>Null when nothing was delivered yet.</summary>
    public PriceTrend? Trend => PriceTrend.Of([.. Paid.Reverse().Select(p => new PricePoint(p.ReceivedOn, p.UnitCost))]);

    /// <summary>
    /// What products should be costed with before long: the last price paid, or else the lowest that is asked, where it
    /// is well above what they are costed with today. Null where neither is.
    /// </summary>
    public PriceAlert? Alert()
    {
        if (Reckoned is not { } reckoned)
        {
            return null;
        }

        if (Paid.Count > 0 && PriceTrend.Above(Paid[0].UnitCost, reckoned) is { } paidMore)
        {
            return new PriceAlert(Paid[0].UnitCost, reckoned, paidMore, Paid[0].Supplier, Paid[0].ReceivedOn, IsAsked: false);
        }

        return Breaks.Where(b => b.UnitCost is not null).MinBy(b => b.UnitCost) is { } lowest && PriceTrend.Above(lowest.UnitCost!.Value, reckoned) is { } askedMore
            ? new PriceAlert(lowest.UnitCost!.Value, reckoned, askedMore, lowest.Supplier, lowest.AskedOn, IsAsked: true)
            : null;
    }

    /// <summary>The breaks at landed cost; null when none can be compared.</summary>
    /// <param name="usePerDay">Grams or pieces, 0 or more.</param>
    /// <param name="lifeDays">Days within which it must be used up; null when that is not known.</param>
    public ComparedBreaks? Compare(decimal usePerDay, int? lifeDays)
    {
        var asked = Breaks.Where(b => b.InStock is not null).Select(b => (Break: b, Offer: b.Offer())).ToList();
        if (asked.Count == 0)
        {
            return null;
        }

        var compared = PriceBreaks.Compare([.. asked.Select(a => a.Offer)], Math.Max(0m, new StockAmount(Material.Available, Material.Unit).Display), usePerDay, lifeDays);
        ComparedBreak Of(ComparedOffer offer) => new(asked.Single(a => ReferenceEquals(a.Offer, offer.Offer)).Break, offer);
        return new ComparedBreaks([.. compared.Offers.Select(Of)], compared.Cheapest is { } best ? Of(best) : null);
    }
}

/// <param name="Price">Landed, of one gram or one piece, as <paramref name="Reckoned"/>.</param>
/// <param name="By">The fraction it lies above.</param>
/// <param name="IsAsked">It is what a supplier asks, not what was paid.</param>
public sealed record PriceAlert(decimal Price, decimal Reckoned, decimal By, string Supplier, DateOnly On, bool IsAsked);

public sealed record ComparedBreak(PriceBreakRow Asked, ComparedOffer Is);

/// <param name="Rows">Smallest quantity first.</param>
/// <param name="Cheapest">Of those that are used up within their life; null when none is.</param>
public sealed record ComparedBreaks(IReadOnlyList<ComparedBreak> Rows, ComparedBreak? Cheapest)
{
    /// <summary>Lowest of all, whether or not it outlasts its life.</summary>
    public ComparedBreak Lowest => Rows.MinBy(r => r.Is.UnitCost)!;
}
