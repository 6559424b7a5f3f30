using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A sale from the studio or a stall, to a customer or to nobody named.</summary>
public sealed record RecordSale : StudioRequest
{
    public Guid PlaceId { get; set; } = Places.StudioShelf;

    /// <summary>Null for somebody who did not tell their name.</summary>
    public Guid? CustomerId { get; set; }
    public string Channel { get; set; } = "Stall";
    public string? Reference { get; set; }
    public DateOnly? SoldOn { get; set; }
    public decimal TaxPercent { get; set; }
    public TaxBasis TaxBasis { get; set; } = TaxBasis.InTag;

    /// <summary>What the channel keeps of the whole sale.</summary>
    public decimal Fees { get; set; }
    public string? Note { get; set; }
    public List<SoldLine> Lines { get; set; } = [];
}

/// <summary>A product, and the studio picks the batches; or a batch; or kits.</summary>
public sealed record SoldLine
{
    public Guid? FormulaId { get; set; }
    public string? SizeName { get; set; }
    public Guid? BatchId { get; set; }
    public Guid? KitLotId { get; set; }
    public int? Quantity { get; set; }

    /// <summary>Price of one on the tag.</summary>
    public decimal? Tag { get; set; }

    /// <summary>Why this batch, when another expires first or this one is past its date.</summary>
    public string? Reason { get; set; }
}

public sealed class RecordSaleValidator : AbstractValidator<RecordSale>
{
    /// <summary>Own bound.</summary>
    internal const decimal LargestPrice = 1_000_000m;

    public RecordSaleValidator()
    {
        RuleFor(r => r.Channel).NotEmpty().WithMessage("Say how it was sold: stall, web shop, wholesale.");
        RuleFor(r => r.Channel).OneLine("The channel", 40);
        RuleFor(r => r.Channel).NotEqual(Consignments.Channel, StringComparer.OrdinalIgnoreCase).WithMessage("What a shop on consignment sold comes with its report.");
        RuleFor(r => r.Reference).OneLine("The order number", 60);
        RuleFor(r => r.TaxPercent).InclusiveBetween(0, 100).WithMessage("Tax is from 0 to 100 %.");
        RuleFor(r => r.Fees).InclusiveBetween(0, LargestPrice).WithMessage("Fees are from 0 to 1,000,000.");
        RuleFor(r => r.Note).SeveralLines("The note", 1000);
        RuleFor(r => r.Lines).NotEmpty().WithMessage("Say what was sold.").Must(l => l.Count <= 200).WithMessage("At most 200 lines at once.");
        RuleForEach(r => r.Lines).ChildRules(line =>
        {
            line.RuleFor(l => l.Quantity).NotNull().WithMessage("Say how many.").InclusiveBetween(1, RecordFillValidator.MostUnits).WithMessage("Between 1 and 100,000 units are sold.");
            line.RuleFor(l => l.Tag).NotNull().WithMessage("Give the price of one; 0 is a price.").InclusiveBetween(0, LargestPrice).WithMessage("A price is from 0 to 1,000,000.");
            line.RuleFor(l => l.Reason).OneLine("The reason", 200);
            line.RuleFor(l => l).Must(l => (l.FormulaId ?? l.BatchId ?? l.KitLotId) is not null).WithName(nameof(SoldLine.BatchId)).WithMessage("Choose what was sold.");
        });
    }
}

/// <param name="Batches">Codes and counts: "RS-1 × 2".</param>
/// <param name="Paid">What the buyer pays, tax in it; not rounded.</param>
public sealed record SaleRecorded(Guid SaleId, string Code, int Units, decimal Net, decimal Paid, string Batches);

/// <summary>Another batch expires first.</summary>
public sealed record NotFirst(string Code, string Suggested) : Refusal
{
    public override string Happened => $"{Suggested} goes before {Code}: first expired, first out.";
    public override string ToDo => $"Take {Suggested}, or say why {Code} was sold.";
}

public sealed partial class Sales
{
    private static readonly RecordSaleValidator RecordShape = new();

    public Task<Outcome<SaleRecorded>> RecordAsync(Actor actor, RecordSale request, CancellationToken cancel = default) =>
        store.RunAsync<RecordSale, SaleRecorded>(actor, request, RecordShape, async command =>
        {
            var place = await Places.LockAsync(command, request.PlaceId, cancel);
            if (place is null || place.ClosedAt is not null || place.Kind == PlaceKind.Consignment
                || (request.CustomerId is { } buyer && !await command.Db.Customers.AnyAsync(c => c.Id == buyer, cancel)))
            {
                return new NotFound("This place or customer");
            }

            var products = await CandidatesAsync(command.Db, place.Id, request, cancel);
            var kits = await KitContentsAsync(command.Db, request, cancel);
            var locked = await UnitLedger.LockAsync(
                command, products.Values.SelectMany(p => p).Concat(request.Lines.Select(l => l.BatchId).OfType<Guid>()).Concat(kits.Values.SelectMany(k => k)), cancel);
            var picking = new Picking(command, locked, place, products, kits);
            foreach (var line in request.Lines)
            {
                if (await picking.TakeAsync(line, cancel) is { } refusal)
                {
                    return refusal;
                }
            }

            return await PostAsync(command, place, request, picking, cancel);
        }, cancel: cancel);

