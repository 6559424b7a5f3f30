using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;

namespace MakerStudio.Services.Inventory;

/// <summary>Writes what happened to a lot besides its quantity.</summary>
internal static class LotLog
{
    public static void Add(
        Command command, Lot lot, LotEventKind kind, string what, string? reason = null, DateOnly? oldDate = null, DateOnly? newDate = null) =>
        command.Db.LotEvents.Add(new LotEvent
        {
            LotId = lot.Id, Kind = kind, What = what, Reason = reason, OldDate = oldDate, NewDate = newDate, PersonId = command.PersonId, At = command.Now,
        });

    /// <summary>Changes the status and says so in the lot's history and in the acts.</summary>
    public static void ChangeStatus(Command command, Lot lot, LotStatus to, string? reason)
    {
        lot.Status = to;
        lot.StatusReason = reason;
        Add(command, lot, LotEventKind.StatusChanged, LotWords.Status(to), reason);
        command.Record("lot", lot.Id, $"{lot.Code}: {LotWords.Status(to).ToLowerInvariant()}{(reason is null ? "" : $", {reason}")}", Topics.Lots);
    }

    /// <summary>Locks one lot with its balance; null when there is none.</summary>
    public static async Task<Lot?> LockAsync(Command command, Guid lotId) => (await Ledger.LockAsync(command, [lotId])).GetValueOrDefault(lotId);
}
