using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Takes a wrong act on units back with a second one that names it: what was set aside, placed, reported, sold or
/// returned. Both stay. A sale gets a sale of opposite sign.
/// </summary>
public sealed record TakeBackEntry : StudioRequest
{
    public Guid EntryId { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class TakeBackEntryValidator : AbstractValidator<TakeBackEntry>
{
    public TakeBackEntryValidator()
    {
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why it is taken back.");
        RuleFor(r => r.Reason).OneLine("The reason", 200);
    }
}

/// <summary>Units of the entry have moved on, so its opposite would reach below zero.</summary>
public sealed record MovedOnSince(string What) : Refusal
{
    public override string Happened => $"Units of {What} have moved on since.";
    public override string ToDo => "Take the later entry back first; the history of the batch shows it.";
}

public sealed partial class FinishedGoods
{
    private static readonly TakeBackEntryValidator TakeBackShape = new();

    public Task<Outcome<Nothing>> TakeBackAsync(Actor actor, TakeBackEntry request, CancellationToken cancel = default) =>
        store.RunAsync<TakeBackEntry, Nothing>(actor, request, TakeBackShape, async command =>
        {
            var legs = await command.Db.UnitMovements.AsNoTracking().Where(m => m.EntryId == request.EntryId).OrderBy(m => m.Id).ToListAsync(cancel);
            var saleId = legs.Count > 0 ? legs[0].SaleId : await command.Db.Sales.Where(s => s.Id == request.EntryId).Select(s => (Guid?)s.Id).SingleOrDefaultAsync(cancel);
            if (legs.Count == 0 && saleId is null)
            {
                return new NotFound("This entry");
            }

            var locked = await UnitLedger.LockAsync(command, legs.Select(l => l.BatchId), cancel);
            if (await WhyNotTakeBackAsync(command.Db, legs, saleId, cancel) is { } refusal)
            {
                return refusal;
            }

            var names = string.Join(", ", locked.Batches.Values.Select(b => b.Code).Order(StringComparer.Ordinal));
            var sale = saleId is { } id ? await ReverseSaleAsync(command, id, request.Reason.Trim(), cancel) : null;
            var entry = new UnitEntry(sale?.Id ?? Guid.CreateVersion7(), request.Reason.Trim()) { SaleId = sale?.Id };
            if (!UnitLedger.TryReverse(command, locked, entry, legs))
            {
                return new MovedOnSince(names);
            }

            foreach (var batch in locked.Batches.Values)
            {
                command.Record("batch", batch.Id, $"Took back an entry of {batch.Code}: {entry.Reason}", Topics.Finished);
            }

            return Nothing.Value;
        }, cancel: cancel);

    private static async Task<Refusal?> WhyNotTakeBackAsync(StudioDb db, List<UnitMovement> legs, Guid? saleId, CancellationToken cancel)
    {
        var ids = legs.ConvertAll(l => l.Id);
        if (legs.Exists(l => l.ReversesId is not null))
        {
            return new Because("This entry is itself a reversal.", "Record the act once more instead.");
        }

        if (legs.Exists(l => BelongsElsewhere(l.Kind)))
        {
            return new TakeBackElsewhere("This entry belongs to a filling or to kits.", "What broke since filling is set aside as broken; kits are taken apart on their own page.");
        }

        if (await db.UnitMovements.AnyAsync(m => m.ReversesId != null && ids.Contains(m.ReversesId.Value), cancel)
            || (saleId is not null && await db.Sales.AnyAsync(s => s.OfSaleId == saleId && s.Kind == SaleKind.Reversal, cancel)))
        {
            return new Because("This entry was taken back already.", "Both lines stand in the history.");
        }

        // A sale of which something came back cannot vanish as a whole: the return would hang in the air.
        return saleId is not null && await db.Sales.AnyAsync(
            s => s.OfSaleId == saleId && s.Kind == SaleKind.Return && !db.Sales.Any(r => r.OfSaleId == s.Id && r.Kind == SaleKind.Reversal), cancel)
            ? new Because("Units of this sale came back.", "Take the return back first, then the sale.") : null;
    }

    /// <summary>The sale with every quantity and fee turned round. Kits of it are there to be sold again.</summary>
    private static async Task<Sale> ReverseSaleAsync(Command command, Guid saleId, string reason, CancellationToken cancel)
    {
        var sale = await command.Db.Sales.AsNoTracking().Include(s => s.Lines).SingleAsync(s => s.Id == saleId, cancel);
        var back = new Sale
        {
            Code = await command.NextCodeAsync(Sales.CodePrefix), Kind = SaleKind.Reversal, OfSaleId = sale.Id, PlaceId = sale.PlaceId, CustomerId = sale.CustomerId,
            Channel = sale.Channel, Reference = sale.Reference, SoldOn = sale.SoldOn, TaxPercent = sale.TaxPercent, TaxBasis = sale.TaxBasis, Fees = -sale.Fees,
            Note = reason, PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        };
        back.Lines.AddRange(sale.Lines.Select(l => new SaleLine
        {
            Position = l.Position, BatchId = l.BatchId, KitLotId = l.KitLotId, Quantity = -l.Quantity, Tag = l.Tag, NetPrice = l.NetPrice, UnitCost = l.UnitCost, IsForBroken = l.IsForBroken,
        }));
        command.Db.Sales.Add(back);
        foreach (var line in sale.Lines.Where(l => l.KitLotId is not null).OrderBy(l => l.KitLotId))
        {
            var kits = await Kits.LockLotAsync(command, line.KitLotId!.Value, cancel);
            (kits.Sold, kits.Left) = (kits.Sold - line.Quantity, kits.Left + line.Quantity);
        }

        command.Record("sale", back.Id, $"Took back Sale {sale.Code}: {reason}", Topics.Finished);
        return back;
    }
}
