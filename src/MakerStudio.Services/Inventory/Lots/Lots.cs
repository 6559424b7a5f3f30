using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Lots: what they are, may they be used, and every act on one of them.</summary>
public sealed partial class Lots(StudioStore store)
{
    /// <summary>A lot by its code as typed or scanned; null when there is none.</summary>
    public async Task<LotRow?> FindAsync(string code, CancellationToken cancel = default)
    {
        var wanted = code.Trim().ToUpperInvariant();
        return (await RowsAsync(lots => lots.Where(l => l.Code == wanted), cancel)).SingleOrDefault();
    }

    /// <summary>The lots of one material in pick order, used-up and rejected ones last.</summary>
    public async Task<IReadOnlyList<LotRow>> OfMaterialAsync(Guid materialId, CancellationToken cancel = default) =>
        InOrder(await RowsAsync(lots => lots.Where(l => l.MaterialId == materialId), cancel));

    /// <summary>Lots that stand on the shelf: what a count walks past.</summary>
    public async Task<IReadOnlyList<LotRow>> OnShelfAsync(CancellationToken cancel = default) =>
        [.. (await RowsAsync(lots => lots.Where(l => l.Balance!.OnHand > 0), cancel))
            .OrderBy(r => r.Shelf ?? "￿", StringComparer.CurrentCulture).ThenBy(r => r.MaterialName, StringComparer.CurrentCulture).ThenBy(r => r.Code.Length).ThenBy(r => r.Code, StringComparer.Ordinal)];

    /// <summary>Every lot, used up and rejected ones too, by material and then as they came.</summary>
    public async Task<IReadOnlyList<LotRow>> AllAsync(CancellationToken cancel = default) =>
        [.. (await RowsAsync(lots => lots, cancel)).OrderBy(r => r.MaterialName, StringComparer.CurrentCulture).ThenBy(r => r.ReceivedOn).ThenBy(r => r.Id)];

    private static IReadOnlyList<LotRow> InOrder(IReadOnlyList<LotRow> rows)
    {
        var byId = rows.ToDictionary(r => r.Id);
        return [.. LotChoice.InPickOrder(rows.Select(r => r.Shelved)).Select(l => byId[l.LotId])
            .OrderBy(r => r.OnHand == 0 || r.Status == LotStatus.Rejected)];
    }

    private async Task<IReadOnlyList<LotRow>> RowsAsync(Func<IQueryable<Lot>, IQueryable<Lot>> which, CancellationToken cancel)
    {
        await using var db = await store.ReadAsync(cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var found = await which(db.Lots).Select(l => new
        {
            Lot = l, Material = l.Material!, l.Balance!.OnHand, SupplierName = l.Supplier!.Name,
            Delivery = db.DeliveryLines.Where(d => d.Id == l.DeliveryLineId).SelectMany(d => db.Deliveries.Where(x => x.Id == d.DeliveryId)).Select(x => x.Code).FirstOrDefault(),
            Batch = db.Batches.Where(b => b.Id == l.MadeByBatchId).Select(b => b.Code).FirstOrDefault(),
            LastMovement = db.Movements.Where(m => m.LotId == l.Id).Max(m => (long?)m.Id),
        }).ToListAsync(cancel);
        var papers = await LotPapers.LoadAsync(db, [.. found.Select(f => f.Material.Id).Distinct()], cancel);
        return [.. found.Select(f => new LotRow(
            f.Lot.Id, f.Lot.Code, f.Material.Id, f.Material.Name, f.Material.Kind, f.Material.StockedIn, f.Lot.Status, f.Lot.StatusReason, f.OnHand,
            f.Lot.ReceivedOn, f.Lot.OpenedOn, f.Lot.ExpiresOn, f.Lot.RetestOn,
            LotDates.Expiry(f.Lot.ExpiresOn, f.Lot.RetestOn, f.Lot.OpenedOn, f.Material.LifeAfterOpeningDays),
            f.SupplierName, f.Lot.SupplierLot, f.Lot.Density ?? f.Material.Density, f.Lot.UnitCost, f.Lot.TareMilligrams, f.Lot.Shelf,
            f.Delivery, f.Batch, papers.Missing(f.Material.Id, f.Material.RequiredPapers, f.Lot.Id), f.LastMovement ?? 0, today))];
    }
}

/// <param name="OnHand">Milligrams or pieces.</param>
/// <param name="UseBy">The date that ends its use, with the reason; null when none is known.</param>
/// <param name="Density">g/mL, its own or the material's.</param>
/// <param name="UnitCost">Landed, of one gram or one piece.</param>
/// <param name="LastMovement">The newest entry in its ledger: what a count is stamped with.</param>
/// <param name="Today">The studio's date when this was read.</param>
public sealed record LotRow(
    Guid Id, string Code, Guid MaterialId, string MaterialName, MaterialKind Kind, StockUnit Unit, LotStatus Status, string? StatusReason, long OnHand,
    DateOnly ReceivedOn, DateOnly? OpenedOn, DateOnly? ExpiresOn, DateOnly? RetestOn, LotExpiry? UseBy,
    string? Supplier, string? SupplierLot, decimal? Density, decimal UnitCost, long? TareMilligrams, string? Shelf,
    string? DeliveryCode, string? MadeByBatch, IReadOnlyList<PaperKind> MissingPapers, long LastMovement, DateOnly Today)
{
    /// <summary>Why it may not be weighed from today, in one sentence; null when it may.</summary>
    public string? WhyNot => LotChoice.WhyNot(Shelved, Today) is { } why ? LotWords.WhyNot(Code, why) : null;

    public bool IsPastUse => UseBy is { } date && date.On < Today;

    internal LotOnShelf Shelved => new(Id, Code, Status, new StockAmount(OnHand, Unit), UseBy?.On, OpenedOn is not null, ReceivedOn);
}
