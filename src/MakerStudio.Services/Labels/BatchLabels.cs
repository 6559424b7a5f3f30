using MakerStudio.Core.Finished;
using MakerStudio.Core.Labels;
using MakerStudio.Core.Products;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Labels;

/// <summary>Why nothing can be printed for a batch yet.</summary>
/// <param name="Href">Where it can be mended; null where nothing can.</param>
public sealed record LabelBlock(string Fact, string ToDo, string? Href);

public sealed record LabelPrintRow(Guid Id, int Count, int FirstPlace, DateOnly? BestBefore, DateTimeOffset At, string Initials, Guid RequestId);

/// <summary>The label of a batch, as a page shows it.</summary>
/// <param name="Units">Saleable ones once it is filled, else as planned; null where neither is known.</param>
/// <param name="LabelVersion">Of the label that is confirmed for this size; null where none is.</param>
/// <param name="Facts">As it would be printed, the batch's own parts in it; where nothing is confirmed, as the words stand now. Null where there is no size.</param>
/// <param name="Changed">What the materials and settings say otherwise than at the confirmation.</param>
/// <param name="Block">Null where it may be printed.</param>
public sealed record BatchLabel(
    Guid BatchId, string Code, string ScentName, string ProductKind, string? SizeName, int VersionNumber, int? LabelVersion, int? Units,
    LabelFacts? Facts, LabelStockItem? Stock, string? ConfirmedBy, DateTimeOffset? ConfirmedAt, IReadOnlyList<string> Changed, LabelBlock? Block,
    IReadOnlyList<LabelPrintRow> Prints, string? WordsHref);

/// <summary>Labels of batches: what stands on them, and what was printed.</summary>
public sealed partial class BatchLabels(StudioStore store)
{
    /// <param name="studioAddress">The studio's own address as the browser sees it, with its slash: the square code leads there.</param>
    /// <returns>Null where no batch has the code.</returns>
    public async Task<BatchLabel?> FindAsync(string code, string studioAddress, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var batch = await db.Batches.Include(b => b.FormulaVersion).SingleOrDefaultAsync(b => b.Code == code, cancel);
        if (batch is null)
        {
            return null;
        }

        var prints = await PrintsAsync(db, batch.Id, cancel);
        var net = FormulaLabels.NetOf(batch.NominalMillilitres, batch.NominalMilligrams);
        var view = new BatchLabel(
            batch.Id, batch.Code, batch.ScentName, batch.ProductKind, batch.SizeName, batch.VersionNumber, null, await UnitsAsync(db, batch, cancel),
            null, null, null, null, [], null, prints, null);
        if (net is null || !ProductKinds.Get(batch.ProductKind).IsSold)
        {
            return view with { Block = WithoutPack(batch) };
        }

        var found = await FindAsync(db, batch, net, cancel);
        var own = found.Label;
        view = view with { WordsHref = found.Href, LabelVersion = own is null ? found.OtherVersion : batch.VersionNumber, Block = found.Block };
        var ofBatch = new LabelBatch(batch.Code, batch.BestBefore ?? (prints.Count > 0 ? prints[0].BestBefore : null), AddressOf(studioAddress, batch.Code));
        return await WithContentAsync(db, view, batch, net, own, ofBatch, cancel);
    }

    internal static string AddressOf(string studioAddress, string code) => $"{studioAddress.TrimEnd('/')}/finished/{Uri.EscapeDataString(code)}";

