using FluentValidation;
using MakerStudio.Core.Labels;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Labels;

/// <summary>Prints the confirmed label of a batch and records that it was.</summary>
public sealed record PrintLabels : StudioRequest
{
    public Guid BatchId { get; set; }
    public int? Count { get; set; }
    public int? FirstPlace { get; set; } = 1;

    /// <summary>Printer offset to the right, mm.</summary>
    public decimal? OffsetAcross { get; set; } = 0m;

    /// <summary>Printer offset down, mm.</summary>
    public decimal? OffsetDown { get; set; } = 0m;
    public DateOnly? BestBefore { get; set; }

    /// <summary>The studio's own address as the browser sees it.</summary>
    public string StudioAddress { get; set; } = "";
}

public sealed class PrintLabelsValidator : AbstractValidator<PrintLabels>
{
    /// <summary>At once; own bound.</summary>
    private const int Most = 2_000;

    public PrintLabelsValidator()
    {
        RuleFor(r => r.Count).NotNull().WithMessage("Say how many labels.").InclusiveBetween(1, Most).WithMessage("Print from 1 to 2,000 labels at once.");
        RuleFor(r => r.FirstPlace).NotNull().WithMessage("Say the first free place.").GreaterThanOrEqualTo(1).WithMessage("Places are counted from 1.");
        RuleFor(r => r.OffsetAcross).Must(IsOffset).WithMessage("The printer offset is at most 20 mm either way.");
        RuleFor(r => r.OffsetDown).Must(IsOffset).WithMessage("The printer offset is at most 20 mm either way.");
        RuleFor(r => r.StudioAddress).Must(a => Uri.TryCreate(a, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https").WithMessage("The studio's address cannot be read.");
    }

    private static bool IsOffset(decimal? mm) => mm is >= -LabelStock.LargestOffset and <= LabelStock.LargestOffset;
}

public sealed record LabelsPrinted(Guid PrintId, int Pages);

/// <summary>The label may not be printed for this batch.</summary>
public sealed record LabelBlocked(string Fact, string Advice) : Refusal
{
    public override string Happened => Fact;
    public override string Kept => "Nothing was printed.";
    public override string ToDo => Advice;
}

/// <summary>A file to show in the browser.</summary>
public sealed record LabelFile(byte[] Content, string FileName);

public sealed partial class BatchLabels
{
    private static readonly PrintLabelsValidator PrintShape = new();

    public Task<Outcome<LabelsPrinted>> PrintAsync(Actor actor, PrintLabels request, CancellationToken cancel = default) =>
        store.RunAsync<PrintLabels, LabelsPrinted>(actor, request, PrintShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            await command.Db.Entry(batch).Reference(b => b.FormulaVersion).LoadAsync(cancel);
            var net = FormulaLabels.NetOf(batch.NominalMillilitres, batch.NominalMilligrams);
            if (net is null || batch.State == BatchState.Discarded)
            {
                var why = net is null ? WithoutPack(batch) : new LabelBlock($"{batch.Code} was discarded.", "", null);
                return new LabelBlocked(why.Fact, why.ToDo);
            }

            var (label, _, _, block) = await FindAsync(command.Db, batch, net, cancel);
            return block is not null ? new LabelBlocked(block.Fact, block.ToDo) : Print(command, batch, label!, request);
        }, cancel: cancel);

    /// <summary>The file of a recorded print, made anew from what was frozen; null where there is none.</summary>
    public async Task<LabelFile?> FileAsync(Guid printId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        if (await db.LabelPrints.SingleOrDefaultAsync(p => p.Id == printId, cancel) is not { } print)
        {
            return null;
        }

        var facts = LabelJson.Read<LabelFacts>(print.Facts);
        var stock = LabelJson.Read<LabelStock>(print.Stock);
        var title = $"{facts.ScentName} {facts.Batch!.Code}, {print.Count} labels";
        var positions = stock.Positions(print.Count, print.FirstPlace, print.OffsetAcross, print.OffsetDown);
        return new(LabelPdf.Of(LabelPress.LayOut(facts, stock).Drawing, stock, positions, title), $"{facts.Batch.Code}-labels.pdf");
    }

    /// <summary>The places of a sheet as outlines, for plain paper; null where there are no such labels.</summary>
    public async Task<LabelFile?> OutlinesAsync(Guid stockId, decimal across, decimal down, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await db.LabelStocks.SingleOrDefaultAsync(s => s.Id == stockId, cancel) is { } row
            ? new(LabelPdf.Outlines(LabelStocks.ItemOf(row).Stock, Within(across), Within(down), row.Name), "outlines.pdf")
            : null;
    }

    private static decimal Within(decimal mm) => decimal.Clamp(mm, -LabelStock.LargestOffset, LabelStock.LargestOffset);

    private static Outcome<LabelsPrinted> Print(Command command, Batch batch, LabelRow label, PrintLabels request)
    {
        var stock = LabelStocks.ItemOf(label.LabelStock!).Stock;
        if (request.FirstPlace > stock.PlacesAPage)
        {
            return new LabelBlocked($"A sheet of these has {stock.PlacesAPage} places, and the first free one was to be {request.FirstPlace}.", "Count the places row by row.");
        }

        var facts = LabelJson.Read<LabelFacts>(label.Confirmed!) with
        {
            Batch = new LabelBatch(batch.Code, request.BestBefore, AddressOf(request.StudioAddress, batch.Code)),
        };
        var layout = LabelPress.LayOut(facts, stock);
        if (!layout.Fits)
        {
            return new LabelTooSmall(layout.Problems, layout.WaysOut);
        }

        var print = new LabelPrint
        {
            BatchId = batch.Id, LabelId = label.Id, LabelStockId = label.LabelStockId!.Value, Facts = LabelJson.Write(facts), Stock = LabelJson.Write(stock),
            Count = request.Count!.Value, FirstPlace = request.FirstPlace!.Value, OffsetAcross = request.OffsetAcross!.Value, OffsetDown = request.OffsetDown!.Value,
            BestBefore = request.BestBefore, PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
        };
        command.Db.LabelPrints.Add(print);
        batch.BestBefore ??= request.BestBefore;
        (label.LabelStock!.OffsetAcross, label.LabelStock.OffsetDown) = (print.OffsetAcross, print.OffsetDown);
        command.Record("batch", batch.Id, $"Printed {print.Count} labels of {batch.Code}", Topics.Finished);
        return new LabelsPrinted(print.Id, stock.Pages(print.Count, print.FirstPlace));
    }
}
