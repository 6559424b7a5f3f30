using System.Linq.Expressions;
using MakerStudio.Core.Blending;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <param name="ProductKind">Key of the product kind in Core/Products.</param>
/// <param name="Version">For stale-edit protection of the formula's own row.</param>
public sealed record FormulaRow(Guid Id, string Name, string ProductKind, Guid? MakesMaterialId, DateTimeOffset? PutAwayAt, uint Version);

/// <summary>A line as typed, in its place in the order of addition.</summary>
/// <param name="Amount">Null is "the rest", or not typed yet.</param>
/// <param name="Fraction">By weight; set once released.</param>
/// <param name="DensityUsed">g/mL; set once released.</param>
public sealed record LineRow(
    Guid LineId, Guid MaterialId, decimal? Amount, LineBasis Basis, string? Method, decimal? Fraction = null, decimal? DensityUsed = null);

/// <param name="Batches">Made from it, without the discarded.</param>
/// <param name="Version">For stale-edit protection: what the form was opened with.</param>
public sealed record VersionRow(
    Guid Id, Guid FormulaId, int Number, FormulaState State, string? Why, string? Method,
    int CureMinHours, int CureIdealHours, int? CureLatestHours, decimal? TolerancePercent, decimal ExpectedLossPercent, decimal? MeasuredDensity,
    string? CreatedBy, DateTimeOffset CreatedAt, DateTimeOffset KeptAt, string? ReleasedBy, DateTimeOffset? ReleasedAt,
    int Batches, uint Version, IReadOnlyList<LineRow> Lines)
{
    public bool IsDraft => State == FormulaState.Draft;
}

public sealed record SizePartRow(Guid MaterialId, int CountPerUnit);

/// <param name="NominalMillilitres">This or <paramref name="NominalMilligrams"/> is set.</param>
public sealed record SizeRow(
    Guid Id, string Name, decimal? NominalMillilitres, long? NominalMilligrams, long OverfillMilligrams, DateTimeOffset? RetiredAt,
    IReadOnlyList<SizePartRow> Parts);

/// <summary>A formula with all its versions, newest first, its sizes, and every material any of them names.</summary>
/// <param name="LastBatchMilligrams">Target of the newest batch, or null.</param>
public sealed record FormulaSheet(
    FormulaRow Formula, IReadOnlyList<VersionRow> Versions, IReadOnlyList<SizeRow> Sizes,
    IReadOnlyDictionary<Guid, LineMaterial> Materials, long? LastBatchMilligrams)
{
    public VersionRow? Draft => Versions.FirstOrDefault(v => v.IsDraft);

    public VersionRow? Released => Versions.FirstOrDefault(v => !v.IsDraft);

    /// <summary>The version a version was changed from: the one numbered before it.</summary>
    public VersionRow? Before(VersionRow version) => Versions.FirstOrDefault(v => v.Number < version.Number);
}

internal static class FormulaRows
{
    public static IQueryable<VersionRow> Versions(StudioDb db, Expression<Func<FormulaVersion, bool>> which) => db.FormulaVersions
        .Where(which)
        .OrderByDescending(v => v.Number)
        .Select(v => new VersionRow(
            v.Id, v.FormulaId, v.Number, v.State, v.Why, v.Method,
            v.CureMinHours, v.CureIdealHours, v.CureLatestHours, v.TolerancePercent, v.ExpectedLossPercent, v.MeasuredDensity,
            db.Users.Where(u => u.Id == v.CreatedById).Select(u => u.DisplayName).FirstOrDefault(), v.CreatedAt, v.KeptAt,
            db.Users.Where(u => u.Id == v.ReleasedById).Select(u => u.DisplayName).FirstOrDefault(), v.ReleasedAt,
            db.Batches.Count(b => b.FormulaVersionId == v.Id && b.State != BatchState.Discarded), v.Version,
            v.Lines.OrderBy(l => l.Position)
                .Select(l => new LineRow(l.Id, l.MaterialId, l.Amount, l.Basis, l.Method, l.Fraction, l.DensityUsed)).ToList()));

    public static IQueryable<SizeRow> Sizes(StudioDb db, Expression<Func<FormulaSize, bool>> which) => db.FormulaSizes
        .Where(which)
        .OrderBy(s => s.NominalMillilitres).ThenBy(s => s.NominalMilligrams).ThenBy(s => s.Id)
        .Select(s => new SizeRow(
            s.Id, s.Name, s.NominalMillilitres, s.NominalMilligrams, s.OverfillMilligrams, s.RetiredAt,
            s.Parts.OrderBy(p => p.Material!.Kind).ThenBy(p => p.Material!.Name).Select(p => new SizePartRow(p.MaterialId, p.CountPerUnit)).ToList()));

    /// <summary>Locks one version with its lines; null when there is none.</summary>
    public static async Task<FormulaVersion?> LockVersionAsync(StudioDb db, Guid versionId, CancellationToken cancel)
    {
        var found = await db.FormulaVersions.FromSql($"select *, xmin from formula_versions where id = {versionId} for update").ToListAsync(cancel);
        if (found is not [var version])
        {
            return null;
        }

        await db.Entry(version).Reference(v => v.Formula).LoadAsync(cancel);
        await db.Entry(version).Collection(v => v.Lines).Query().Include(l => l.Material).LoadAsync(cancel);
        return version;
    }
}
