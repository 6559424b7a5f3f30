using FluentValidation;
using MakerStudio.Core.Stock;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Takes a weighing back: what it used returns to its lot by a reversing movement, and the line is open again.
/// Targets that a correction enlarged stay as they are.
/// </summary>
public sealed record ReverseWeighing : StudioRequest
{
    public Guid BatchId { get; set; }
    public Guid WeighingId { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class ReverseWeighingValidator : AbstractValidator<ReverseWeighing>
{
    public ReverseWeighingValidator() =>
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why, for the record.").MaximumLength(400).WithMessage("The reason has room for 400 characters.");
}

public sealed partial class WeighSheets
{
    private static readonly ReverseWeighingValidator ReverseWeighingShape = new();

    public Task<Outcome<Recorded>> ReverseAsync(Actor actor, ReverseWeighing request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, ReverseWeighingShape, async command =>
        {
            var (sheet, why) = await OpenSheet.OfAsync(command, request.BatchId);
            if (sheet is null)
            {
                return why!;
            }

            if (sheet.Weighings.Find(w => w.Id == request.WeighingId) is not { } weighing || sheet.Line(weighing.BatchLineId) is not { } line)
            {
                return new NotFound("This weighing");
            }

            // A receipt that followed may have put the use on a lot later: the movements tell, not the sheet.
            var uses = await command.Db.Movements
                .Where(m => m.WeighingId == weighing.Id && m.Change < 0 && !command.Db.Movements.Any(r => r.ReversesId == m.Id))
                .ToListAsync(cancel);
            var lots = await Ledger.LockAsync(command, uses.Select(m => m.LotId));
            foreach (var use in uses.OrderBy(m => m.LotId))
            {
                Ledger.Post(command, lots[use.LotId], MovementKind.Reversal, -use.Change, m =>
                    (m.BatchId, m.WeighingId, m.ReversesId, m.UnitCost, m.Note) = (use.BatchId, use.WeighingId, use.Id, use.UnitCost, request.Reason.Trim()));
            }

            command.Db.PendingReceipts.RemoveRange(
                await command.Db.PendingReceipts.Where(p => p.WeighingId == weighing.Id && p.MatchedAt == null).ToListAsync(cancel));
            (weighing.ReversedAt, weighing.ReversedById, weighing.ReversedReason) = (command.Now, command.PersonId, request.Reason.Trim());
            sheet.Weighings.Remove(weighing);
            line.DoneAt = null;
            sheet.Settle([line]);
            sheet.Tell(
                $"Reversed {AmountWords.Grams(weighing.NetMilligrams)} of {line.MaterialName} in {sheet.Batch.Code}: {weighing.ReversedReason}", lots.Values.FirstOrDefault());
            return (Outcome<Recorded>)sheet.Answer(weighing, line);
        }, cancel: cancel);
}
