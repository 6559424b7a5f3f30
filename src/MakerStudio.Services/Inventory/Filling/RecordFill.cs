using FluentValidation;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Bottles filled, rejected and retained; packaging is used up from its lots and the cost is rolled up.</summary>
public sealed record RecordFill : StudioRequest
{
    public Guid BatchId { get; set; }

    /// <summary>Mass that reached filling, after filter and vessel, grams.</summary>
    public decimal? ToFillingGrams { get; set; }

    /// <summary>Set point of one fill, grams.</summary>
    public decimal? FillGrams { get; set; }
    public int? Filled { get; set; }
    public int Rejected { get; set; }
    public int Retained { get; set; }

    /// <summary>Net grams of the bottles that were weighed.</summary>
    public List<decimal> CheckWeightsGrams { get; set; } = [];

    /// <summary>Hands-on minutes for the whole batch; resting costs nothing.</summary>
    public decimal? LabourMinutes { get; set; }

    /// <summary>Last day on which these units are sold; null when none is stated, and then a label's date is taken.</summary>
    public DateOnly? BestBefore { get; set; }
    public string? Note { get; set; }
}

public sealed class RecordFillValidator : AbstractValidator<RecordFill>
{
    internal const int MostUnits = 100_000;

    public RecordFillValidator()
    {
        RuleFor(r => r.ToFillingGrams).NotNull().WithMessage("Weigh what reached filling.").GreaterThan(0).WithMessage("What reached filling is more than 0 g.").LessThan(10_000_000).WithMessage("That is over 10 tonnes; check the unit.");
        RuleFor(r => r.FillGrams).NotNull().WithMessage("Give the fill of one unit in grams.").GreaterThan(0).WithMessage("A fill is more than 0 g.").LessThan(1_000_000).WithMessage("That is over a tonne; check the unit.");
        RuleFor(r => r.Filled).NotNull().WithMessage("Count what was filled.").InclusiveBetween(1, MostUnits).WithMessage("Between 1 and 100,000 units are filled.");
        RuleFor(r => r.Rejected).InclusiveBetween(0, MostUnits).WithMessage("Rejects are 0 or more.");
        RuleFor(r => r.Retained).InclusiveBetween(0, MostUnits).WithMessage("Retained samples are 0 or more.");
        RuleFor(r => r).Must(r => r.Filled is null || (long)r.Rejected + r.Retained <= r.Filled).WithName(nameof(RecordFill.Rejected))
            .WithMessage("More is rejected and retained than was filled.");
        RuleFor(r => r.CheckWeightsGrams).Must(w => w.Count <= 500 && w.All(g => g is > 0 and < 1_000_000)).WithMessage("Check weights are more than 0 g; at most 500 of them.");
        RuleFor(r => r.LabourMinutes).NotNull().WithMessage("Give the hands-on minutes, 0 if none.").InclusiveBetween(0, 100_000).WithMessage("Minutes are from 0 to 100,000.");
        RuleFor(r => r.BestBefore).SaneBestBefore();
        RuleFor(r => r.Note).MaximumLength(2000).WithMessage("Keep the note to 2,000 letters.");
        RuleFor(r => r.ToFillingGrams).Must(GramRules.AreWhole).WithMessage(GramRules.TooFine);
        RuleFor(r => r.FillGrams).Must(GramRules.AreWhole).WithMessage(GramRules.TooFine);
        RuleFor(r => r.CheckWeightsGrams).Must(w => w.All(g => GramRules.AreWhole(g))).WithMessage(GramRules.TooFine);
    }
}

public sealed record FillRecorded(string Code, int Saleable, decimal TotalCost, decimal PerFilled, decimal? PerSaleable, IReadOnlyList<string> Warnings);

/// <summary>Nothing may be filled from a batch that is not ready.</summary>
public sealed record NotReady(string Code, IReadOnlyList<ReadyObstacle> Obstacles, BatchState State) : Refusal
{
    public override string Happened => State == BatchState.Resting
        ? $"{Code} is not ready to be filled." : $"{Code} is {BatchStates.Say(State)}.";
    public override string ToDo => State == BatchState.Resting ? "Record a passed check first, or release it early with a reason." : "Look at its record.";
}

