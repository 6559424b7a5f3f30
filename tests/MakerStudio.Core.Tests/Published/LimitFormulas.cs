using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Formulas and choices for tests of limits, in per cent by weight.</summary>
internal static class LimitFormulas
{
    internal static readonly DateOnly Day = new(2026, 11, 25);

    internal static AssessedMaterial Material(string name, MaterialKind kind = MaterialKind.Solvent, string? cas = null) =>
        new(Guid.CreateVersion7(), name, kind, cas is null ? null : CasNumber.Of(cas));

    internal static AssessedMaterial Oil(string name, params StatedSubstance[] composition) =>
        new(Guid.CreateVersion7(), name, MaterialKind.FragranceOil, Composition: composition);

    internal static AssessedMaterial Certified(this AssessedMaterial material, params (string Category, decimal Percent)[] maxima) =>
        material with { Certificate = new("51", null, maxima.ToDictionary(each => each.Category, each => each.Percent)) };

    internal static StatedSubstance Exactly(string name, decimal percent, string? cas = null) => new(name, cas, percent, percent);

    internal static AssessedFormula Formula(string kind, params (AssessedMaterial Material, decimal Percent)[] lines) => new(
        ProductKinds.Get(kind),
        [.. lines.Select(line => new AssessedLine(Guid.CreateVersion7(), line.Material, line.Percent / 100m))],
        MeasuredFacts.None);

    internal static MarketChoices Choices(params string[] vocLimits) => new(LabelScheme.UnitedStates, vocLimits, null, [], Day);
}
