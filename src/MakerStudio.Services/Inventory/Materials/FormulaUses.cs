using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Where a material stands in the library.</summary>
/// <param name="Number">Version; null where the formula itself counts on it: packaging of a size, or the pre-blend it makes.</param>
/// <param name="Fraction">By weight, 0 to 1; null while not worked out or for packaging.</param>
/// <param name="IsOld">A version that a later released one has replaced.</param>
public sealed record FormulaUse(Guid FormulaId, string Name, int? Number, FormulaState? State, decimal? Fraction, string? As, bool IsOld);

public sealed partial class Materials
{
    /// <summary>Draft and released versions of formulas that are not archived, and sizes packed in it.</summary>
    private static async Task<List<FormulaUse>> FormulasUsingAsync(StudioDb db, Guid materialId, CancellationToken cancel)
    {
        var lines = await db.FormulaLines.Where(l => l.MaterialId == materialId)
            .Join(db.FormulaVersions, l => l.FormulaVersionId, v => v.Id, (l, v) => new { Line = l, Version = v })
            .Where(x => x.Version.Formula!.ArchivedAt == null)
            .OrderBy(x => x.Version.Formula!.Name).ThenByDescending(x => x.Version.Number)
            .Select(x => new FormulaUse(
                x.Version.FormulaId, x.Version.Formula!.Name, x.Version.Number, x.Version.State, x.Line.Fraction, null,
                x.Version.State == FormulaState.Released
                    && db.FormulaVersions.Any(v => v.FormulaId == x.Version.FormulaId && v.State == FormulaState.Released && v.Number > x.Version.Number)))
            .ToListAsync(cancel);
        var packed = await db.Formulas
            .Where(f => f.ArchivedAt == null && f.Sizes.Any(s => s.RetiredAt == null && s.Parts.Any(p => p.MaterialId == materialId)))
            .OrderBy(f => f.Name)
            .Select(f => new FormulaUse(f.Id, f.Name, null, null, null, "packaging", false)).ToListAsync(cancel);
        var made = await db.Formulas.Where(f => f.ArchivedAt == null && f.MakesMaterialId == materialId).OrderBy(f => f.Name)
            .Select(f => new FormulaUse(f.Id, f.Name, null, null, null, "what it makes", false)).ToListAsync(cancel);
        return [.. lines, .. packed, .. made];
    }
}
