using MakerStudio.Core.Products;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>Which formulas the library shows.</summary>
public enum LibraryShelf { InUse, Drafts, PutAway }

/// <summary>One version on the library's list: the newest released one, or the draft.</summary>
/// <param name="Load">Null while the lines do not add up.</param>
/// <param name="CostPerHundred">Of 100 mL, or of 100 g where it is sold by weight; null where a cost or density is missing.</param>
/// <param name="Problems">What is still to mend before the lines add up.</param>
public sealed record LibraryRow(
    Guid FormulaId, Guid VersionId, string Name, int Number, string ProductKind, FormulaState State, bool PutAway,
    ScentLoad? Load, decimal? CostPerHundred, int Lines, int Problems, bool UsesPutAwayMaterial, DateTimeOffset KeptAt);

/// <param name="Formulas">How many formulas are on this shelf in all, found or not.</param>
/// <param name="Found">How many the search found; more than are in <paramref name="Rows"/> when it found many.</param>
public sealed record LibraryPage(IReadOnlyList<LibraryRow> Rows, int Formulas, int Found);

public sealed partial class Formulas
{
    /// <summary>Formulas read into one page; a search narrows beyond it.</summary>
    public const int MostListed = 200;

    /// <summary>The library by name, then version; the text is looked for in scent names and in the names of materials.</summary>
    public Task<LibraryPage> ListAsync(LibraryShelf shelf, string? text = null, CancellationToken cancel = default) => ListAsync(shelf, text, MostListed, cancel);

    /// <summary>The same rows, every one of them.</summary>
    public async Task<IReadOnlyList<LibraryRow>> AllAsync(LibraryShelf shelf, string? text = null, CancellationToken cancel = default) =>
        (await ListAsync(shelf, text, int.MaxValue, cancel)).Rows;

    private async Task<LibraryPage> ListAsync(LibraryShelf shelf, string? text, int most, CancellationToken cancel)
    {
        await using var db = await store.ReadAsync(cancel);
        var onShelf = shelf switch
        {
            LibraryShelf.PutAway => db.Formulas.Where(f => f.ArchivedAt != null),
            LibraryShelf.Drafts => db.Formulas.Where(f => f.ArchivedAt == null && f.Versions.Any(v => v.State == FormulaState.Draft)),
            _ => db.Formulas.Where(f => f.ArchivedAt == null),
        };
        var found = string.IsNullOrWhiteSpace(text) ? onShelf : Named(onShelf, PlainText.ContainsPattern(text));
        var formulas = await found.OrderBy(f => f.Name.ToLower()).ThenBy(f => f.Id).Take(most)
            .Select(f => new { f.Id, f.Name, f.ProductKind, PutAway = f.ArchivedAt != null }).ToListAsync(cancel);
        var ids = formulas.Select(f => f.Id).ToArray();
        var newest = db.FormulaVersions.Where(v => v.State == FormulaState.Released).GroupBy(v => v.FormulaId)
            .Select(g => new { FormulaId = g.Key, Number = g.Max(v => v.Number) });
        var versions = await FormulaRows.Versions(db, v => ids.Contains(v.FormulaId)
            && (v.State == FormulaState.Draft || newest.Any(n => n.FormulaId == v.FormulaId && n.Number == v.Number))).ToListAsync(cancel);
        var materials = await LineMaterials.OfAsync(
            db, versions.SelectMany(v => v.Lines).Select(l => l.MaterialId), await StudioDay.TodayAsync(db, store.Clock, cancel), cancel);
        var facts = await AssessedMaterials.OfAsync(db, versions.SelectMany(v => v.Lines).Select(l => l.MaterialId), cancel);
        var of = versions.Where(v => shelf != LibraryShelf.Drafts || v.IsDraft).OrderBy(v => v.Number).ToLookup(v => v.FormulaId);
        return new(
            [.. formulas.SelectMany(f => of[f.Id].Select(v => Row(v, f.Name, f.ProductKind, f.PutAway, materials, facts)))],
            await onShelf.CountAsync(cancel), await found.CountAsync(cancel));
    }

    private static IQueryable<Formula> Named(IQueryable<Formula> formulas, string pattern) => formulas.Where(f =>
        EF.Functions.ILike(f.Name, pattern)
        || f.Versions.Any(v => v.Lines.Any(l => EF.Functions.ILike(l.Material!.Name, pattern))));

    private static LibraryRow Row(
        VersionRow version, string name, string productKind, bool putAway,
        Dictionary<Guid, LineMaterial> materials, MaterialFacts facts)
    {
        var worked = Worked.Of(productKind, version.State, version.Lines, version.Measured, materials, facts);
        return new(
            version.FormulaId, version.Id, name, version.Number, productKind, version.State, putAway, worked.Load,
            worked.CostPerHundred(ProductKinds.Get(productKind)), version.Lines.Count, worked.Problems.Count,
            version.Lines.Any(l => materials[l.MaterialId].PutAway), version.KeptAt);
    }
}
