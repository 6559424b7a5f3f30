using MakerStudio.Core.Blending;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>A line of a version with what belongs to the whole version beside it.</summary>
/// <param name="Amount">Null is "the rest".</param>
/// <param name="Fraction">By weight, 0 to 1; null while the lines do not add up.</param>
public sealed record FormulaLineRow(
    string Formula, string ProductKind, int Number, FormulaState State, int Position, string Material, decimal? Amount, LineBasis Basis, string? Note,
    decimal? Fraction, string? Method, int CureMinHours, int CureIdealHours, decimal ExpectedLossPercent);

public sealed partial class Formulas
{
    /// <summary>Lines of one version, or of the newest version of every formula in use.</summary>
    /// <param name="number">Null takes the newest.</param>
    public async Task<IReadOnlyList<FormulaLineRow>> LinesAsync(Guid? formulaId = null, int? number = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var formulas = await db.Formulas.Where(f => formulaId == null ? f.ArchivedAt == null : f.Id == formulaId)
            .OrderBy(f => f.Name.ToLower()).ThenBy(f => f.Id).Select(f => new { f.Id, f.Name, f.ProductKind }).ToListAsync(cancel);
        var ids = formulas.Select(f => f.Id).ToArray();
        var versions = (await FormulaRows.Versions(db, v => ids.Contains(v.FormulaId) && (number == null
                ? !db.FormulaVersions.Any(n => n.FormulaId == v.FormulaId && n.Number > v.Number) : v.Number == number))
            .ToListAsync(cancel)).ToDictionary(v => v.FormulaId);
        var used = versions.Values.SelectMany(v => v.Lines).Select(l => l.MaterialId).ToList();
        var materials = await LineMaterials.OfAsync(db, used, await StudioDay.TodayAsync(db, store.Clock, cancel), cancel);
        var facts = await AssessedMaterials.OfAsync(db, used, cancel);
        return [.. formulas.Where(f => versions.ContainsKey(f.Id)).SelectMany(f =>
        {
            var version = versions[f.Id];
            var shares = Worked.Of(f.ProductKind, version.State, version.Lines, version.Measured, materials, facts).Shares;
            return version.Lines.Select((l, i) => new FormulaLineRow(
                f.Name, f.ProductKind, version.Number, version.State, i + 1, materials[l.MaterialId].Name, l.Amount, l.Basis, l.Method,
                i < shares.Count ? shares[i].Fraction : null, version.Method, version.CureMinHours, version.CureIdealHours, version.ExpectedLossPercent));
        })];
    }
}
