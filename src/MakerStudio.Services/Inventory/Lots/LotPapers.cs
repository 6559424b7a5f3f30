using MakerStudio.Core.Materials;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Which papers a lot is without. SDS and fragrance certificate are filed with the material and count for all its
/// lots; a CoA speaks of one lot and counts for that one only.
/// </summary>
internal sealed class LotPapers
{
    private readonly HashSet<(Guid Material, Guid? Lot, PaperKind Kind)> _filed;

    private LotPapers(HashSet<(Guid Material, Guid? Lot, PaperKind Kind)> filed) => _filed = filed;

    public static async Task<LotPapers> LoadAsync(StudioDb db, IReadOnlyCollection<Guid> materialIds, CancellationToken cancel = default)
    {
        var filed = await db.Papers.Where(p => materialIds.Contains(p.MaterialId)).Select(p => new { p.MaterialId, p.LotId, p.Kind }).ToListAsync(cancel);
        return new LotPapers([.. filed.Select(p => (p.MaterialId, p.LotId, p.Kind))]);
    }

    /// <summary>Papers this lot must have before it may be released, and has not.</summary>
    public static async Task<IReadOnlyList<PaperKind>> MissingAsync(StudioDb db, Lot lot) =>
        (await LoadAsync(db, [lot.MaterialId])).Missing(lot.MaterialId, lot.Material!.RequiredPapers, lot.Id);

    /// <param name="lotId">Null for a lot that is not there yet.</param>
    public IReadOnlyList<PaperKind> Missing(Guid materialId, IReadOnlyCollection<PaperKind> required, Guid? lotId) =>
        PaperCheck.MissingForLot(required, Filed(materialId, null), lotId is null ? [] : Filed(materialId, lotId));

    public static string Words(IReadOnlyCollection<PaperKind> kinds) => string.Join(" and ", kinds.Select(PaperKinds.Name));

    private IEnumerable<PaperKind> Filed(Guid materialId, Guid? lotId) =>
        _filed.Where(p => p.Material == materialId && p.Lot == lotId).Select(p => p.Kind);
}
