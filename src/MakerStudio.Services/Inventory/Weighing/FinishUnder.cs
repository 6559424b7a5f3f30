using FluentValidation;
using MakerStudio.Core.Bench;

namespace MakerStudio.Services.Inventory;

/// <summary>Leaves a line under its tolerance as it is; the reason stands on the batch.</summary>
public sealed record FinishUnder : StudioRequest
{
    public Guid BatchId { get; set; }
    public Guid LineId { get; set; }
    public string Reason { get; set; } = "";
}

public sealed class FinishUnderValidator : AbstractValidator<FinishUnder>
{
    public FinishUnderValidator() =>
        RuleFor(r => r.Reason).NotEmpty().WithMessage("Say why, for the record.").MaximumLength(400).WithMessage("The reason has room for 400 characters.");
}

public sealed partial class WeighSheets
{
    private static readonly FinishUnderValidator FinishUnderShape = new();

    public Task<Outcome<Recorded>> FinishUnderAsync(Actor actor, FinishUnder request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, FinishUnderShape, async command =>
        {
            var (sheet, why) = await OpenSheet.OfAsync(command, request.BatchId);
            if (sheet is null)
            {
                return why!;
            }

            if (sheet.Line(request.LineId) is not { } line)
            {
                return new NotFound("This line of the batch");
            }

            var recorded = sheet.Recorded(line);
            if (line.DoneAt is not null)
            {
                return new AlreadyConfirmed(line.MaterialName, recorded);
            }

            if (recorded == 0 || sheet.Verdict(line, recorded) is not Verdict.Under under)
            {
                return new Because($"Nothing is recorded on {line.MaterialName} yet.", "Record what is in, then finish the line under its target.");
            }

            line.DoneAt = command.Now;
            var what = $"{line.MaterialName} {AmountWords.Grams(recorded)} on a target of {AmountWords.Grams(line.TargetMilligrams)}, {AmountWords.Grams(-under.By.Milligrams)} under";
            sheet.Deviate(line, DeviationChoice.Accepted, what, request.Reason);
            sheet.Tell($"Finished {what}, in {sheet.Batch.Code}");
            return (Outcome<Recorded>)sheet.Answer(null, line);
        }, cancel: cancel);
}