    /// <summary>The label of the batch's own version and size, or why there is none.</summary>
    private static async Task<(LabelRow? Label, int? OtherVersion, string? Href, LabelBlock? Block)> FindAsync(
        StudioDb db, Batch batch, NetContent net, CancellationToken cancel)
    {
        var formulaId = batch.FormulaVersion!.FormulaId;
        var labels = await db.Labels.Include(l => l.FormulaVersion).Include(l => l.FormulaSize).Include(l => l.LabelStock)
            .Where(l => l.FormulaVersion!.FormulaId == formulaId).ToListAsync(cancel);
        List<LabelRow> ofSize = [.. labels.Where(l => FormulaLabels.SizeOf(l.FormulaSize!).Net == net)];
        var own = ofSize.Find(l => l.FormulaVersionId == batch.FormulaVersionId);
        var href = await HrefAsync(db, batch, net, cancel);
        if (own?.Confirmed is not null)
        {
            return (own, null, href, own.LabelStock is { RetiredAt: null } ? null : new("The labels it was laid out for are no longer in the drawer.", "Choose others in the label's words.", href));
        }

        var other = ofSize.Where(l => l.Confirmed is not null).OrderByDescending(l => l.FormulaVersion!.Number).FirstOrDefault();
        return (own, other?.FormulaVersion!.Number, href, other is null
            ? new($"No label is confirmed for {batch.ScentName} v{batch.VersionNumber} in {batch.SizeName}.", "Look at its words and confirm it.", href)
            : new($"Label and formula version differ: v{other.FormulaVersion!.Number} label, batch of v{batch.VersionNumber}.", $"Confirm a label of v{batch.VersionNumber}; the old one is not printed for this batch.", href));
    }

    private static async Task<string?> HrefAsync(StudioDb db, Batch batch, NetContent net, CancellationToken cancel)
    {
        var formulaId = batch.FormulaVersion!.FormulaId;
        var sizes = await db.FormulaSizes.Where(s => s.FormulaId == formulaId).OrderBy(s => s.RetiredAt != null).ToListAsync(cancel);
        return sizes.Find(s => FormulaLabels.SizeOf(s).Net == net) is { } size ? $"/library/{formulaId}/label?version={batch.VersionNumber}&size={size.Id}" : null;
    }

    private async Task<BatchLabel> WithContentAsync(
        StudioDb db, BatchLabel view, Batch batch, NetContent net, LabelRow? own, LabelBatch ofBatch, CancellationToken cancel)
    {
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        var version = await FormulaLabels.VersionAsync(db, batch.FormulaVersionId, cancel);
        var wording = own is null ? LabelWording.Usual : LabelJson.Read<LabelWording>(own.Wording);
        var now = await LabelAssessment.FactsAsync(db, version!, net, wording, own?.Ufi, today, cancel);
        if (own?.Confirmed is not { } json)
        {
            return view with { Facts = now with { Batch = ofBatch }, Stock = own?.LabelStock is { } kept ? LabelStocks.ItemOf(kept) : null };
        }

        var confirmed = LabelJson.Read<LabelFacts>(json);
        var by = await db.Users.Where(p => p.Id == own.ConfirmedById).Select(p => p.DisplayName).SingleAsync(cancel);
        return view with
        {
            Facts = confirmed with { Batch = ofBatch }, Stock = own.LabelStock is { } stock ? LabelStocks.ItemOf(stock) : null,
            ConfirmedBy = by, ConfirmedAt = own.ConfirmedAt, Changed = now.DifferencesFrom(confirmed),
        };
    }

    private static LabelBlock WithoutPack(Batch batch) => ProductKinds.Get(batch.ProductKind).IsSold
        ? new($"{batch.Code} was planned by mass, so it has no size.", "A label says what one pack holds: plan the batch in a size of the formula.", null)
        : new($"{batch.Code} goes into other formulas and is not sold.", "Write its code on the jar.", null);

    private static async Task<int?> UnitsAsync(StudioDb db, Batch batch, CancellationToken cancel)
    {
        var units = await db.UnitMovements.Where(m => m.BatchId == batch.Id && m.Status == UnitStatus.Saleable).SumAsync(m => m.Change, cancel);
        return units > 0 ? units : batch.PlannedUnits;
    }

    private static Task<List<LabelPrintRow>> PrintsAsync(StudioDb db, Guid batchId, CancellationToken cancel) => (
        from print in db.LabelPrints
        join person in db.Users on print.PersonId equals person.Id
        where print.BatchId == batchId
        orderby print.At descending, print.Id descending
        select new LabelPrintRow(print.Id, print.Count, print.FirstPlace, print.BestBefore, print.At, person.Initials, print.RequestId)).ToListAsync(cancel);
}
