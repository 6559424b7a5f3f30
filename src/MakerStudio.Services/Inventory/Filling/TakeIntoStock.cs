using FluentValidation;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A ready pre-blend becomes a lot of its material, with its own cost and no later date than its parents.</summary>
public sealed record TakeIntoStock : StudioRequest
{
    public Guid BatchId { get; set; }

    /// <summary>Net grams that reached the jar.</summary>
    public decimal? Grams { get; set; }
    public decimal? LabourMinutes { get; set; }
    public DateOnly? RetestOn { get; set; }
    public string? Shelf { get; set; }
}

public sealed class TakeIntoStockValidator : AbstractValidator<TakeIntoStock>
{
    public TakeIntoStockValidator()
    {
        RuleFor(r => r.Grams).NotNull().WithMessage("Weigh what reached the jar.").GreaterThan(0).WithMessage("The mass is more than 0 g.")
            .Must(GramRules.AreWhole).WithMessage(GramRules.TooFine);
        RuleFor(r => r.LabourMinutes).NotNull().WithMessage("Give the hands-on minutes, 0 if none.").InclusiveBetween(0, 100_000).WithMessage("Minutes are from 0 to 100,000.");
        RuleFor(r => r.Shelf).MaximumLength(60).WithMessage("Keep the shelf to 60 letters.");
    }
}

public sealed record TakenIntoStock(string LotCode, decimal UnitCost, DateOnly? UseBy);

/// <summary>This formula is not one that becomes a material.</summary>
public sealed record NotAPreBlend(string Code) : Refusal
{
    public override string Happened => $"{Code} is made to be filled; its formula names no material that it becomes.";
    public override string ToDo => "Fill it, or name the material in the formula.";
}

public sealed partial class Fills
{
    private static readonly TakeIntoStockValidator TakeIntoStockShape = new();

    public Task<Outcome<TakenIntoStock>> TakeIntoStockAsync(Actor actor, TakeIntoStock request, CancellationToken cancel = default) =>
        store.RunAsync<TakeIntoStock, TakenIntoStock>(actor, request, TakeIntoStockShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (await WhyNotReadyAsync(command, batch, cancel) is { } refusal)
            {
                return refusal;
            }

            var material = await MadeMaterialAsync(command.Db, batch, cancel);
            if (material is null)
            {
                return new NotAPreBlend(batch.Code);
            }

            var uses = await MaterialUsesAsync(command.Db, batch.Id, cancel);
            var lost = await LostAsync(command.Db, batch.Id, cancel);
            var weighed = uses.Sum(u => u.Quantity) - Mass.FromMilligrams(lost).Grams;
            if (request.Grams > weighed)
            {
                return new MoreThanThereIs("To stock", request.Grams!.Value, weighed);
            }

            var lot = await AddLotAsync(command, batch, material, request, Kept(uses, lost, Mass.FromGrams(request.Grams!.Value).Milligrams), cancel);
            batch.State = BatchState.Closed;
            batch.FilledAt = batch.ClosedAt = command.Now;
            SignReady(command, batch);
            command.Record("batch", batch.Id, $"Took {batch.Code} into stock as a lot of {material.Name}", Topics.Batches);
            command.Record("lot", lot.Id, $"Made by batch {batch.Code}", Topics.Lots);
            return new TakenIntoStock(lot.Code, lot.UnitCost, Shelf.ExpiryOf(lot)?.On);
        }, cancel: cancel);

    private static async Task<Lot> AddLotAsync(
        Command command, Batch batch, Material material, TakeIntoStock request, IReadOnlyList<CostedUse> uses, CancellationToken cancel)
    {
        var sheet = BatchCost.Of(uses, [], request.LabourMinutes!.Value, command.Studio.LabourRatePerHour, command.Studio.OverheadPerBatch, 0m, 0, 0, 0);
        batch.ConversionCost = sheet.Labour + sheet.Overhead;
        var lot = new Lot
        {
            Code = batch.Code, MaterialId = material.Id, Material = material, MadeByBatchId = batch.Id, ReceivedOn = command.Today, Shelf = request.Shelf,
            Status = LotStatus.Released, StatusReason = $"Made by batch {batch.Code}", UnitCost = sheet.Total / request.Grams!.Value, Density = batch.DensityUsed,
            ExpiresOn = LotDates.NotLaterThanParents(null, await ParentDatesAsync(command.Db, batch.Id, cancel)),
            RetestOn = request.RetestOn ?? (material.ShelfLifeDays is { } days ? command.Today.AddDays(days) : null),
            Balance = new LotBalance(),
        };
        command.Db.Lots.Add(lot);
        command.Db.LotEvents.Add(new LotEvent
        {
            LotId = lot.Id, Kind = LotEventKind.Received, What = $"Made by batch {batch.Code}", PersonId = command.PersonId, At = command.Now,
        });
        Ledger.Post(command, lot, MovementKind.Made, Mass.FromGrams(request.Grams.Value).Milligrams, m => m.BatchId = batch.Id);
        return lot;
    }

    private static async Task<List<DateOnly?>> ParentDatesAsync(StudioDb db, Guid batchId, CancellationToken cancel)
    {
        var parents = await (
            from weighing in db.Weighings
            join lot in db.Lots.Include(l => l.Material) on weighing.LotId equals lot.Id
            where weighing.BatchId == batchId && weighing.ReversedAt == null
            select lot).AsNoTracking().Include(l => l.Material).ToListAsync(cancel);
        return [.. parents.Select(l => Shelf.ExpiryOf(l)?.On)];
    }
}
