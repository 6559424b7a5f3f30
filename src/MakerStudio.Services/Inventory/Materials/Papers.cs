using MakerStudio.Core.Materials;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A filed paper without its content.</summary>
/// <param name="LotId">Null when it is filed with the material.</param>
/// <param name="Size">Bytes.</param>
public sealed record PaperRow(
    Guid Id, Guid? LotId, string? LotCode, PaperKind Kind, string? Edition, DateOnly? EditionDate,
    string FileName, long Size, string AddedBy, DateTimeOffset AddedAt);

public sealed record PaperFile(string FileName, string ContentType, byte[] Content);

/// <summary>SDS, certificates and analyses: filed as uploaded, read back byte for byte.</summary>
public sealed partial class Papers(StudioStore store)
{
    /// <summary>Papers of a material and of its lots, or of one lot with the material's own; newest edition first.</summary>
    public async Task<IReadOnlyList<PaperRow>> ListAsync(Guid materialId, Guid? lotId = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var papers = db.Papers.Where(p => p.MaterialId == materialId);
        return await RowsAsync(lotId is null ? papers : papers.Where(p => p.LotId == null || p.LotId == lotId), db, cancel);
    }

    /// <summary>Required papers that a lot lacks; null when there is no such lot.</summary>
    public async Task<IReadOnlyList<PaperKind>?> MissingForLotAsync(Guid lotId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var lot = await db.Lots.Where(l => l.Id == lotId).Select(l => new { l.MaterialId, l.Material!.RequiredPapers }).SingleOrDefaultAsync(cancel);
        if (lot is null)
        {
            return null;
        }

        var there = await db.Papers.Where(p => p.MaterialId == lot.MaterialId && (p.LotId == null || p.LotId == lotId))
            .Select(p => new { p.Kind, p.LotId }).ToListAsync(cancel);
        return PaperCheck.MissingForLot(
            lot.RequiredPapers, there.Where(p => p.LotId is null).Select(p => p.Kind), there.Where(p => p.LotId is not null).Select(p => p.Kind));
    }

    /// <summary>The file itself; null when there is none.</summary>
    public async Task<PaperFile?> ReadAsync(Guid id, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.Papers.Where(p => p.Id == id).Select(p => new PaperFile(p.FileName, p.ContentType, p.Content)).SingleOrDefaultAsync(cancel);
    }

    internal static Task<List<PaperRow>> RowsAsync(IQueryable<Paper> papers, StudioDb db, CancellationToken cancel) =>
        papers.OrderBy(p => p.Kind).ThenByDescending(p => p.EditionDate).ThenByDescending(p => p.AddedAt)
            .Select(p => new PaperRow(
                p.Id, p.LotId, db.Lots.Where(l => l.Id == p.LotId).Select(l => l.Code).FirstOrDefault(), p.Kind, p.Edition, p.EditionDate,
                p.FileName, p.Size, db.Users.Where(u => u.Id == p.AddedById).Select(u => u.DisplayName).First(), p.AddedAt))
            .ToListAsync(cancel);
}
