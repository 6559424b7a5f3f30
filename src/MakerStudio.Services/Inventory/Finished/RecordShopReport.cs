using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What a shop tells of the units it has: sold, broken, sent back, left. Only now do units count as sold.</summary>
public sealed record RecordShopReport : StudioRequest
{
    public Guid PlaceId { get; set; }
    public DateOnly? ReportedOn { get; set; }
    public List<ShopReported> Lines { get; set; } = [];
    public string? Note { get; set; }
}

public sealed record ShopReported
{
    public Guid BatchId { get; set; }
    public int Sold { get; set; }

    /// <summary>Broken or missing there.</summary>
    public int Broken { get; set; }

    /// <summary>Came back to the studio, still saleable.</summary>
    public int SentBack { get; set; }

    /// <summary>Counted on the shop's shelf; null when nobody counted, and then it is worked out.</summary>
    public int? Left { get; set; }
    public decimal NetPrice { get; set; }
    public decimal CommissionPercent { get; set; }

    /// <summary>What the shop pays for a broken one; 0 when the loss is ours.</summary>
    public decimal PaidPerBroken { get; set; }
}

public sealed class RecordShopReportValidator : AbstractValidator<RecordShopReport>
{
    public RecordShopReportValidator()
    {
        RuleFor(r => r.Lines).NotEmpty().WithMessage("Say what the shop told of at least one batch.").Must(l => l.Count <= 200).WithMessage("At most 200 lines at once.");
        RuleFor(r => r.Lines).Must(l => l.Select(x => x.BatchId).Distinct().Count() == l.Count).WithMessage("A batch stands in two lines; put them together.");
        RuleForEach(r => r.Lines).ChildRules(line =>
        {
            line.RuleFor(l => l.Sold).InclusiveBetween(0, RecordFillValidator.MostUnits).WithMessage("Sold is 0 or more.");
            line.RuleFor(l => l.Broken).InclusiveBetween(0, RecordFillValidator.MostUnits).WithMessage("Broken is 0 or more.");
            line.RuleFor(l => l.SentBack).InclusiveBetween(0, RecordFillValidator.MostUnits).WithMessage("Sent back is 0 or more.");
            line.RuleFor(l => l.Left).InclusiveBetween(0, RecordFillValidator.MostUnits).WithMessage("Left is 0 or more.");
            line.RuleFor(l => l.NetPrice).InclusiveBetween(0, 1_000_000).WithMessage("A net price is from 0 to 1,000,000.");
            line.RuleFor(l => l.CommissionPercent).InclusiveBetween(0, 99).WithMessage("Commission is from 0 to 99 % of the net.");
            line.RuleFor(l => l.PaidPerBroken).InclusiveBetween(0, 1_000_000).WithMessage("What is paid for a broken one is from 0 to 1,000,000.");
        });
        RuleFor(r => r.Note).OneLine("The note", 400);
    }
}

/// <param name="SaleCode">Null when nothing was sold and nothing is paid.</param>
/// <param name="ForSold">What the shop owes for sold units, its commission off; not rounded.</param>
/// <param name="Left">Saleable units still there.</param>
public sealed record ShopReportRecorded(Guid EntryId, string? SaleCode, decimal ForSold, decimal ForBroken, int Left)
{
    public decimal Due => ForSold + ForBroken;
}

/// <summary>The counts of a report do not make up what the shop had.</summary>
public sealed record ShopCountsDiffer(string Place, string Code, int Held, int Told) : Refusal
{
    public override string Happened => $"{Place} had {Held:#,0} of {Code}; the report makes {Told:#,0}.";
    public override string ToDo => Told < Held
        ? $"{Held - Told:#,0} {(Held - Told == 1 ? "is" : "are")} not accounted for: count again, or record what is missing as broken."
        : "Count again, or record first what else was brought there.";
}

public sealed partial class Consignments
{
    public const string Channel = "Consignment";
    private static readonly RecordShopReportValidator ReportShape = new();

    public Task<Outcome<ShopReportRecorded>> ReportAsync(Actor actor, RecordShopReport request, CancellationToken cancel = default) =>
        store.RunAsync<RecordShopReport, ShopReportRecorded>(actor, request, ReportShape, async command =>
        {
            var place = await Places.LockAsync(command, request.PlaceId, cancel);
            if (place is not { Kind: PlaceKind.Consignment })
            {
                return new NotFound("This shop");
            }

            var locked = await UnitLedger.LockAsync(command, request.Lines.Select(l => l.BatchId), cancel);
            var report = new ConsignmentReport { PlaceId = place.Id, ReportedOn = request.ReportedOn ?? command.Today, Note = request.Note?.Trim(), PersonId = command.PersonId, At = command.Now };
            report.EntryId = report.Id;
            foreach (var told in request.Lines)
            {
                if (!locked.Batches.TryGetValue(told.BatchId, out var batch))
                {
                    return new NotFound("This batch");
                }

                var held = locked.At(batch.Id, place.Id);
                switch (Consignment.Settle(held, TermsOf(told), new ShopReport(told.Sold, told.Broken, told.SentBack, told.Left)))
                {
                    case ConsignmentResult.Settled settled:
                        report.Lines.Add(LineOf(told, held, settled.Left));
                        break;
                    case ConsignmentResult.MoreThanPlaced more:
                        return new ShopCountsDiffer(place.Name, batch.Code, held, more.Reported + (told.Left ?? 0));
                    case ConsignmentResult.DoesNotAddUp differs:
                        return new ShopCountsDiffer(place.Name, batch.Code, held, held - differs.ShouldBeLeft + differs.CountedLeft);
                }
            }

            var sale = await SaleOfAsync(command, place, report, cancel);
            report.SaleId = sale?.Id;
            command.Db.ConsignmentReports.Add(report);
            MoveReported(command, locked, report, sale?.Id);
            RecordReport(command, locked, place, report);
            var lines = report.Lines.ConvertAll(SettlementOf);
            return new ShopReportRecorded(report.EntryId, sale?.Code, lines.Sum(s => s.Revenue), lines.Sum(s => s.ForBroken), lines.Sum(s => s.Left));
        }, cancel: cancel);

