using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Brings units to a shop on consignment or a stall. No sale: they stay ours.</summary>
public sealed record PlaceUnits : StudioRequest
{
    public Guid PlaceId { get; set; }
    public DateOnly? PlacedOn { get; set; }
    public List<UnitsToPlace> Lines { get; set; } = [];
    public string? Note { get; set; }
}

public sealed record UnitsToPlace
{
    public Guid BatchId { get; set; }
    public int? Count { get; set; }

    /// <summary>Agreed net price of one to the shop's buyer; not needed at a stall.</summary>
    public decimal? NetPrice { get; set; }
}

/// <summary>Brings units from a place back to the studio's shelf.</summary>
public sealed record BringBackUnits : StudioRequest
{
    public Guid PlaceId { get; set; }
    public Guid BatchId { get; set; }
    public int? Count { get; set; }
    public string? Note { get; set; }
}

public sealed class PlaceUnitsValidator : AbstractValidator<PlaceUnits>
{
    public PlaceUnitsValidator()
    {
        RuleFor(r => r.Lines).NotEmpty().WithMessage("Say how many of which batch.").Must(l => l.Count <= 200).WithMessage("At most 200 lines at once.");
        RuleFor(r => r.Lines).Must(l => l.Select(x => x.BatchId).Distinct().Count() == l.Count).WithMessage("A batch stands in two lines; put them together.");
        RuleForEach(r => r.Lines).ChildRules(line =>
        {
            line.RuleFor(l => l.Count).NotNull().WithMessage("Say how many.").InclusiveBetween(1, RecordFillValidator.MostUnits).WithMessage("Between 1 and 100,000 units are placed.");
            line.RuleFor(l => l.NetPrice).InclusiveBetween(0, 1_000_000).WithMessage("A net price is from 0 to 1,000,000.");
        });
        RuleFor(r => r.Note).OneLine("The note", 400);
    }
}

public sealed class BringBackUnitsValidator : AbstractValidator<BringBackUnits>
{
    public BringBackUnitsValidator()
    {
        RuleFor(r => r.Count).NotNull().WithMessage("Say how many.").InclusiveBetween(1, RecordFillValidator.MostUnits).WithMessage("Between 1 and 100,000 units come back.");
        RuleFor(r => r.Note).OneLine("The note", 400);
    }
}

/// <param name="There">Saleable units at the place after it.</param>
public sealed record UnitsPlaced(Guid EntryId, string Place, int Placed, int There);

/// <summary>A batch on hold, or past its date, leaves the studio for no shop.</summary>
public sealed record NotToBeSold(string Code, LotRefusal Why) : Refusal
{
    public override string Happened => Why is LotRefusal.Expired { On: var day } ? $"{Code} was best before {AmountWords.Day(day)}." : $"{Code} is on hold.";
    public override string ToDo => Why is LotRefusal.Expired ? "Choose another batch, or say why this one may go." : "Nothing of it is sold until the hold is lifted.";

    /// <summary>Null when units of the batch may be sold today.</summary>
    internal static NotToBeSold? Of(Batch batch, DateOnly today) =>
        batch.HeldReason is not null ? new NotToBeSold(batch.Code, new LotRefusal.NotReleased(LotStatus.OnHold))
        : batch.BestBefore is { } day && day < today ? new NotToBeSold(batch.Code, new LotRefusal.Expired(day))
        : null;
}

public sealed partial class Consignments(StudioStore store)
{
    private static readonly PlaceUnitsValidator PlaceShape = new();
    private static readonly BringBackUnitsValidator BringBackShape = new();

    public Task<Outcome<UnitsPlaced>> PlaceAsync(Actor actor, PlaceUnits request, CancellationToken cancel = default) =>
        store.RunAsync<PlaceUnits, UnitsPlaced>(actor, request, PlaceShape, async command =>
        {
            var place = await Places.LockAsync(command, request.PlaceId, cancel);
            if (place is null || place.ClosedAt is not null || place.Kind == PlaceKind.Studio)
            {
                return new NotFound("An open shop or stall of this kind");
            }

            var locked = await UnitLedger.LockAsync(command, request.Lines.Select(l => l.BatchId), cancel);
            if (WhyNotPlace(command, locked, place, request) is { } refusal)
            {
                return refusal;
            }

            var placement = new Placement
            {
                PlaceId = place.Id, PlacedOn = request.PlacedOn ?? command.Today, Note = request.Note?.Trim(), PersonId = command.PersonId, At = command.Now,
            };
            placement.EntryId = placement.Id;
            command.Db.Placements.Add(placement);
            var entry = new UnitEntry(placement.EntryId, placement.Note);
            foreach (var line in request.Lines)
            {
                placement.Lines.Add(new PlacementLine
                {
                    BatchId = line.BatchId, Count = line.Count!.Value, NetPrice = line.NetPrice ?? 0m, CommissionPercent = place.CommissionPercent ?? 0m,
                });
                UnitLedger.Post(command, locked, entry, new UnitMove(line.BatchId, UnitMoveKind.Place, line.Count.Value, null, place.Id));
                command.Record("batch", line.BatchId, $"{line.Count} of {locked.Batches[line.BatchId].Code} brought to {place.Name}", Topics.Finished);
            }

            return new UnitsPlaced(placement.EntryId, place.Name, request.Lines.Sum(l => l.Count!.Value), request.Lines.Sum(l => locked.At(l.BatchId, place.Id)));
        }, cancel: cancel);

    public Task<Outcome<UnitsPlaced>> BringBackAsync(Actor actor, BringBackUnits request, CancellationToken cancel = default) =>
        store.RunAsync<BringBackUnits, UnitsPlaced>(actor, request, BringBackShape, async command =>
        {
            var place = await Places.LockAsync(command, request.PlaceId, cancel);
            var locked = await UnitLedger.LockAsync(command, [request.BatchId], cancel);
            if (place is null || place.Kind == PlaceKind.Studio || !locked.Batches.TryGetValue(request.BatchId, out var batch))
            {
                return new NotFound("This batch or place");
            }

            var there = locked.At(batch.Id, place.Id);
            if (there < request.Count)
            {
                return new UnitsShort($"{batch.Code} at {place.Name}", request.Count!.Value, there);
            }

            var entry = new UnitEntry(Guid.CreateVersion7(), request.Note?.Trim());
            UnitLedger.Post(command, locked, entry, new UnitMove(batch.Id, UnitMoveKind.TakeBack, request.Count!.Value, null, place.Id));
            command.Record("batch", batch.Id, $"{request.Count} of {batch.Code} brought back from {place.Name}", Topics.Finished);
            return new UnitsPlaced(entry.Id, place.Name, request.Count.Value, there - request.Count.Value);
        }, cancel: cancel);

    private static Refusal? WhyNotPlace(Command command, LockedUnits locked, Place place, PlaceUnits request)
    {
        foreach (var line in request.Lines)
        {
            if (!locked.Batches.TryGetValue(line.BatchId, out var batch))
            {
                return new NotFound("This batch");
            }

            var here = locked.At(batch.Id, Place.StudioId);
            if (here < line.Count)
            {
                return new UnitsShort($"{batch.Code} on the studio's shelf", line.Count!.Value, here);
            }

            if (NotToBeSold.Of(batch, command.Today) is { } notNow)
            {
                return notNow;
            }

            if (place.Kind == PlaceKind.Consignment && line.NetPrice is null)
            {
                return new Because($"No net price is agreed for {batch.Code}.", $"Say what one brings without tax before {place.Name} takes its share.");
            }
        }

        return null;
    }
}
