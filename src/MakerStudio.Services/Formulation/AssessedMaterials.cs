using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Reads all that is known of materials, for an assessment. Five queries, however many materials.</summary>
internal static class AssessedMaterials
{
    /// <summary>Of these materials and of what those made here are made of.</summary>
    public static async Task<MaterialFacts> OfAsync(StudioDb db, IEnumerable<Guid> materialIds, CancellationToken cancel)
    {
        var scent = await ScentShares.ReadAsync(db, cancel);
        var inside = scent.Below(materialIds);
        Guid[] ids = [.. materialIds.Concat(inside.Values.SelectMany(parts => parts.Select(p => p.MaterialId))).Distinct()];
        var composition = (await db.MaterialSubstances.Where(s => ids.Contains(s.MaterialId)).OrderBy(s => s.Position).ToListAsync(cancel)).ToLookup(s => s.MaterialId);
        var certified = (await db.CertificateLimits.Where(c => ids.Contains(c.MaterialId)).ToListAsync(cancel)).ToLookup(c => c.MaterialId);
        var papers = (await db.Papers.Where(p => ids.Contains(p.MaterialId) && p.LotId == null).Select(p => new { p.MaterialId, p.Kind }).Distinct().ToListAsync(cancel))
            .ToLookup(p => p.MaterialId, p => p.Kind);
        var rows = await db.Materials.Where(m => ids.Contains(m.Id))
            .GroupJoin(db.MaterialSafety, m => m.Id, s => s.MaterialId, (m, s) => new { m, s })
            .SelectMany(x => x.s.DefaultIfEmpty(), (x, s) => new { x.m, s })
            .ToListAsync(cancel);
        return new(
            rows.ToDictionary(r => r.m.Id, r => Assessed(
                r.m, r.s, [.. composition[r.m.Id].Select(SubstanceOf)], CertificateOf(r.s, certified[r.m.Id]),
                PaperCheck.MissingForMaterial(r.m.RequiredPapers, papers[r.m.Id]),
                r.m.Kind == MaterialKind.PreBlend ? scent.Of(r.m.Id, r.m.Kind) : null)),
            inside);
    }

    private static AssessedMaterial Assessed(
        Material m, MaterialSafety? safety, IReadOnlyList<StatedSubstance> composition, FragranceCertificate? certificate,
        IReadOnlyList<PaperKind> missing, decimal? scentShare) => new(
        m.Id, m.Name, m.Kind,
        CasNumber.TryParse(m.Cas, out var cas, out _) ? cas : null,
        Density.WherePossible(m.Density),
        m.AlcoholValue is { } value && m.AlcoholBasis is { } basis ? new AlcoholStrength(value, basis) : null,
        m.FlashPointCelsius is { } flash ? new Celsius(flash) : null,
        safety is null ? null : HazardsOf(safety.Hazards),
        composition, certificate,
        safety?.VolatilePercent, safety?.VanillinPercent, safety?.HoldsCitrus ?? false, safety?.PhthalateFree, safety?.CmrFree,
        missing, scentShare);

    private static FragranceCertificate? CertificateOf(MaterialSafety? safety, IEnumerable<CertificateLimit> limits)
    {
        var most = limits.ToDictionary(l => l.Category, l => l.MaxPercent);
        return safety is null || (most.Count == 0 && safety.CertificateAmendment is null)
            ? null
            : new(safety.CertificateAmendment ?? "", safety.CertificateIssuedOn, most);
    }

    private static StatedSubstance SubstanceOf(MaterialSubstance row) =>
        new(row.Name, row.Cas, row.LowPercent, row.HighPercent, row.StatedPercent, HazardsOf(row.Hazards));

    /// <summary>Null where the sheet says nothing at all, so that the built-in table may speak.</summary>
    private static StatedHazards? HazardsOf(HazardStatement h)
    {
        var stated = new StatedHazards(h.Classes, h.Limits, h.OralMgPerKg, h.DermalMgPerKg, h.VapourMgPerLitre, h.MistMgPerLitre, h.AcuteM, h.ChronicM);
        return stated == new StatedHazards(null) ? null : stated;
    }
}
