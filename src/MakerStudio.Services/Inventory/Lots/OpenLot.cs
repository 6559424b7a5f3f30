using FluentValidation;

namespace MakerStudio.Services.Inventory;

/// <summary>Records the day a lot was first opened: its life after opening counts from there.</summary>
public sealed record OpenLot : StudioRequest
{
    public Guid LotId { get; set; }

    /// <summary>Null is today.</summary>
    public DateOnly? OpenedOn { get; set; }
}

/// <summary>Puts a lot on another shelf.</summary>
public sealed record MoveLot : StudioRequest
{
    public Guid LotId { get; set; }
    public string? Shelf { get; set; }
}

/// <summary>Sets the mass of a lot's empty container.</summary>
public sealed record SetTare : StudioRequest
{
    public Guid LotId { get; set; }

    /// <summary>Null when it is not known.</summary>
    public long? TareMilligrams { get; set; }
}

public sealed class MoveLotValidator : AbstractValidator<MoveLot>
{
    private const int Longest = 60;

    public MoveLotValidator() => RuleFor(m => m.Shelf).OneLine("The shelf", Longest);
}

public sealed class SetTareValidator : AbstractValidator<SetTare>
{
    public SetTareValidator() => RuleFor(t => t.TareMilligrams).GreaterThanOrEqualTo(0).WithMessage("The tare is zero or more.");
}

public sealed partial class Lots
{
    private static readonly MoveLotValidator MoveShape = new();
    private static readonly SetTareValidator SetTareShape = new();

    public Task<Outcome<Nothing>> OpenAsync(Actor actor, OpenLot request, CancellationToken cancel = default) =>
        store.RunAsync<OpenLot, Nothing>(actor, request, null, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            var on = request.OpenedOn ?? command.Today;
            if (on > command.Today || on < lot.ReceivedOn)
            {
                return new NotAcceptable([new FieldProblem(
                    nameof(OpenLot.OpenedOn), $"{lot.Code} was received on {AmountWords.Day(lot.ReceivedOn)}; the day it was opened lies between that and today.")]);
            }

            if (lot.OpenedOn == on)
            {
                return Nothing.Value;
            }

            LotLog.Add(command, lot, LotEventKind.Opened, lot.OpenedOn is null ? "Opened" : "Opened date mended", null, lot.OpenedOn, on);
            lot.OpenedOn = on;
            command.Record("lot", lot.Id, $"{lot.Code}: opened {AmountWords.Day(on)}", Topics.Lots);
            return Nothing.Value;
        }, cancel: cancel);

    public Task<Outcome<Nothing>> MoveAsync(Actor actor, MoveLot request, CancellationToken cancel = default) =>
        store.RunAsync<MoveLot, Nothing>(actor, request, MoveShape, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            var shelf = string.IsNullOrWhiteSpace(request.Shelf) ? null : request.Shelf.Trim();
            LotLog.Add(command, lot, LotEventKind.Moved, $"Shelf {lot.Shelf ?? "–"} → {shelf ?? "–"}");
            lot.Shelf = shelf;
            command.Record("lot", lot.Id, $"{lot.Code}: on shelf {shelf ?? "–"}", Topics.Lots);
            return Nothing.Value;
        }, cancel: cancel);

    public Task<Outcome<Nothing>> SetTareAsync(Actor actor, SetTare request, CancellationToken cancel = default) =>
        store.RunAsync<SetTare, Nothing>(actor, request, SetTareShape, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            LotLog.Add(command, lot, LotEventKind.Tared, $"Tare {Grams(lot.TareMilligrams)} → {Grams(request.TareMilligrams)}");
            lot.TareMilligrams = request.TareMilligrams;
            command.Record("lot", lot.Id, $"{lot.Code}: tare {Grams(request.TareMilligrams)}", Topics.Lots);
            return Nothing.Value;
        }, cancel: cancel);

    private static string Grams(long? milligrams) =>
        milligrams is { } known ? AmountWords.Amount(known, Core.Quantities.StockUnit.Gram) : "–";
}
