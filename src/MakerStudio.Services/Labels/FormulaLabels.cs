using MakerStudio.Core.Labels;
using MakerStudio.Core.Products;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Labels;

/// <summary>A version or size to choose from.</summary>
public sealed record LabelVersion(Guid Id, int Number);

public sealed record LabelSize(Guid Id, string Name, NetContent Net);

/// <summary>The label of one version in one size, as a page shows it.</summary>
/// <param name="Facts">With the words as kept and what the materials say now; null while there is no size.</param>
/// <param name="StockId">The labels it is laid out for; null while none is chosen.</param>
/// <param name="Changed">What is otherwise than at the confirmation; empty where nothing is, or nobody confirmed.</param>
/// <param name="Version">To send back; 0 while nothing was kept.</param>
public sealed record FormulaLabel(
    Guid FormulaId, string ScentName, IReadOnlyList<LabelVersion> Versions, LabelVersion? Chosen, IReadOnlyList<LabelSize> Sizes, LabelSize? Size,
    LabelFacts? Facts, Guid? StockId, IReadOnlyList<LabelStockItem> Stocks, string? ConfirmedBy, DateTimeOffset? ConfirmedAt, IReadOnlyList<string> Changed,
    UfiOwner? UfiOwner, bool IsMarketChosen, uint Version)
{
    /// <summary>Stands for the content that a person sees, so that nothing else is confirmed.</summary>
    public string? Mark => Facts is null ? null : FormulaLabels.MarkOf(Facts);

    public LabelStock? Stock => Stocks.FirstOrDefault(s => s.Id == StockId)?.Stock;
}

/// <summary>Labels of formula versions: their words, and who confirmed them.</summary>
public sealed partial class FormulaLabels(StudioStore store)
{
    /// <param name="versionNumber">Null takes the newest released one.</param>
    /// <param name="sizeId">Null takes the first.</param>
    /// <returns>Null where there is no such formula, or it has no such released version or size.</returns>
    public async Task<FormulaLabel?> FindAsync(Guid formulaId, int? versionNumber = null, Guid? sizeId = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var formula = await db.Formulas.Include(f => f.Sizes).SingleOrDefaultAsync(f => f.Id == formulaId, cancel);
        if (formula is null || !ProductKinds.Get(formula.ProductKind).IsSold)
        {
            return null;
        }

        var versions = await db.FormulaVersions.Where(v => v.FormulaId == formulaId && v.State == FormulaState.Released)
            .OrderByDescending(v => v.Number).Select(v => new LabelVersion(v.Id, v.Number)).ToListAsync(cancel);
        List<LabelSize> sizes = [.. formula.Sizes.Where(s => s.RetiredAt is null || s.Id == sizeId).OrderBy(s => s.Name, StringComparer.Ordinal).Select(SizeOf)];
        var chosen = versionNumber is { } number ? versions.Find(v => v.Number == number) : versions.FirstOrDefault();
        var size = sizeId is { } id ? sizes.Find(s => s.Id == id) : sizes.FirstOrDefault();
        return (versionNumber is not null && chosen is null) || (sizeId is not null && size is null)
            ? null
            : await ViewAsync(db, formula, versions, chosen, sizes, size, cancel);
    }

    internal static string MarkOf(LabelFacts facts) =>
        Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(LabelJson.Write(facts with { Wording = LabelWording.Usual, Ufi = null }))));

    internal static LabelSize SizeOf(FormulaSize size) => new(size.Id, size.Name, NetOf(size.NominalMillilitres, size.NominalMilligrams)!);

    internal static NetContent? NetOf(decimal? millilitres, long? milligrams) =>
        millilitres is { } volume ? new(volume, true) : milligrams is { } mass ? new(Core.Quantities.Mass.FromMilligrams(mass).Grams, false) : null;

    internal static Task<FormulaVersion?> VersionAsync(StudioDb db, Guid versionId, CancellationToken cancel) => db.FormulaVersions
        .Include(v => v.Formula).Include(v => v.Lines).AsSplitQuery().SingleOrDefaultAsync(v => v.Id == versionId && v.State == FormulaState.Released, cancel);

    private async Task<FormulaLabel> ViewAsync(
        StudioDb db, Formula formula, List<LabelVersion> versions, LabelVersion? chosen, List<LabelSize> sizes, LabelSize? size, CancellationToken cancel)
    {
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var market = await Markets.ReadAsync(db, today, cancel);
        var stocks = await LabelStocks.ListAsync(db, cancel);
        var view = new FormulaLabel(formula.Id, formula.Name, versions, chosen, sizes, size, null, null, stocks, null, null, [], market.Ufi, market.IsChosen, 0);
        if (chosen is null || size is null)
        {
            return view;
        }

        var row = await db.Labels.SingleOrDefaultAsync(l => l.FormulaVersionId == chosen.Id && l.FormulaSizeId == size.Id, cancel)
            ?? await FromLastVersionAsync(db, formula.Id, size.Id, cancel);
        var isOwn = row?.FormulaVersionId == chosen.Id;
        var version = await VersionAsync(db, chosen.Id, cancel);
        var wording = row is null ? LabelWording.Usual : LabelJson.Read<LabelWording>(row.Wording);
        var facts = await LabelAssessment.FactsAsync(db, version!, size.Net, wording, isOwn ? row?.Ufi : null, today, cancel);
        return view with
        {
            Facts = facts,
            StockId = stocks.FirstOrDefault(s => s.Id == row?.LabelStockId)?.Id ?? (stocks is [var only] ? only.Id : null),
            ConfirmedAt = isOwn ? row?.ConfirmedAt : null,
            ConfirmedBy = isOwn && row?.ConfirmedById is { } by ? await db.Users.Where(p => p.Id == by).Select(p => p.DisplayName).SingleAsync(cancel) : null,
            Changed = isOwn && row?.Confirmed is { } confirmed ? facts.DifferencesFrom(LabelJson.Read<LabelFacts>(confirmed)) : [],
            Version = isOwn ? row!.Version : 0,
        };
    }

    /// <summary>A new version starts from the words of the last one; its poison-centre code and confirmation are its own.</summary>
    private static Task<LabelRow?> FromLastVersionAsync(StudioDb db, Guid formulaId, Guid sizeId, CancellationToken cancel) => db.Labels
        .Where(l => l.FormulaSizeId == sizeId && l.FormulaVersion!.FormulaId == formulaId)
        .OrderByDescending(l => l.FormulaVersion!.Number).FirstOrDefaultAsync(cancel);
}
