using MakerStudio.Core.FragranceLimits;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

public sealed partial class Materials
{
    internal static void Fill(MaterialSafety row, SetSafety form)
    {
        row.Hazards = StatementOf(form.Hazards);
        row.SheetEdition = Blank(form.SheetEdition);
        row.SheetDate = form.SheetDate;
        row.VolatilePercent = form.VolatilePercent;
        row.VanillinPercent = form.VanillinPercent;
        row.HoldsCitrus = form.HoldsCitrus;
        row.PhthalateFree = form.PhthalateFree;
        row.CmrFree = form.CmrFree;
        row.CertificateAmendment = Blank(form.CertificateAmendment);
        row.CertificateIssuedOn = form.CertificateIssuedOn;
        row.Notes = Blank(form.Notes);
        row.Composition.AddRange(form.Composition.Select((line, index) => SubstanceOf(line, index + 1)));
        row.CertificateLimits.AddRange(form.CertificateLimits.Select(line =>
            new CertificateLimit { Category = FragranceCategories.KeyOf(line.Category)!, MaxPercent = line.MaxPercent!.Value }));
    }

    private static MaterialSubstance SubstanceOf(SubstanceLine line, int position) => new()
    {
        Position = position,
        Name = line.Name!.Trim(),
        Cas = CasNumber.TryParse(line.Cas, out var cas, out _) ? cas.Text : null,
        LowPercent = line.LowPercent!.Value,
        HighPercent = line.HighPercent!.Value,
        StatedPercent = line.StatedPercent,
        Hazards = StatementOf(line.Hazards),
    };

    private static HazardStatement StatementOf(HazardLines lines) => new()
    {
        Classes = Blank(lines.Classes),
        Limits = Blank(lines.Limits),
        OralMgPerKg = lines.OralMgPerKg,
        DermalMgPerKg = lines.DermalMgPerKg,
        VapourMgPerLitre = lines.VapourMgPerLitre,
        MistMgPerLitre = lines.MistMgPerLitre,
        AcuteM = (int?)lines.AcuteM,
        ChronicM = (int?)lines.ChronicM,
    };

    private static SetSafety SafetyFormOf(Guid materialId, MaterialSafety? row) => row is null ? new SetSafety { MaterialId = materialId } : new SetSafety
    {
        MaterialId = materialId,
        Hazards = LinesOf(row.Hazards),
        SheetEdition = row.SheetEdition,
        SheetDate = row.SheetDate,
        Composition = [.. row.Composition.OrderBy(c => c.Position).Select(c => new SubstanceLine
        {
            Name = c.Name, Cas = c.Cas, LowPercent = c.LowPercent, HighPercent = c.HighPercent, StatedPercent = c.StatedPercent, Hazards = LinesOf(c.Hazards),
        })],
        VolatilePercent = row.VolatilePercent,
        VanillinPercent = row.VanillinPercent,
        HoldsCitrus = row.HoldsCitrus,
        PhthalateFree = row.PhthalateFree,
        CmrFree = row.CmrFree,
        CertificateAmendment = row.CertificateAmendment,
        CertificateIssuedOn = row.CertificateIssuedOn,
        CertificateLimits = [.. row.CertificateLimits.OrderBy(c => FragranceCategories.Place(c.Category)).Select(c => new CategoryLine { Category = c.Category, MaxPercent = c.MaxPercent })],
        Notes = row.Notes,
        Version = row.Version,
    };

    private static HazardLines LinesOf(HazardStatement h) => new()
    {
        Classes = h.Classes, Limits = h.Limits, OralMgPerKg = h.OralMgPerKg, DermalMgPerKg = h.DermalMgPerKg,
        VapourMgPerLitre = h.VapourMgPerLitre, MistMgPerLitre = h.MistMgPerLitre, AcuteM = h.AcuteM, ChronicM = h.ChronicM,
    };
}