/// <summary>More left the vessel than went in, or more was filled than reached filling.</summary>
public sealed record MoreThanThereIs(string What, decimal Grams, decimal AvailableGrams) : Refusal
{
    public override string Happened => $"{What}: {AmountWords.Grams(Grams)}, but there are only {AmountWords.Grams(AvailableGrams)}.";
    public override string ToDo => "Check the counts and the fill weight.";
}

/// <summary>Not enough released packaging.</summary>
public sealed record PackagingShort(IReadOnlyList<PackagingShortage> Shortages) : Refusal
{
    public override string Happened => string.Join(" ", Shortages.Select(s => $"{s.Material}: {s.Needed:#,0} needed, {s.Available:#,0} can be used."));
    public override string ToDo => "Receive or release more, or count the shelf.";
}

public sealed record PackagingShortage(string Material, long Needed, long Available);

public sealed partial class Fills
{
    private static readonly RecordFillValidator RecordFillShape = new();

    public Task<Outcome<FillRecorded>> RecordAsync(Actor actor, RecordFill request, CancellationToken cancel = default) =>
        store.RunAsync<RecordFill, FillRecorded>(actor, request, RecordFillShape, async command =>
        {
            var batch = await Ledger.LockBatchAsync(command, request.BatchId);
            if (batch is null)
            {
                return new NotFound("This batch");
            }

            if (request.BestBefore < command.Today)
            {
                return new Because($"Best before {AmountWords.Day(request.BestBefore.Value)} has passed already.", "Check the date, or leave it empty.");
            }

            if (await RefuseAsync(command, batch, request, cancel) is { } refusal)
            {
                return refusal;
            }

            var fill = NewFill(command, batch, request);
            command.Db.Fills.Add(fill);
            if (await TakePackagingAsync(command, batch, fill, cancel) is { } shortage)
            {
                return shortage;
            }

            await command.Db.SaveChangesAsync(cancel);
            var sheet = await RollUpAsync(command.Db, fill, cancel);
            AddUnits(command, batch, fill);
            batch.State = BatchState.Filled;
            batch.FilledAt = command.Now;
            batch.BestBefore = request.BestBefore ?? batch.BestBefore;
            SignReady(command, batch);
            command.Record("batch", batch.Id, $"Filled {batch.Code}: {fill.Filled} filled, {fill.Rejected} rejected, {fill.Retained} retained{(request.BestBefore is { } day ? $", best before {AmountWords.Day(day)}" : "")}", Topics.Batches);
            command.Announce(Topics.Lots, null);
            command.Announce(Topics.Finished, batch.Id);
            await DropDraftAsync(command.Db, batch.Id, cancel);
            return new FillRecorded(batch.Code, sheet.Saleable, sheet.Total, sheet.PerFilled!.Value, sheet.PerSaleable, WarningsOf(batch, fill));
        }, cancel: cancel);

    private static async Task<Refusal?> RefuseAsync(Command command, Batch batch, RecordFill request, CancellationToken cancel)
    {
        if (await WhyNotReadyAsync(command, batch, cancel) is { } notReady)
        {
            return notReady;
        }

        var weighed = Mass.FromMilligrams(await command.Db.Weighings.Where(w => w.BatchId == batch.Id && w.ReversedAt == null).SumAsync(w => w.NetMilligrams, cancel)).Grams;
        weighed -= Mass.FromMilligrams(await LostAsync(command.Db, batch.Id, cancel)).Grams;
        var toFilling = request.ToFillingGrams!.Value;
        var filled = request.Filled!.Value * request.FillGrams!.Value;
        return toFilling > weighed ? new MoreThanThereIs("To filling", toFilling, weighed)
            : filled > toFilling ? new MoreThanThereIs($"{request.Filled} × {AmountWords.Grams(request.FillGrams.Value)}", filled, toFilling)
            : null;
    }

    private static IReadOnlyList<string> WarningsOf(Batch batch, Fill fill) => FillChecks.Warnings(FillChecks.Summary(
        batch.ProductKind, FillChecks.NominalMass(batch), [.. fill.CheckWeights.Select(Mass.FromMilligrams)]));

