using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Units that come back from a buyer. They wait on the studio's shelf, on hold, until somebody has looked at them.</summary>
public sealed record ReturnUnits : StudioRequest
{
    public Guid SaleId { get; set; }
    public Guid BatchId { get; set; }
    public int? Count { get; set; }

    /// <summary>Paid back for one, as on its tag; 0 when nothing was.</summary>
    public decimal RefundEach { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class ReturnUnitsValidator : AbstractValidator<ReturnUnits>
{
    public ReturnUnitsValidator()
    {
        RuleFor(r => r.Count).NotNull().WithMessage("Say how many.").InclusiveBetween(1, RecordFillValidator.MostUnits).WithMessage("Between 1 and 100,000 units come back.");
        RuleFor(r => r.RefundEach).InclusiveBetween(0, RecordSaleValidator.LargestPrice).WithMessage("What is paid back is from 0 to 1,000,000.");
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why it came back.");
        RuleFor(r => r.Reason).OneLine("The reason", 200);
    }
}

/// <summary>A parcel that went out for a sale.</summary>
public sealed record DispatchSale : StudioRequest
{
    public Guid SaleId { get; set; }
    public DateOnly? SentOn { get; set; }
    public string? Carrier { get; set; }
    public string? Tracking { get; set; }
    public string? Note { get; set; }
}

public sealed class DispatchSaleValidator : AbstractValidator<DispatchSale>
{
    public DispatchSaleValidator()
    {
        RuleFor(r => r.Carrier).OneLine("The carrier", 60);
        RuleFor(r => r.Tracking).OneLine("The parcel number", 80);
        RuleFor(r => r.Note).OneLine("The note", 400);
    }
}

public sealed record UnitsReturned(Guid EntryId, string Code, int Count);

public sealed partial class Sales
{
    private static readonly ReturnUnitsValidator ReturnShape = new();
    private static readonly DispatchSaleValidator DispatchShape = new();

    public Task<Outcome<UnitsReturned>> ReturnAsync(Actor actor, ReturnUnits request, CancellationToken cancel = default) =>
        store.RunAsync<ReturnUnits, UnitsReturned>(actor, request, ReturnShape, async command =>
        {
            var locked = await UnitLedger.LockAsync(command, [request.BatchId], cancel);
            var sale = await command.Db.Sales.AsNoTracking().SingleOrDefaultAsync(s => s.Id == request.SaleId && s.Kind == SaleKind.Sale, cancel);
            if (sale is null || !locked.Batches.TryGetValue(request.BatchId, out var batch))
            {
                return new NotFound("This sale or batch");
            }

            var still = (await SoldUnits.OutAsync(command.Db, batch.Id, sale.Id, cancel)).GetValueOrDefault(sale.Id);
            if (still < request.Count)
            {
                return new UnitsShort($"{batch.Code} of Sale {sale.Code}, still out", request.Count!.Value, still);
            }

            var back = await AddReturnAsync(command, sale, batch, request, cancel);
            UnitLedger.Post(
                command, locked, new UnitEntry(back.Id, request.Reason.Trim()) { SaleId = back.Id }, new UnitMove(batch.Id, UnitMoveKind.Return, request.Count!.Value));
            command.Record("sale", back.Id, $"Sale {sale.Code}: {request.Count} of {batch.Code} came back, {request.Reason.Trim()}", Topics.Finished);
            command.Record("batch", batch.Id, $"{request.Count} of {batch.Code} came back from Sale {sale.Code}: {request.Reason.Trim()}", Topics.Finished);
            return new UnitsReturned(back.Id, back.Code, request.Count.Value);
        }, cancel: cancel);

    public Task<Outcome<Nothing>> DispatchAsync(Actor actor, DispatchSale request, CancellationToken cancel = default) =>
        store.RunAsync<DispatchSale, Nothing>(actor, request, DispatchShape, async command =>
        {
            var sale = await command.Db.Sales.AsNoTracking().SingleOrDefaultAsync(s => s.Id == request.SaleId && s.Kind == SaleKind.Sale, cancel);
            if (sale is null)
            {
                return new NotFound("This sale");
            }

            if (await command.Db.Sales.AnyAsync(s => s.OfSaleId == sale.Id && s.Kind == SaleKind.Reversal, cancel))
            {
                return new Because($"Sale {sale.Code} was taken back.", "Record the sale that really goes out.");
            }

            command.Db.Dispatches.Add(new Dispatch
            {
                SaleId = sale.Id, SentOn = request.SentOn ?? command.Today, Carrier = Kept(request.Carrier), Tracking = Kept(request.Tracking), Note = Kept(request.Note),
                PersonId = command.PersonId, At = command.Now,
            });
            command.Record("sale", sale.Id, $"Sale {sale.Code} went out{(Kept(request.Carrier) is { } by ? $" with {by}" : "")}", Topics.Finished);
            return Nothing.Value;
        }, cancel: cancel);

    private static async Task<Sale> AddReturnAsync(Command command, Sale sale, Batch batch, ReturnUnits request, CancellationToken cancel)
    {
        var costs = await UnitLedger.UnitCostsAsync(command.Db, [batch.Id], cancel);
        var back = new Sale
        {
            Code = await command.NextCodeAsync(CodePrefix), Kind = SaleKind.Return, OfSaleId = sale.Id, PlaceId = sale.PlaceId, CustomerId = sale.CustomerId,
            Channel = sale.Channel, Reference = sale.Reference, SoldOn = command.Today, TaxPercent = sale.TaxPercent, TaxBasis = sale.TaxBasis,
            Note = request.Reason.Trim(), PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        };
        back.Lines.Add(new SaleLine
        {
            Position = 1, BatchId = batch.Id, Quantity = -request.Count!.Value, Tag = request.RefundEach,
            NetPrice = NetOf(new SalesTax(sale.TaxPercent / 100m, sale.TaxBasis), request.RefundEach),
            UnitCost = costs.TryGetValue(batch.Id, out var cost) ? cost : null,
        });
        command.Db.Sales.Add(back);
        return back;
    }

    private static string? Kept(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
