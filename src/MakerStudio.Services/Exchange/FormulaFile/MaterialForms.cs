using FluentValidation;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Exchange.FormulaFile;

/// <summary>A material of a file as the forms of the storeroom would have it typed, so that one set of rules holds for both.</summary>
internal static class MaterialForms
{
    private const decimal ReferenceCelsius = 20m;
    private const decimal DropsWeighed = 20m;
    private const decimal MilligramsPerGram = 1000m;

    private static readonly MaterialFormValidator FormRules = new();
    private static readonly SetSafetyValidator SafetyRules = new();

    internal static MaterialForm FormOf(FileMaterial material)
    {
        var facts = material.Facts;
        return new()
        {
            Name = facts.Name, Kind = facts.Kind, Cas = facts.Cas?.Text, StockedIn = StockUnit.Gram,
            Density = facts.Density?.GramsPerMillilitre, DensityAtCelsius = facts.Density is null ? null : ReferenceCelsius,
            AlcoholValue = facts.Strength?.Value, AlcoholBasis = facts.Strength?.Basis, FlashPointCelsius = facts.FlashPoint?.Degrees,
            TwentyDropsGrams = material.DropMassMilligrams * DropsWeighed / MilligramsPerGram,
            RequiredPapers = [.. MaterialKinds.DefaultPapers(facts.Kind)],
        };
    }

    internal static SetSafety SafetyOf(AssessedMaterial facts) => new()
    {
        Hazards = LinesOf(facts.Hazards),
        Composition = [.. facts.Composition.Select(part => new SubstanceLine
        {
            Name = part.Name, Cas = part.Cas, LowPercent = part.LowPercent, HighPercent = part.HighPercent, StatedPercent = part.StatedPercent, Hazards = LinesOf(part.Hazards),
        })],
        VolatilePercent = facts.VolatilePercent, VanillinPercent = facts.VanillinPercent, HoldsCitrus = facts.HoldsCitrus,
        PhthalateFree = facts.PhthalateFree, CmrFree = facts.CmrFree,
        CertificateAmendment = facts.Certificate?.Amendment, CertificateIssuedOn = facts.Certificate?.IssuedOn,
        CertificateLimits = [.. (facts.Certificate?.MaxPercent ?? new Dictionary<string, decimal>()).Select(limit => new CategoryLine { Category = limit.Key, MaxPercent = limit.Value })],
    };

    /// <summary>Whether the file says anything for the safety sheet.</summary>
    internal static bool SaysAnything(AssessedMaterial facts) => facts is not
    {
        Hazards: null, Composition.Count: 0, Certificate: null, VolatilePercent: null, VanillinPercent: null, HoldsCitrus: false, PhthalateFree: null, CmrFree: null,
    };

    /// <summary>Why the storeroom would not take the material, with its place in the file.</summary>
    internal static IEnumerable<FileFault> Faults(FileMaterial material, int index) => FormRules.Validate(FormOf(material)).Errors
        .Concat(SafetyRules.Validate(SafetyOf(material.Facts)).Errors)
        .Select(error => new FileFault($"$.materials[{index}]", error.ErrorMessage));

    private static HazardLines LinesOf(StatedHazards? stated) => stated is null ? new() : new()
    {
        Classes = stated.Classes, Limits = stated.Limits, OralMgPerKg = stated.OralMgPerKg, DermalMgPerKg = stated.DermalMgPerKg,
        VapourMgPerLitre = stated.VapourMgPerLitre, MistMgPerLitre = stated.MistMgPerLitre, AcuteM = stated.AcuteM, ChronicM = stated.ChronicM,
    };
}