    private static Fill NewFill(Command command, Batch batch, RecordFill request) => new()
    {
        BatchId = batch.Id,
        ToFillingMilligrams = Mass.FromGrams(request.ToFillingGrams!.Value).Milligrams,
        FillMilligrams = Mass.FromGrams(request.FillGrams!.Value).Milligrams,
        Filled = request.Filled!.Value,
        Rejected = request.Rejected,
        Retained = request.Retained,
        CheckWeights = [.. request.CheckWeightsGrams.Select(g => Mass.FromGrams(g).Milligrams)],
        LabourMinutes = request.LabourMinutes!.Value,
        LabourRatePerHour = command.Studio.LabourRatePerHour,
        OverheadPerBatch = command.Studio.OverheadPerBatch,
        OverheadPerUnit = command.Studio.OverheadPerUnit,
        Note = request.Note,
        PersonId = command.PersonId,
        At = command.Now,
    };

    /// <summary>Uses up each part from its lots, first expired first out; names every part that is short.</summary>
    private static async Task<PackagingShort?> TakePackagingAsync(Command command, Batch batch, Fill fill, CancellationToken cancel)
    {
        var candidates = await Shelf.LotsOfAsync(command.Db, batch.Parts.Select(p => p.MaterialId), cancel);
        var locked = await Ledger.LockAsync(command, candidates.Select(l => l.Lot.LotId));
        var shortages = new List<PackagingShortage>();
        foreach (var part in batch.Parts.OrderBy(p => p.Material!.Name, StringComparer.Ordinal))
        {
            var needed = checked((long)part.CountPerUnit * fill.Filled);
            var lots = locked.Values.Where(l => l.MaterialId == part.MaterialId).Select(Shelf.View);
            var plan = LotChoice.For(new StockAmount(needed, part.Material!.StockedIn), lots, command.Today);
            if (!plan.IsMet)
            {
                shortages.Add(new PackagingShortage(part.Material.Name, needed, needed - plan.Shortfall.Units));
                continue;
            }

            foreach (var pick in plan.Picks)
            {
                Ledger.Post(command, locked[pick.LotId], MovementKind.Packaging, -pick.Amount.Units, m =>
                {
                    m.BatchId = batch.Id;
                    m.FillId = fill.Id;
                    m.Note = $"{fill.Filled} units of {batch.Code}";
                });
            }
        }

        return shortages.Count > 0 ? new PackagingShort(shortages) : null;
    }

    /// <summary>Works the cost sheet out from weighings and packaging movements and keeps it with the fill.</summary>
    internal static async Task<BatchCostSheet> RollUpAsync(StudioDb db, Fill fill, CancellationToken cancel)
    {
        var sheet = BatchCost.Of(
            await KeptUsesAsync(db, fill.BatchId, fill.ToFillingMilligrams, cancel), await PackagingUsesAsync(db, fill.BatchId, cancel), fill.LabourMinutes,
            fill.LabourRatePerHour, fill.OverheadPerBatch, fill.OverheadPerUnit, fill.Filled, fill.Rejected, fill.Retained);
        fill.MaterialsCost = sheet.MaterialsTotal;
        fill.PackagingCost = sheet.PackagingTotal;
        fill.LabourCost = sheet.Labour;
        fill.OverheadCost = sheet.Overhead;
        fill.TotalCost = sheet.Total;
        return sheet;
    }

    private static void AddUnits(Command command, Batch batch, Fill fill)
    {
        void Add(UnitMoveKind kind, int count, string reason)
        {
            if (count > 0)
            {
                command.Db.UnitMovements.Add(new UnitMovement
                {
                    EntryId = command.RequestId, Kind = kind, BatchId = batch.Id, PlaceId = Place.StudioId, Status = UnitRules.For(kind).To!.Value,
                    Change = count, Reason = reason, PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
                });
            }
        }

        Add(UnitMoveKind.Filled, fill.Filled - fill.Rejected - fill.Retained, "Filled");
        Add(UnitMoveKind.RejectedAtFilling, fill.Rejected, "Rejected at filling");
        Add(UnitMoveKind.RetainedAtFilling, fill.Retained, "Retained sample");
    }
}
