using System.Linq.Expressions;
using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <param name="ProductKind">Key of the product kind in Core/Products.</param>
/// <param name="Version">For stale-edit protection of the formula's own row.</param>
/// <param name="EnoughScentPercent">From own trials: per cent of what the kind's load is a share of, above which more stopped helping.</param>
/// <param name="EnoughScentNote">What trials showed it.</param>
public sealed record FormulaRow(
    Guid Id, string Name, string ProductKind, Guid? MakesMaterialId, DateTimeOffset? PutAwayAt, uint Version,
    decimal? EnoughScentPercent = null, string? EnoughScentNote = null);

/// <summary>What was measured of the finished mixture; null where nobody did.</summary>
/// <param name="Density">g/mL at 20 °C.</param>
/// <param name="FlashPoint">°C, closed cup.</param>
/// <param name="BoilingPoint">°C, initial.</param>
/// <param name="SustainsCombustion">By the UN test L.2.</param>
/// <param name="Viscosity">mm²/s at 40 °C, kinematic.</param>
public sealed record MeasuredRow(
    decimal? Density = null, decimal? FlashPoint = null, decimal? BoilingPoint = null, bool? SustainsCombustion = null,
    decimal? Viscosity = null, decimal? Ph = null)
{
    public MeasuredFacts Facts => new(
        Core.Quantities.Density.WherePossible(Density),
        FlashPoint is { } flash ? new Celsius(flash) : null, BoilingPoint is { } boils ? new Celsius(boils) : null,
        SustainsCombustion, Viscosity, Ph);

    internal static MeasuredRow Of(FormulaVersion version) => new(
        version.MeasuredDensity, version.MeasuredFlashPoint, version.MeasuredBoilingPoint, version.SustainsCombustion,
        version.MeasuredViscosity, version.MeasuredPh);
}

/// <summary>Advice somebody goes ahead without, in force.</summary>
public sealed record OverrideRow(
    Guid Id, string Rule, string Subject, AdviceKind Kind, decimal? Measure, string Reason, string? By, DateTimeOffset At)
{
    public bool Answers(AdviceGiven given) => new OverriddenAdvice(Rule, Subject, Kind, Measure).Answers(given);
}

/// <summary>A line as typed, in its place in the order of addition.</summary>
/// <param name="Amount">Null is "the rest", or not typed yet.</param>
/// <param name="Fraction">By weight; set once released.</param>
/// <param name="DensityUsed">g/mL; set once released.</param>
public sealed record LineRow(
    Guid LineId, Guid MaterialId, decimal? Amount, LineBasis Basis, string? Method, decimal? Fraction = null, decimal? DensityUsed = null)
{
    internal static LineRow Of(FormulaLine line) => new(
        line.Id, line.MaterialId, line.Amount, line.Basis, line.Method, line.Fraction, line.DensityUsed);
}

/// <param name="Batches">Made from it, without the discarded.</param>
/// <param name="Version">For stale-edit protection: what the form was opened with.</param>
public sealed record VersionRow(
    Guid Id, Guid FormulaId, int Number, FormulaState State, string? Why, string? Method,
    int CureMinHours, int CureIdealHours, int? CureLatestHours, decimal? TolerancePercent, decimal ExpectedLossPercent, MeasuredRow Measured,
    string? CreatedBy, DateTimeOffset CreatedAt, DateTimeOffset KeptAt, string? ReleasedBy, DateTimeOffset? ReleasedAt,
    int Batches, uint Version, IReadOnlyList<LineRow> Lines, IReadOnlyList<OverrideRow> Overrides)
{
    public bool IsDraft => State == FormulaState.Draft;

    /// <summary>The override that answers a piece of advice, the newest first; null while nothing does.</summary>
    public OverrideRow? Answer(AdviceGiven given) => Overrides.FirstOrDefault(o => o.Answers(given));
}

public sealed record SizePartRow(Guid MaterialId, int CountPerUnit);

/// <param name="NominalMillilitres">This or <paramref name="NominalMilligrams"/> is set.</param>
public sealed record SizeRow(
    Guid Id, string Name, decimal? NominalMillilitres, long? NominalMilligrams, long OverfillMilligrams, DateTimeOffset? RetiredAt,
    IReadOnlyList<SizePartRow> Parts);

/// <summary>A formula with all its versions, newest first, its sizes, and every material any of them names.</summary>
/// <param name="Facts">What the papers and the maker say of each of them.</param>
/// <param name="Choices">Where the studio sells.</param>
/// <param name="LastBatchMilligrams">Target of the newest batch, or null.</param>
public sealed record FormulaSheet(
    FormulaRow Formula, IReadOnlyList<VersionRow> Versions, IReadOnlyList<SizeRow> Sizes,
    IReadOnlyDictionary<Guid, LineMaterial> Materials,
    MaterialFacts Facts, MarketChoices Choices, long? LastBatchMilligrams)
{
    public VersionRow? Draft => Versions.FirstOrDefault(v => v.IsDraft);

    public VersionRow? Released => Versions.FirstOrDefault(v => !v.IsDraft);

    /// <summary>The version a version was changed from: the one numbered before it.</summary>
    public VersionRow? Before(VersionRow version) => Versions.FirstOrDefault(v => v.Number < version.Number);
}

internal static class FormulaRows
{
    public static IQueryable<VersionRow> Versions(StudioDb db, Expression<Func<FormulaVersion, bool>> which) => db.FormulaVersions
        .AsSplitQuery()
        .Where(which)
        .OrderByDescending(v => v.Number)
        .Select(v => new VersionRow(
            v.Id, v.FormulaId, v.Number, v.State, v.Why, v.Method,
            v.CureMinHours, v.CureIdealHours, v.CureLatestHours, v.TolerancePercent, v.ExpectedLossPercent,
            new MeasuredRow(v.MeasuredDensity, v.MeasuredFlashPoint, v.MeasuredBoilingPoint, v.SustainsCombustion, v.MeasuredViscosity, v.MeasuredPh),
            db.Users.Where(u => u.Id == v.CreatedById).Select(u => u.DisplayName).FirstOrDefault(), v.CreatedAt, v.KeptAt,
            db.Users.Where(u => u.Id == v.ReleasedById).Select(u => u.DisplayName).FirstOrDefault(), v.ReleasedAt,
            db.Batches.Count(b => b.FormulaVersionId == v.Id && b.State != BatchState.Discarded), v.Version,
            v.Lines.OrderBy(l => l.Position)
                .Select(l => new LineRow(l.Id, l.MaterialId, l.Amount, l.Basis, l.Method, l.Fraction, l.DensityUsed)).ToList(),
            v.Overrides.Where(o => o.TakenBackAt == null).OrderByDescending(o => o.Id)
                .Select(o => new OverrideRow(
                    o.Id, o.Rule, o.Subject, o.Kind, o.Measure, o.Reason,
                    db.Users.Where(u => u.Id == o.PersonId).Select(u => u.DisplayName).FirstOrDefault(), o.At)).ToList()));

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
