using FluentValidation;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>When the scale was read, if the lot moved while the count was open.</summary>
public enum CountTaken
{
    /// <summary>Not said: a lot that moved meanwhile is refused.</summary>
    NotSaid,

    /// <summary>Before the entries that came since: compared with the book as it stood when the count was opened.</summary>
    BeforeTheyMoved,

    /// <summary>After them: compared with the book as it stands.</summary>
    AfterTheyMoved,
}

/// <summary>A count of one lot, stamped with the moment it was opened. The difference is posted as an adjustment.</summary>
public sealed record CountLot : StudioRequest
{
    public Guid LotId { get; set; }

    /// <summary>Of container and content, milligrams; for a lot stocked by mass.</summary>
    public long? GrossMilligrams { get; set; }

    /// <summary>Of the empty container; null takes the lot's own.</summary>
    public long? TareMilligrams { get; set; }

    /// <summary>For a lot that is counted in pieces.</summary>
    public long? Pieces { get; set; }

    /// <summary>The newest entry of the lot when the count was opened, see <see cref="LotRow.LastMovement"/>.</summary>
    public long AsOfMovement { get; set; }
    public CountTaken Taken { get; set; }
    public string? Note { get; set; }
}

public sealed class CountLotValidator : AbstractValidator<CountLot>
{
    private const long Most = 1_000_000_000_000_000;

    public CountLotValidator()
    {
        RuleFor(r => r).Must(r => r.GrossMilligrams is null != r.Pieces is null).WithName("Gross").WithMessage("Give the gross weight, or the pieces counted.");
        RuleFor(r => r.GrossMilligrams).InclusiveBetween(0, Most).WithMessage("The gross weight is zero or more.");
        RuleFor(r => r.TareMilligrams).InclusiveBetween(0, Most).WithMessage("The tare is zero or more.");
        RuleFor(r => r.Pieces).InclusiveBetween(0, Most).WithMessage("Pieces are zero or more.");
        RuleFor(r => r.Note).MaximumLength(200).WithMessage("Say it in at most 200 characters.");
    }
}

/// <summary>Entries came to the lot while the count was open.</summary>
/// <param name="Moves">What happened since, one sentence each.</param>
/// <param name="BookThen">On hand when the count was opened.</param>
/// <param name="BookNow">On hand now.</param>
public sealed record LotMovedSince(string Code, IReadOnlyList<string> Moves, long BookThen, long BookNow, StockUnit Unit) : Refusal
{
    public override string Happened =>
        $"{Code} moved since you opened this count: {string.Join("; ", Moves)}. By the book it held {AmountWords.Amount(BookThen, Unit)} then and {AmountWords.Amount(BookNow, Unit)} now.";
    public override string Kept => "Nothing was posted, and what you typed is kept.";
    public override string ToDo => "Say whether you read the scale before or after that, or read it again.";
}

/// <param name="Counted">Milligrams or pieces.</param>
/// <param name="Book">What the ledger said at the moment the count is compared with.</param>
/// <param name="Variance">Counted less book.</param>
/// <param name="VarianceValue">At the lot's unit cost, not rounded.</param>
/// <param name="OnHand">By the ledger, after it.</param>
/// <param name="MovementId">The adjustment it left; null when the count agreed.</param>
public sealed record LotCounted(
    string Code, StockUnit Unit, long Counted, long Book, long Variance, decimal VarianceValue, long OnHand, long? MovementId);

public sealed partial class Lots
{
    private static readonly CountLotValidator CountShape = new();

    public Task<Outcome<LotCounted>> CountAsync(Actor actor, CountLot request, CancellationToken cancel = default) =>
        store.RunAsync<CountLot, LotCounted>(actor, request, CountShape, async command =>
        {
            if (await LotLog.LockAsync(command, request.LotId) is not { } lot)
            {
                return new NotFound("This lot");
            }

            if (WhyNotCountable(lot, request) is { } refusal)
            {
                return refusal;
            }

            var since = await command.Db.Movements.AsNoTracking()
                .Where(m => m.LotId == lot.Id && m.Id > request.AsOfMovement).OrderBy(m => m.Id).ToListAsync(cancel);
            var now = lot.Balance!.OnHand;
            var then = now - since.Sum(m => m.Change);
            if (since.Count > 0 && request.Taken == CountTaken.NotSaid)
            {
                return new LotMovedSince(lot.Code, await SentencesAsync(command, since, lot, cancel), then, now, lot.Material!.StockedIn);
            }

            var book = request.Taken == CountTaken.BeforeTheyMoved ? then : now;
            return await PostCountAsync(command, lot, request, book);
        }, cancel: cancel);