    private static ConsignmentTerms TermsOf(ShopReported told) => new(told.NetPrice, told.CommissionPercent / 100m, told.PaidPerBroken);

    private static ConsignmentReportLine LineOf(ShopReported told, int held, int left) => new()
    {
        BatchId = told.BatchId, Held = held, Sold = told.Sold, Broken = told.Broken, SentBack = told.SentBack, Left = left,
        NetPrice = told.NetPrice, CommissionPercent = told.CommissionPercent, PaidPerBroken = told.PaidPerBroken,
    };

    /// <summary>A line that was recorded has been settled before, so it settles again.</summary>
    internal static ConsignmentResult.Settled SettlementOf(ConsignmentReportLine line) => (ConsignmentResult.Settled)Consignment.Settle(
        line.Held, new ConsignmentTerms(line.NetPrice, line.CommissionPercent / 100m, line.PaidPerBroken), new ShopReport(line.Sold, line.Broken, line.SentBack, line.Left));

    /// <summary>What was sold, and what the shop pays for without having sold it; null when neither is so.</summary>
    private static async Task<Sale?> SaleOfAsync(Command command, Place place, ConsignmentReport report, CancellationToken cancel)
    {
        if (!report.Lines.Exists(l => l.Sold > 0 || (l.Broken > 0 && l.PaidPerBroken > 0)))
        {
            return null;
        }

        var costs = await UnitLedger.UnitCostsAsync(command.Db, report.Lines.Select(l => l.BatchId), cancel);
        var sale = new Sale
        {
            Code = await command.NextCodeAsync(Sales.CodePrefix), Kind = SaleKind.Sale, PlaceId = place.Id, Channel = Channel, SoldOn = report.ReportedOn,
            TaxBasis = TaxBasis.AtTill, Fees = report.Lines.Sum(l => SettlementOf(l).Commission), Note = report.Note,
            PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        };
        void Add(Guid batch, int quantity, decimal net, bool isForBroken)
        {
            if (quantity > 0)
            {
                sale.Lines.Add(new SaleLine
                {
                    Position = sale.Lines.Count + 1, BatchId = batch, Quantity = quantity, Tag = net, NetPrice = net, IsForBroken = isForBroken,
                    UnitCost = costs.TryGetValue(batch, out var cost) ? cost : null,
                });
            }
        }

        foreach (var line in report.Lines)
        {
            Add(line.BatchId, line.Sold, line.NetPrice, isForBroken: false);
            Add(line.BatchId, line.PaidPerBroken > 0 ? line.Broken : 0, line.PaidPerBroken, isForBroken: true);
        }

        command.Db.Sales.Add(sale);
        return sale;
    }

    private static void MoveReported(Command command, LockedUnits locked, ConsignmentReport report, Guid? saleId)
    {
        var entry = new UnitEntry(report.EntryId, report.Note) { SaleId = saleId };
        void Move(Guid batch, UnitMoveKind kind, int count)
        {
            if (count > 0)
            {
                var status = UnitRules.For(kind).From.Count > 1 ? UnitStatus.Saleable : (UnitStatus?)null;
                UnitLedger.Post(command, locked, entry, new UnitMove(batch, kind, count, status, report.PlaceId));
            }
        }

        foreach (var line in report.Lines)
        {
            Move(line.BatchId, UnitMoveKind.ReportSold, line.Sold);
            Move(line.BatchId, line.PaidPerBroken > 0 ? UnitMoveKind.ReportPaidFor : UnitMoveKind.ReportBroken, line.Broken);
            Move(line.BatchId, UnitMoveKind.TakeBack, line.SentBack);
        }
    }

    private static void RecordReport(Command command, LockedUnits locked, Place place, ConsignmentReport report)
    {
        foreach (var line in report.Lines)
        {
            command.Record(
                "batch", line.BatchId,
                $"{place.Name} reports of {locked.Batches[line.BatchId].Code}: {line.Sold} sold, {line.Broken} broken, {line.SentBack} sent back, {line.Left} left", Topics.Finished);
        }
    }
}
