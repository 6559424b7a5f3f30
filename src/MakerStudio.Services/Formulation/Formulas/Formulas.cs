using MakerStudio.Services.Accounts;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>The library's formulas: one file a use case in this folder.</summary>
public sealed partial class Formulas(StudioStore store)
{
    /// <summary>Letters of a scent's name.</summary>
    public const int LongestName = 80;

    /// <summary>A formula with everything its pages show, or null.</summary>
    public async Task<FormulaSheet?> ReadAsync(Guid formulaId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var formula = await db.Formulas.Where(f => f.Id == formulaId)
            .Select(f => new FormulaRow(f.Id, f.Name, f.ProductKind, f.MakesMaterialId, f.ArchivedAt, f.Version, f.EnoughScentPercent, f.EnoughScentNote))
            .SingleOrDefaultAsync(cancel);
        if (formula is null)
        {
            return null;
        }

        var versions = await FormulaRows.Versions(db, v => v.FormulaId == formulaId).ToListAsync(cancel);
        var sizes = await FormulaRows.Sizes(db, s => s.FormulaId == formulaId).ToListAsync(cancel);
        var materials = versions.SelectMany(v => v.Lines).Select(l => l.MaterialId).Concat(sizes.SelectMany(s => s.Parts).Select(p => p.MaterialId));
        var lastBatch = await db.Batches.Where(b => b.FormulaVersion!.FormulaId == formulaId)
            .OrderByDescending(b => b.PlannedAt).Select(b => (long?)b.TargetMilligrams).FirstOrDefaultAsync(cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        return new(
            formula, versions, sizes, await LineMaterials.OfAsync(db, materials, today, cancel),
            await AssessedMaterials.OfAsync(db, versions.SelectMany(v => v.Lines).Select(l => l.MaterialId), cancel),
            await Markets.OfAsync(db, today, cancel), lastBatch);
    }

    /// <summary>What is known of a material, for a line that is added or tried.</summary>
    public async Task<MaterialFacts> FactsAsync(Guid materialId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await AssessedMaterials.OfAsync(db, [materialId], cancel);
    }

    /// <summary>Materials that may go on a line, by name or a part of it: stocked by mass, not put away.</summary>
    public Task<IReadOnlyList<LineMaterial>> MaterialsAsync(string? text = null, CancellationToken cancel = default) =>
        ChooseAsync(text, packaging: false, cancel);

    /// <summary>Packaging that may belong to a size: counted in pieces, not put away.</summary>
    public Task<IReadOnlyList<LineMaterial>> PackagingAsync(string? text = null, CancellationToken cancel = default) =>
        ChooseAsync(text, packaging: true, cancel);

    private async Task<IReadOnlyList<LineMaterial>> ChooseAsync(string? text, bool packaging, CancellationToken cancel)
    {
        const int MostShown = 200;
        await using var db = await store.ReadAsync(cancel);
        var unit = packaging ? Core.Quantities.StockUnit.Each : Core.Quantities.StockUnit.Gram;
        var pattern = PlainText.ContainsPattern(text);
        var ids = await db.Materials
            .Where(m => m.ArchivedAt == null && m.StockedIn == unit && EF.Functions.ILike(m.Name, pattern))
            .OrderBy(m => m.Name).ThenBy(m => m.Id).Take(MostShown).Select(m => m.Id).ToListAsync(cancel);
        var found = await LineMaterials.OfAsync(db, ids, await StudioDay.TodayAsync(db, store.Clock, cancel), cancel);
        return [.. ids.Select(id => found[id])];
    }
}

/// <summary>A formula was put away; its drafts do not change.</summary>
public sealed record PutAwayFirst(string Name) : Refusal
{
    public override string Happened => $"{Name} is put away.";
    public override string ToDo => "Take it out again to work on it.";
}