    private static async Task<Outcome<LotCounted>> PostCountAsync(Command command, Lot lot, CountLot request, long book)
    {
        var unit = lot.Material!.StockedIn;
        var counted = request.Pieces ?? (request.GrossMilligrams!.Value - TareOf(lot, request));
        var variance = counted - book;
        if (lot.Balance!.OnHand + variance < 0)
        {
            return new HoldsLess(lot.Code, lot.Balance.OnHand, -variance, unit);
        }

        var how = request.Pieces is not null
            ? $"counted {AmountWords.Amount(counted, unit)}"
            : $"gross {Grams(request.GrossMilligrams)} − tare {Grams(TareOf(lot, request))} = {AmountWords.Amount(counted, unit)}";
        var note = $"{how}, book {AmountWords.Amount(book, unit)}{(string.IsNullOrWhiteSpace(request.Note) ? "" : $"; {request.Note.Trim()}")}";
        var movement = variance == 0 ? null : Ledger.Post(command, lot, MovementKind.Adjustment, variance, m =>
        {
            m.Reason = AdjustmentReason.Count;
            m.Note = note;
        });
        if (movement is null)
        {
            LotLog.Add(command, lot, LotEventKind.Counted, "Counted, agrees", note);
        }

        if (request.TareMilligrams is { } tare)
        {
            lot.TareMilligrams = tare;
        }

        command.Record("lot", lot.Id, $"{lot.Code}: counted, variance {AmountWords.Change(variance, unit)}", Topics.Lots);
        await command.Db.SaveChangesAsync();
        return new LotCounted(lot.Code, unit, counted, book, variance, ValueOf(variance, lot), lot.Balance.OnHand, movement?.Id);
    }

    private static long TareOf(Lot lot, CountLot request) => request.TareMilligrams ?? lot.TareMilligrams ?? 0;

    private static Refusal? WhyNotCountable(Lot lot, CountLot request)
    {
        if (lot.Material!.StockedIn == StockUnit.Each)
        {
            return request.Pieces is null ? new Because($"{lot.Code} is counted in pieces.", "Type how many there are.") : null;
        }

        if (request.GrossMilligrams is not { } gross)
        {
            return new Because($"{lot.Code} is stocked by weight.", "Weigh the container and type its gross weight.");
        }

        if (request.TareMilligrams is null && lot.TareMilligrams is null)
        {
            return new NotAcceptable([new FieldProblem(
                nameof(CountLot.TareMilligrams), $"The tare of {lot.Code} is not known yet. Weigh an empty container like it and type its weight, or 0 when you weighed the content alone.")]);
        }

        var tare = TareOf(lot, request);
        return gross >= tare ? null : new NotAcceptable([new FieldProblem(
            nameof(CountLot.GrossMilligrams), $"The gross weight {Grams(gross)} is below the tare {Grams(tare)} of {lot.Code}.")]);
    }

    private static async Task<IReadOnlyList<string>> SentencesAsync(Command command, List<Movement> since, Lot lot, CancellationToken cancel)
    {
        var ids = since.Select(m => m.PersonId).Distinct().ToList();
        var names = await command.Db.Users.Where(p => ids.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.DisplayName, cancel);
        var zone = command.Zone;
        return [.. since.Select(m =>
            $"{names.GetValueOrDefault(m.PersonId, "somebody")}, {Core.Curing.StudioTime.Local(m.At, zone):HH:mm}, {LotWords.Kind(m.Kind).ToLowerInvariant()} {AmountWords.Change(m.Change, lot.Material!.StockedIn)}")];
    }
}
