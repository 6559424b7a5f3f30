using FluentValidation;
using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Gives units another status where they stand, or books them out with a reason: retained sample, tester, gift, breakage,
/// thrown away, on hold, released again, counted.
/// </summary>
public sealed record SetAside : StudioRequest
{
    public Guid BatchId { get; set; }
    public Guid PlaceId { get; set; }

    /// <summary>What the units are before it.</summary>
    public UnitStatus From { get; set; } = UnitStatus.Saleable;
    public UnitMoveKind Kind { get; set; } = UnitMoveKind.Tester;
    public int? Count { get; set; }

    /// <summary>What happened, or who got it.</summary>
    public string? Reason { get; set; }
}

public sealed class SetAsideValidator : AbstractValidator<SetAside>
{
    /// <summary>What people may do with units where they stand; the rest belongs to filling, sales, shops and kits.</summary>
    public static readonly IReadOnlyList<UnitMoveKind> Offered =
    [
        UnitMoveKind.Tester, UnitMoveKind.Gift, UnitMoveKind.Breakage, UnitMoveKind.Retain, UnitMoveKind.Discard, UnitMoveKind.Hold,
        UnitMoveKind.Release, UnitMoveKind.Reject, UnitMoveKind.CountedLess, UnitMoveKind.CountedMore,
    ];

    private static readonly UnitMoveKind[] NeedNoReason = [UnitMoveKind.Tester, UnitMoveKind.Retain];

    public SetAsideValidator()
    {
        RuleFor(r => r.Count).NotNull().WithMessage("Say how many.").InclusiveBetween(1, RecordFillValidator.MostUnits).WithMessage("Between 1 and 100,000 units at once.");
        RuleFor(r => r.Kind).Must(Offered.Contains).WithMessage("This is not done here; look at sales, shops or kits.");
        RuleFor(r => r.Reason).NotEmpty().When(r => !NeedNoReason.Contains(r.Kind))
            .WithMessage(r => r.Kind == UnitMoveKind.Gift ? "Say who got it." : "Say what happened; the reason stays with the units.");
        RuleFor(r => r.Reason).OneLine("The reason", 200);
        RuleFor(r => r.From).Must((r, from) => OffersFrom(from).Contains(r.Kind)).When(r => Offered.Contains(r.Kind))
            .WithMessage(r => $"Units that are {GoodsWords.Status(r.From)} are not {GoodsWords.Kind(r.Kind)}.");
    }

    /// <summary>What may be done with units of a status.</summary>
    public static IEnumerable<UnitMoveKind> OffersFrom(UnitStatus from) =>
        Offered.Where(k => UnitRules.For(k).From is var allowed && (allowed.Count == 0 ? from == UnitStatus.Saleable : allowed.Contains(from)));
}

/// <param name="EntryId">What taking it back names.</param>
/// <param name="Left">Units of the batch that are left in the status they were taken from.</param>
public sealed record UnitsSetAside(Guid EntryId, string Code, int Left);

public sealed partial class FinishedGoods
{
    private static readonly SetAsideValidator SetAsideShape = new();

    public Task<Outcome<UnitsSetAside>> SetAsideAsync(Actor actor, SetAside request, CancellationToken cancel = default) =>
        store.RunAsync<SetAside, UnitsSetAside>(actor, request, SetAsideShape, async command =>
        {
            var locked = await UnitLedger.LockAsync(command, [request.BatchId], cancel);
            var place = await command.Db.Places.AsNoTracking().SingleOrDefaultAsync(p => p.Id == request.PlaceId, cancel);
            if (!locked.Batches.TryGetValue(request.BatchId, out var batch) || place is null)
            {
                return new NotFound("This batch or place");
            }

            var rule = UnitRules.For(request.Kind);
            var move = new UnitMove(
                batch.Id, request.Kind, request.Count!.Value, rule.From.Count == 0 ? null : request.From, place.Kind == PlaceKind.Consignment ? place.Id : null);
            if (rule.WhyNot(move) is { } why)
            {
                return new Because(why);
            }

            var there = locked.At(batch.Id, place.Id, request.From);
            if (rule.From.Count > 0 && there < request.Count)
            {
                return new UnitsShort($"{batch.Code} at {place.Name}, {GoodsWords.Status(request.From)}", request.Count!.Value, there);
            }

            var entry = new UnitEntry(Guid.CreateVersion7(), string.IsNullOrWhiteSpace(request.Reason) ? null : request.Reason.Trim());
            UnitLedger.Post(command, locked, entry, move, place.Id);
            command.Record(
                "batch", batch.Id, $"{request.Count} of {batch.Code} at {place.Name}: {GoodsWords.Kind(request.Kind)}{(entry.Reason is null ? "" : $", {entry.Reason}")}", Topics.Finished);
            return new UnitsSetAside(entry.Id, batch.Code, locked.At(batch.Id, place.Id, request.From));
        }, cancel: cancel);
}