    private static async Task<SaleRecorded> PostAsync(Command command, Place place, RecordSale request, Picking picking, CancellationToken cancel)
    {
        var tax = new SalesTax(request.TaxPercent / 100m, request.TaxBasis);
        var sale = new Sale
        {
            Code = await command.NextCodeAsync(CodePrefix), Kind = SaleKind.Sale, PlaceId = place.Id, CustomerId = request.CustomerId, Channel = request.Channel.Trim(),
            Reference = string.IsNullOrWhiteSpace(request.Reference) ? null : request.Reference.Trim(), SoldOn = request.SoldOn ?? command.Today,
            TaxPercent = request.TaxPercent, TaxBasis = request.TaxBasis, Fees = request.Fees, Note = string.IsNullOrWhiteSpace(request.Note) ? null : request.Note.Trim(),
            PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        };
        command.Db.Sales.Add(sale);
        var costs = await UnitLedger.UnitCostsAsync(command.Db, picking.Taken.Select(t => t.BatchId).OfType<Guid>(), cancel);
        foreach (var taken in picking.Taken)
        {
            sale.Lines.Add(new SaleLine
            {
                Position = sale.Lines.Count + 1, BatchId = taken.BatchId, KitLotId = taken.KitLotId, Quantity = taken.Count, Tag = taken.Tag,
                NetPrice = NetOf(tax, taken.Tag), Reason = taken.Reason,
                UnitCost = taken.KitCost ?? (taken.BatchId is { } id && costs.TryGetValue(id, out var cost) ? cost : null),
            });
        }

        picking.Move(new UnitEntry(sale.Id) { SaleId = sale.Id });
        var what = string.Join(", ", picking.Taken.Select(t => $"{t.Code} × {t.Count}"));
        command.Record("sale", sale.Id, $"Sale {sale.Code}: {what}", Topics.Finished);
        foreach (var batch in picking.Taken.Where(t => t.BatchId is not null).GroupBy(t => t.BatchId!.Value))
        {
            command.Record("batch", batch.Key, $"Sold {batch.Sum(t => t.Count)} of {batch.First().Code}, Sale {sale.Code}", Topics.Finished);
        }

        var tags = picking.Taken.Sum(t => t.Count * t.Tag);
        return new SaleRecorded(sale.Id, sale.Code, picking.Taken.Sum(t => t.Count), tax.NetOf(tags), tax.PaidFor(tags), what);
    }

    /// <summary>Decimals a net price is kept with: far below a coin, and sums of it can be read back.</summary>
    internal const int NetDecimals = 12;

    internal static decimal NetOf(SalesTax tax, decimal tag) => decimal.Round(tax.NetOf(tag), NetDecimals);

    /// <summary>Batches with saleable units at the place, for each product the request names.</summary>
    private static async Task<Dictionary<(Guid, string?), List<Guid>>> CandidatesAsync(StudioDb db, Guid placeId, RecordSale request, CancellationToken cancel)
    {
        var asked = request.Lines.Select(l => l.BatchId).OfType<Guid>().ToArray();
        var products = await (
            from batch in db.Batches
            join version in db.FormulaVersions on batch.FormulaVersionId equals version.Id
            where asked.Contains(batch.Id)
            select new { version.FormulaId, batch.SizeName }).ToListAsync(cancel);
        var keys = products.Select(p => (p.FormulaId, (string?)p.SizeName))
            .Concat(request.Lines.Where(l => l is { BatchId: null, KitLotId: null, FormulaId: not null }).Select(l => (l.FormulaId!.Value, l.SizeName))).ToHashSet();
        var formulas = keys.Select(k => k.Item1).ToArray();
        var rows = await (
            from balance in db.UnitBalances
            join batch in db.Batches on balance.BatchId equals batch.Id
            join version in db.FormulaVersions on batch.FormulaVersionId equals version.Id
            where balance.PlaceId == placeId && balance.Status == UnitStatus.Saleable && balance.Count > 0 && formulas.Contains(version.FormulaId)
            select new { batch.Id, version.FormulaId, batch.SizeName }).ToListAsync(cancel);
        return keys.ToDictionary(k => k, k => rows.Where(r => (r.FormulaId, r.SizeName) == k).Select(r => r.Id).ToList());
    }

    /// <summary>Batches inside the kits that are sold: a hold of one holds them.</summary>
    private static async Task<Dictionary<Guid, List<Guid>>> KitContentsAsync(StudioDb db, RecordSale request, CancellationToken cancel)
    {
        var ids = request.Lines.Select(l => l.KitLotId).OfType<Guid>().ToArray();
        var rows = await db.KitLotContents.Where(c => ids.Contains(c.KitLotId) && c.BatchId != null).Select(c => new { c.KitLotId, c.BatchId }).ToListAsync(cancel);
        return rows.GroupBy(r => r.KitLotId).ToDictionary(g => g.Key, g => g.Select(r => r.BatchId!.Value).ToList());
    }
}
