using FluentValidation;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

public enum OverChoice { Ask, Accept, Correct }

/// <summary>
/// Records one reading on one line from one lot. It is saved and the lot used up at once. Questions come back as
/// refusals; the same request, sent again with an answer set, is then recorded.
/// </summary>
public sealed record RecordWeighing : StudioRequest
{
    public Guid BatchId { get; set; }
    public Guid LineId { get; set; }

    /// <summary>Null only with <see cref="ReceiptToFollow"/>: no lot of the material is here.</summary>
    public Guid? LotId { get; set; }

    /// <summary>Net milligrams. Left at 0 when gross and tare are given.</summary>
    public long NetMilligrams { get; set; }
    public long? GrossMilligrams { get; set; }
    public long? TareMilligrams { get; set; }

    /// <summary>Answers the question about the magnitude: it is what was typed.</summary>
    public bool AsTyped { get; set; }

    /// <summary>Answers the question about the order of addition; needs a reason.</summary>
    public bool OutOfOrder { get; set; }

    /// <summary>Answers the question about an overshoot; accepting needs a reason.</summary>
    public OverChoice Over { get; set; }

    /// <summary>Takes what the lot lacks as not yet received, at an estimated cost; needs a reason.</summary>
    public bool ReceiptToFollow { get; set; }

    /// <summary>Estimate for one gram where no delivery tells the last cost.</summary>
    public decimal? EstimatedUnitCost { get; set; }
    public string? Reason { get; set; }

    internal long Net => GrossMilligrams is { } gross ? gross - (TareMilligrams ?? 0) : NetMilligrams;
}

public sealed class RecordWeighingValidator : AbstractValidator<RecordWeighing>
{
    public RecordWeighingValidator()
    {
        RuleFor(r => r.Net).GreaterThan(0).WithMessage("The reading must be above zero.").OverridePropertyName(nameof(RecordWeighing.NetMilligrams));
        RuleFor(r => r.Net).LessThanOrEqualTo(BatchSizes.LargestMilligrams).WithMessage("The reading is larger than any batch.")
            .OverridePropertyName(nameof(RecordWeighing.NetMilligrams));
        RuleFor(r => r.TareMilligrams).GreaterThanOrEqualTo(0).When(r => r.TareMilligrams is not null).WithMessage("The tare cannot be below zero.");
        RuleFor(r => r.LotId).NotNull().When(r => !r.ReceiptToFollow).WithMessage("Name the lot you weigh from.");
        RuleFor(r => r.Reason).NotEmpty().When(r => r.Over == OverChoice.Accept || r.ReceiptToFollow || r.OutOfOrder)
            .WithMessage("Say why, for the record.");
        RuleFor(r => r.Reason).MaximumLength(400).WithMessage("The reason has room for 400 characters.");
        RuleFor(r => r.EstimatedUnitCost).InclusiveBetween(0, 1_000_000).When(r => r.EstimatedUnitCost is not null)
            .WithMessage("The estimated cost of a gram is from 0 to 1,000,000.");
    }
}

public sealed partial class WeighSheets
{
    private static readonly RecordWeighingValidator RecordWeighingShape = new();

