using System.Globalization;
using FluentValidation;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Takes a material off the lists. Its lots, papers and history stay, and it can be restored.</summary>
public sealed record ArchiveMaterial : StudioRequest
{
    public Guid MaterialId { get; set; }

    /// <summary>Set by the answer to <see cref="FormulasUseIt"/>.</summary>
    public bool AlthoughFormulasUseIt { get; set; }
}

public sealed record RestoreMaterial : StudioRequest
{
    public Guid MaterialId { get; set; }
}

/// <summary>Archived stock would be on no list.</summary>
public sealed record StockOnHand(string Name, string OnHand, IReadOnlyList<string> Lots) : Refusal
{
    public override string Happened => $"{Name} cannot be archived: {OnHand} is on hand in {string.Join(", ", Lots)}.";
    public override string Kept => "Nothing was changed.";
    public override string ToDo => "Use it up, or post what happened to it as an adjustment, then archive.";
}

/// <summary>A batch that is planned or being weighed counts on it, or a receipt is still to come.</summary>
public sealed record BatchesNeedIt(string Name, IReadOnlyList<string> Batches) : Refusal
{
    public override string Happened => $"{Name} cannot be archived: {string.Join(", ", Batches)} still {(Batches.Count == 1 ? "counts" : "count")} on it.";
    public override string Kept => "Nothing was changed.";
    public override string ToDo => "Finish or discard the batch, and match receipts to follow; then archive.";
}

/// <summary>A question rather than a wall: formulas keep working on paper, but cannot be weighed.</summary>
public sealed record FormulasUseIt(string Name, IReadOnlyList<string> Formulas) : Refusal
{
    public override string Happened => $"{Name} stands in {string.Join(", ", Formulas)}.";
    public override string Kept => "Nothing was changed.";
    public override string ToDo => "Archive it all the same and these cannot be made again until it is restored or replaced.";
}

public sealed partial class Materials
{
    public Task<Outcome<Nothing>> ArchiveAsync(Actor actor, ArchiveMaterial request, CancellationToken cancel = default) =>
        store.RunAsync<ArchiveMaterial, Nothing>(actor, request, null, async command =>
        {
            var row = await LockMaterialAsync(command, request.MaterialId, cancel);
            if (row is null)
            {
                return new NotFound("This material");
            }

            if (row.ArchivedAt is not null)
            {
                return Nothing.Value;
            }

            if (await WhyKeepAsync(command.Db, row, request.AlthoughFormulasUseIt, cancel) is { } refusal)
            {
                return refusal;
            }

            row.ArchivedAt = command.Now;
            command.Record("material", row.Id, $"Archived {row.Name}", Topics.Materials);
            return Nothing.Value;
        }, cancel: cancel);

    public Task<Outcome<Nothing>> RestoreAsync(Actor actor, RestoreMaterial request, CancellationToken cancel = default) =>
        store.RunAsync<RestoreMaterial, Nothing>(actor, request, null, async command =>
        {
            var row = await LockMaterialAsync(command, request.MaterialId, cancel);
            if (row is null)
            {
                return new NotFound("This material");
            }

            if (row.ArchivedAt is null)
            {
                return Nothing.Value;
            }

            if (await NameTakenAsync(command, row.Name, row.Id, cancel) is { } taken)
            {
                return taken;
            }

            row.ArchivedAt = null;
            command.Record("material", row.Id, $"Restored {row.Name}", Topics.Materials);
            return Nothing.Value;
        }, cancel: cancel);

    private static async Task<Refusal?> WhyKeepAsync(StudioDb db, Material row, bool althoughFormulas, CancellationToken cancel)
    {
        var lots = await db.Lots.Where(l => l.MaterialId == row.Id && l.Balance!.OnHand > 0).OrderBy(l => l.ReceivedOn)
            .Select(l => new { l.Code, l.Balance!.OnHand }).ToListAsync(cancel);
        if (lots.Count > 0)
        {
            var sum = new StockAmount(lots.Sum(l => l.OnHand), row.StockedIn);
            var unit = row.StockedIn == StockUnit.Gram ? "g" : "each";
            return new StockOnHand(row.Name, $"{QuantityFormat.Amount(sum, CultureInfo.CurrentCulture)} {unit}", [.. lots.Select(l => l.Code)]);
        }

        var batches = await db.Batches
            .Where(b => ((b.State == BatchState.Planned || b.State == BatchState.Weighing) && b.Lines.Any(l => l.MaterialId == row.Id))
                || (b.FilledAt == null && b.DiscardedAt == null && b.Parts.Any(p => p.MaterialId == row.Id))
                || db.PendingReceipts.Any(p => p.BatchId == b.Id && p.MaterialId == row.Id && p.MatchedAt == null))
            .OrderBy(b => b.Id).Select(b => b.Code).ToListAsync(cancel);
        if (batches.Count > 0)
        {
            return new BatchesNeedIt(row.Name, batches);
        }

        var formulas = althoughFormulas ? [] : await FormulasUsingAsync(db, row.Id, cancel);
        var named = formulas.Where(f => !f.IsOld).Select(f => f.Number is null ? f.Name : $"{f.Name} v{f.Number}").Distinct().ToList();
        return named.Count > 0 ? new FormulasUseIt(row.Name, named) : null;
    }
}
