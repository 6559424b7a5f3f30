using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Formulation;

namespace MakerStudio.Services.Tests.Formulation;

/// <summary>Writes formulas the way a page does, through the services.</summary>
internal static class LibraryFixture
{
    /// <summary>Fig v3's three materials: fragrance, DPG and ethanol, with the densities of the examples.</summary>
    public static async Task<(Guid Fig, Guid Dpg, Guid Ethanol)> FigMaterialsAsync(this TestStudio studio) => (
        await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m),
        await studio.MaterialAsync("DPG", MaterialKind.Fixative, density: 1.02m),
        await studio.MaterialAsync("Ethanol 99.5 % vol", MaterialKind.Solvent, density: 0.79m));

    public static async Task<FormulaStarted> NewFormulaAsync(this TestStudio studio, string name, string kind = "room-spray-alcohol") =>
        (await studio.Get<Formulas>().NewAsync(studio.Ana, new NewFormula { Name = name, ProductKind = kind })).Expect();

    public static async Task<FormulaSheet> SheetAsync(this TestStudio studio, Guid formulaId) =>
        (await studio.Get<Formulas>().ReadAsync(formulaId))!;

    public static KeptLine Line(Guid material, decimal? amount, LineBasis basis = LineBasis.PercentByWeight) =>
        new() { MaterialId = material, Amount = amount, Basis = basis };

    /// <summary>What the page would send: the draft as read, with these lines.</summary>
    public static KeepDraft Keep(VersionRow draft, params KeptLine[] lines) => new()
    {
        VersionId = draft.Id, Version = draft.Version, Lines = [.. lines], Why = draft.Why, Method = draft.Method,
        CureMinHours = draft.CureMinHours, CureIdealHours = draft.CureIdealHours, CureLatestHours = draft.CureLatestHours,
        TolerancePercent = draft.TolerancePercent, ExpectedLossPercent = draft.ExpectedLossPercent,
    };

    /// <summary>Keeps lines on the draft of a formula and answers with the sheet.</summary>
    public static async Task<FormulaSheet> KeepAsync(this TestStudio studio, Guid formulaId, params KeptLine[] lines)
    {
        var draft = (await studio.SheetAsync(formulaId)).Draft!;
        (await studio.Get<Versions>().KeepAsync(studio.Ana, Keep(draft, lines))).Expect();
        return await studio.SheetAsync(formulaId);
    }

    public static async Task<Outcome<VersionReleased>> ReleaseAsync(this TestStudio studio, Guid formulaId, string? why = null)
    {
        var draft = (await studio.SheetAsync(formulaId)).Draft!;
        return await studio.Get<Versions>().ReleaseAsync(studio.Ana, new ReleaseVersion { VersionId = draft.Id, Version = draft.Version, Why = why });
    }

    /// <summary>A released v1 with these lines.</summary>
    public static async Task<FormulaSheet> ReleasedAsync(this TestStudio studio, string name, string kind, params KeptLine[] lines)
    {
        var started = await studio.NewFormulaAsync(name, kind);
        await studio.KeepAsync(started.FormulaId, lines);
        (await studio.ReleaseAsync(started.FormulaId)).Expect();
        return await studio.SheetAsync(started.FormulaId);
    }
}