    public Task<Outcome<Recorded>> RecordAsync(Actor actor, RecordWeighing request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, RecordWeighingShape, async command =>
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

            var lots = await Ledger.LockAsync(command, request.LotId is { } id ? [id] : []);
            var lot = lots.Values.SingleOrDefault();
            if (request.LotId is not null && lot is null)
            {
                return new NotFound("This lot");
            }

            var reading = new Reading(command, sheet, line, lot, request);
            return (WhyNotLine(reading) ?? WhyNotLot(reading) ?? WhyNotMagnitude(reading)
                ?? await WhyNotStockAsync(reading, cancel) ?? await WhyNotOverAsync(reading, cancel)) is { } refusal
                ? refusal
                : await PostAsync(reading, cancel);
        }, cancel: cancel);

    /// <summary>What a command works on while one reading is judged.</summary>
    private sealed record Reading(Command Command, OpenSheet Sheet, BatchLine Line, Lot? Lot, RecordWeighing Request)
    {
        public long Net => Request.Net;
        public long Before { get; } = Sheet.Recorded(Line);
        public long After => Before + Net;
        public long Remaining => Line.TargetMilligrams - Before;
        public long OnHand => Lot?.Balance?.OnHand ?? 0;
    }

    private static Refusal? WhyNotLine(Reading r)
    {
        if (r.Line.DoneAt is not null)
        {
            return new AlreadyConfirmed(r.Line.MaterialName, r.Before);
        }

        return r.Sheet.NextOpen is { } first && first.Id != r.Line.Id && !r.Request.OutOfOrder
            ? new OutOfOrder(r.Line.MaterialName, first.MaterialName, r.Net)
            : null;
    }

    private static Refusal? WhyNotLot(Reading r) => r.Lot is null ? null : WhyNotLot(r.Lot, r.Line, r.Command.Today);

    /// <summary>An empty lot is not refused here: the shortage says more.</summary>
    private static Refusal? WhyNotLot(Lot lot, BatchLine line, DateOnly today)
    {
        if (lot.MaterialId != line.MaterialId)
        {
            return new WrongMaterial(lot.Code, lot.Material!.Name, line.MaterialName);
        }

        return LotChoice.WhyNot(Shelf.View(lot), today) switch
        {
            LotRefusal.Rejected => new LotRejected(lot.Code),
            LotRefusal.NotReleased held => new LotNotReleased(lot.Code, held.Status),
            LotRefusal.Expired => Shelf.ExpiryOf(lot) is { } expiry
                ? new LotExpired(lot.Code, expiry.On, expiry.Reason)
                : null,
            _ => null,
        };
    }

    /// <summary>Emptying a lot explains a small reading; otherwise a power of ten off the target is asked about.</summary>
    private static Refusal? WhyNotMagnitude(Reading r)
    {
        var net = Mass.FromMilligrams(r.Net);
        if (r.Request.AsTyped || r.Remaining <= 0 || Magnitude.Question(Mass.FromMilligrams(r.Remaining), net.Grams) is not { } question)
        {
            return null;
        }

        var emptiesLot = r.Lot is not null && question.IsBelow && r.OnHand < r.Remaining
            && Math.Abs(r.OnHand - r.Net) <= r.Sheet.Tolerance(r.Line).Milligrams;
        return emptiesLot
            ? null
            : new WrongMagnitude(question, r.Net, r.Remaining, AmountUnits.IsMass(question.SuggestedUnit) ? Milligrams(question) : r.Net);
    }

    private static long Milligrams(MagnitudeQuestion question) =>
        AmountConversion.ToStock(question.SuggestedValue, question.SuggestedUnit, StockUnit.Gram, null) is ConversionResult.Converted converted
            ? converted.Amount.Units
            : throw new InvalidOperationException("A mass always converts to grams.");

    private static async Task<Refusal?> WhyNotStockAsync(Reading r, CancellationToken cancel)
    {
        if (r.Net <= r.OnHand || r.Request.ReceiptToFollow)
        {
            return null;
        }

        var materials = r.Sheet.Lines.Select(l => l.MaterialId).Distinct().ToArray();
        var shelf = await Shelf.LotsOfAsync(r.Command.Db, materials, cancel);
        var others = Shelf.Usable(shelf.Where(s => s.MaterialId == r.Line.MaterialId && s.Lot.LotId != r.Lot?.Id).Select(s => s.Lot), r.Command.Today)
            .Select(l => new OtherLot(l.LotId, l.Code, l.OnHand.Units)).ToList();
        var smaller = SmallerTotal(r.Sheet, Shelf.UsableByMaterial(shelf, r.Command.Today));
        return new LotShort(r.Lot?.Code ?? "", r.Line.MaterialName, r.Net, r.OnHand, others, smaller);
    }

    private static async Task<Refusal?> WhyNotOverAsync(Reading r, CancellationToken cancel)
    {
        if (r.Request.Over != OverChoice.Ask || r.Sheet.Verdict(r.Line, r.After) is not Verdict.Over over)
        {
            return null;
        }

        var plan = PlanCorrection(r);
        var usable = Shelf.UsableByMaterial(await Shelf.LotsOfAsync(r.Command.Db, [.. r.Sheet.Lines.Select(l => l.MaterialId)], cancel), r.Command.Today);
        var steps = plan.Lines.Select(c => (Line: r.Sheet.Line(c.LineId)!, Corrected: c)).Where(s => s.Line.Id != r.Line.Id).ToList();
        var shortOf = steps
            .GroupBy(s => s.Line.MaterialId)
            .Select(g => (g.First().Line.MaterialName, By: g.Sum(s => s.Corrected.NewTarget.Milligrams - r.Sheet.Recorded(s.Line)) - usable.GetValueOrDefault(g.Key)))
            .Where(s => s.By > 0).ToList();
        return new OverTolerance(
            r.Line.MaterialName, r.Net, r.After, r.Line.TargetMilligrams, over.Fraction, r.Line.Fraction, plan.AcceptedFraction, plan.Factor,
            [.. steps.Where(s => s.Corrected.TopUp is { } up && up > Mass.Zero).Select(s => new CorrectionStep(s.Line.Id, s.Line.MaterialName, s.Corrected.TopUp!.Value.Milligrams))],
            [.. steps.Where(s => s.Corrected.TopUp is null).Select(s => new CorrectionStep(s.Line.Id, s.Line.MaterialName, s.Corrected.NewTarget.Milligrams))],
            plan.NewTotal.Milligrams, shortOf.Count == 0,
            shortOf.Count == 0 ? "Stock allows it." : string.Join(" ", shortOf.Select(s => $"{s.MaterialName} would be short {AmountWords.Grams(s.By)}.")));
    }

    /// <summary>Lines not begun wait; a line begun and not done counts with what is in it.</summary>
    private static CorrectionPlan PlanCorrection(Reading r) => Correction.ScaleRest(
        [.. r.Sheet.Lines.Select(l => new WeighLine(
            l.Id, Mass.FromMilligrams(l.TargetMilligrams), l.DoneAt is not null ? Mass.FromMilligrams(r.Sheet.Recorded(l)) : null))],
        r.Line.Id, Mass.FromMilligrams(r.After));

    private static async Task<Outcome<Recorded>> PostAsync(Reading r, CancellationToken cancel)
    {
        var isOver = r.Sheet.Verdict(r.Line, r.After) is Verdict.Over;
        var plan = isOver && r.Request.Over == OverChoice.Correct ? PlanCorrection(r) : null;
        if (r.Request.OutOfOrder && r.Sheet.NextOpen is { } first && first.Id != r.Line.Id)
        {
            r.Sheet.Deviate(r.Line, DeviationChoice.Accepted, $"{r.Line.MaterialName} added before {first.MaterialName}", r.Request.Reason);
        }

        var fromLot = Math.Min(r.Net, r.OnHand);
        Schema.Weighing? weighing = fromLot > 0 ? r.Sheet.Weigh(r.Line, r.Lot, fromLot, r.Request.TareMilligrams, r.Lot!.UnitCost) : null;
        if (r.Net > fromLot)
        {
            if (await EstimateAsync(r, cancel) is not { } cost)
            {
                return new Because(
                    $"No delivery of {r.Line.MaterialName} has been posted yet, so its cost is not known.", "Give an estimate of what one gram costs.");
            }

            weighing = r.Sheet.Weigh(r.Line, null, r.Net - fromLot, fromLot > 0 ? null : r.Request.TareMilligrams, cost);
            r.Command.Db.PendingReceipts.Add(new PendingReceipt
            {
                MaterialId = r.Line.MaterialId, BatchId = r.Sheet.Batch.Id, WeighingId = weighing.Id, Milligrams = r.Net - fromLot,
                EstimatedUnitCost = cost, Reason = r.Request.Reason!.Trim(), PersonId = r.Command.PersonId, At = r.Command.Now,
            });
        }

        if (plan is not null)
        {
            ApplyCorrection(r, plan);
        }
        else
        {
            r.Sheet.Settle([r.Line]);
            if (isOver)
            {
                r.Line.DoneAt = r.Command.Now;
                r.Sheet.Deviate(r.Line, DeviationChoice.Accepted, OverWords(r), r.Request.Reason);
            }
        }

        r.Sheet.Tell($"Weighed {AmountWords.Grams(r.Net)} of {r.Line.MaterialName} from {r.Lot?.Code ?? "a delivery to follow"} into {r.Sheet.Batch.Code}", r.Lot);
        return r.Sheet.Answer(weighing, r.Line);
    }

    private static void ApplyCorrection(Reading r, CorrectionPlan plan)
    {
        foreach (var corrected in plan.Lines)
        {
            r.Sheet.Line(corrected.LineId)!.TargetMilligrams = corrected.NewTarget.Milligrams;
        }

        r.Sheet.Batch.TargetMilligrams = plan.NewTotal.Milligrams;
        r.Sheet.Settle(r.Sheet.Lines);
        r.Sheet.Deviate(r.Line, DeviationChoice.Corrected, $"{OverWords(r)}; batch scaled up to {AmountWords.Grams(plan.NewTotal.Milligrams)}", r.Request.Reason, plan.Factor);
    }

    private static string OverWords(Reading r) => $"{r.Line.MaterialName} {AmountWords.Grams(r.After)} on a target of {AmountWords.Grams(r.Remaining + r.Before)}";

    /// <summary>The last landed cost of one gram; the person's estimate where there is none.</summary>
    private static async Task<decimal?> EstimateAsync(Reading r, CancellationToken cancel) =>
        await r.Command.Db.Lots.Where(l => l.MaterialId == r.Line.MaterialId && l.MadeByBatchId == null)
            .OrderByDescending(l => l.ReceivedOn).ThenByDescending(l => l.Id)
            .Select(l => (decimal?)l.UnitCost).FirstOrDefaultAsync(cancel) ?? r.Request.EstimatedUnitCost;
}
