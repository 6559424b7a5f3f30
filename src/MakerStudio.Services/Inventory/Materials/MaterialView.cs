using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Everything the page of one material shows. Amounts are base units: milligrams or pieces.</summary>
/// <param name="DropMilligrams">Of one drop.</param>
/// <param name="Missing">Required papers of the material that are not filed; those of single lots stand with the lots.</param>
public sealed record MaterialView(
    ChangeMaterial Facts, decimal? DropMilligrams, DateTimeOffset? ArchivedAt, IReadOnlyList<PaperKind> Missing,
    IReadOnlyList<PaperRow> Papers, IReadOnlyList<MaterialLotRow> Lots, IReadOnlyList<FormulaUse> Formulas,
    PriceRow? LastPrice, IReadOnlyList<MaterialAct> Acts)
{
    public long OnHand => Lots.Sum(l => l.OnHand);
}

public sealed record MaterialLotRow(
    Guid Id, string Code, LotStatus Status, string? SupplierLot, DateOnly ReceivedOn, DateOnly? OpenedOn,
    DateOnly? RetestOn, DateOnly? ExpiresOn, long OnHand, IReadOnlyList<PaperKind> Missing);

/// <summary>What the last delivery that was not taken back cost.</summary>
/// <param name="UnitCost">Landed, of one gram or one piece.</param>
public sealed record PriceRow(Guid DeliveryId, string Delivery, DateOnly ReceivedOn, string Supplier, decimal UnitCost);

public sealed record MaterialAct(DateTimeOffset At, string Who, string What);

public sealed partial class Materials
{
    private const int ActsShown = 30;

    /// <summary>Null when there is no such material.</summary>
    public async Task<MaterialView?> ViewAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var row = await db.Materials.Include(m => m.Suppliers).ThenInclude(s => s.Supplier).SingleOrDefaultAsync(m => m.Id == id, cancel);
        if (row is null)
        {
            return null;
        }

        var papers = await Papers.RowsAsync(db.Papers.Where(p => p.MaterialId == id), db, cancel);
        var ofMaterial = papers.Where(p => p.LotId is null).Select(p => p.Kind).ToList();
        return new MaterialView(
            FormOf(row), row.DropMilligrams, row.ArchivedAt, PaperCheck.MissingForMaterial(row.RequiredPapers, ofMaterial), papers,
            await LotsAsync(db, row, papers, ofMaterial, cancel), await FormulasUsingAsync(db, id, cancel),
            await LastPriceAsync(db, id, cancel), await ActsAsync(db, id, cancel));
    }

    private static async Task<List<MaterialLotRow>> LotsAsync(
        StudioDb db, Material row, List<PaperRow> papers, List<PaperKind> ofMaterial, CancellationToken cancel)
    {
        var lots = await db.Lots.Where(l => l.MaterialId == row.Id).OrderByDescending(l => l.ReceivedOn).ThenByDescending(l => l.Id)
            .Select(l => new { l.Id, l.Code, l.Status, l.SupplierLot, l.ReceivedOn, l.OpenedOn, l.RetestOn, l.ExpiresOn, l.Balance!.OnHand })
            .ToListAsync(cancel);
        return [.. lots.Select(l => new MaterialLotRow(
            l.Id, l.Code, l.Status, l.SupplierLot, l.ReceivedOn, l.OpenedOn, l.RetestOn, l.ExpiresOn, l.OnHand,
            PaperCheck.MissingForLot(row.RequiredPapers, ofMaterial, papers.Where(p => p.LotId == l.Id).Select(p => p.Kind))))];
    }

    private static Task<PriceRow?> LastPriceAsync(StudioDb db, Guid id, CancellationToken cancel) =>
        db.DeliveryLines.Where(l => l.MaterialId == id)
            .Join(Deliveries.Standing(db), l => l.DeliveryId, d => d.Id, (l, d) => new { l, d })
            .OrderByDescending(x => x.d.ReceivedOn).ThenByDescending(x => x.d.Id).ThenByDescending(x => x.l.Position)
            .Select(x => new PriceRow(x.d.Id, x.d.Code, x.d.ReceivedOn, x.d.Supplier!.Name, x.l.UnitCost))
            .FirstOrDefaultAsync(cancel);

    private static Task<List<MaterialAct>> ActsAsync(StudioDb db, Guid id, CancellationToken cancel) =>
        db.Acts.Where(a => a.Subject == "material" && a.SubjectId == id).OrderByDescending(a => a.Id).Take(ActsShown)
            .Join(db.Users, a => a.PersonId, p => p.Id, (a, p) => new MaterialAct(a.At, p.DisplayName, a.What)).ToListAsync(cancel);
}
