using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Carries a cost learned late on from a pre-blend into whatever was made with it.</summary>
internal static class MadeLots
{
    /// <summary>Nothing happens while the batch has not become a lot. Units made with it are costed anew, at any depth.</summary>
    public static async Task RecostAsync(Command command, Guid batchId, CancellationToken cancel)
    {
        await command.Db.SaveChangesAsync(cancel);
        if (await command.Db.Lots.SingleOrDefaultAsync(l => l.MadeByBatchId == batchId, cancel) is not { } lot)
        {
            return;
        }

        var made = await command.Db.Movements.Where(m => m.LotId == lot.Id && m.Kind == MovementKind.Made).SumAsync(m => m.Change, cancel);
        var conversion = await command.Db.Batches.Where(b => b.Id == batchId).Select(b => b.ConversionCost).SingleAsync(cancel) ?? 0m;
        var materials = (await Fills.KeptUsesAsync(command.Db, batchId, made, cancel)).Sum(u => u.Cost);
        lot.UnitCost = (materials + conversion) / Mass.FromMilligrams(made).Grams;
        var uses = await command.Db.Weighings.Where(w => w.LotId == lot.Id && w.ReversedAt == null).ToListAsync(cancel);
        uses.ForEach(w => w.UnitCost = lot.UnitCost);
        await command.Db.SaveChangesAsync(cancel);
        foreach (var batch in uses.Select(w => w.BatchId).Distinct().Order())
        {
            if (await command.Db.Fills.SingleOrDefaultAsync(f => f.BatchId == batch, cancel) is { } fill)
            {
                var before = fill.MaterialsCost;
                fill.MaterialsCost = (await Fills.KeptUsesAsync(command.Db, batch, fill.ToFillingMilligrams, cancel)).Sum(u => u.Cost);
                fill.TotalCost += fill.MaterialsCost - before;
            }
            else
            {
                await RecostAsync(command, batch, cancel);
            }
        }
    }
}
