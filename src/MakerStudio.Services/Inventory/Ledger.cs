using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// The only way stock changes: lock the balances in id order, then post movements. A batch row, where one is involved, is locked before.
/// </summary>
internal static class Ledger
{
    /// <summary>Locks the balance rows of these lots, in id order, and returns them with their lots and materials.</summary>
    public static async Task<Dictionary<Guid, Lot>> LockAsync(Command command, IEnumerable<Guid> lotIds)
    {
        var ids = lotIds.Distinct().Order().ToArray();
        await command.Db.LotBalances
            .FromSql($"select * from lot_balances where lot_id = any({ids}) order by lot_id for update")
            .LoadAsync();
        return await command.Db.Lots.Include(l => l.Balance).Include(l => l.Material)
            .Where(l => ids.Contains(l.Id)).ToDictionaryAsync(l => l.Id);
    }

    /// <summary>Locks one batch with its lines and packaging list; null when there is none.</summary>
    public static async Task<Batch?> LockBatchAsync(Command command, Guid batchId)
    {
        var found = await command.Db.Batches.FromSql($"select *, xmin from batches where id = {batchId} for update").ToListAsync();
        if (found is not [var batch])
        {
            return null;
        }

        await command.Db.Entry(batch).Collection(b => b.Lines).Query().Include(l => l.Material).LoadAsync();
        await command.Db.Entry(batch).Collection(b => b.Parts).Query().Include(p => p.Material).LoadAsync();
        return batch;
    }

    /// <summary>
    /// Posts one movement on a locked lot. Callers refuse a shortage first; a balance below zero here is a bug and throws.
    /// </summary>
    /// <param name="change">Signed base units: milligrams or pieces.</param>
    public static Movement Post(Command command, Lot lot, MovementKind kind, long change, Action<Movement>? details = null)
    {
        var balance = lot.Balance ?? throw new InvalidOperationException($"{lot.Code} has no balance row.");
        var after = checked(balance.OnHand + change);
        if (after < 0)
        {
            throw new InvalidOperationException($"{lot.Code} would fall to {after}.");
        }

        balance.OnHand = after;
        var movement = new Movement
        {
            LotId = lot.Id, Kind = kind, Change = change, OnHandAfter = after, UnitCost = lot.UnitCost,
            PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        };
        details?.Invoke(movement);
        command.Db.Movements.Add(movement);
        return movement;
    }
}
