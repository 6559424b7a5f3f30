using FluentValidation;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>A smaller batch of the same formula, as long as no line already holds more than its new target.</summary>
public sealed record MakeSmaller : StudioRequest
{
    public Guid BatchId { get; set; }
    public long TotalMilligrams { get; set; }
}

public sealed class MakeSmallerValidator : AbstractValidator<MakeSmaller>
{
    public MakeSmallerValidator() =>
        RuleFor(r => r.TotalMilligrams).InclusiveBetween(1, BatchSizes.LargestMilligrams).WithMessage("Give the new total, above zero.");
}

/// <summary>A line already holds more than a smaller batch would take.</summary>
public sealed record AlreadyIn(string Code, string MaterialName, long RecordedMilligrams, long NewTargetMilligrams) : WeighRefusal
{
    public override string Happened =>
        $"{Code} cannot be that small: {AmountWords.Grams(RecordedMilligrams)} of {MaterialName} is in, and it would take {AmountWords.Grams(NewTargetMilligrams)}.";

    public override string ToDo => "Choose a larger total, or another lot for the line that is short.";
}

public sealed partial class WeighSheets
{
    private static readonly MakeSmallerValidator MakeSmallerShape = new();

    public Task<Outcome<Recorded>> MakeSmallerAsync(Actor actor, MakeSmaller request, CancellationToken cancel = default) =>
        store.RunAsync(actor, request, MakeSmallerShape, async command =>
        {
            var (sheet, why) = await OpenSheet.OfAsync(command, request.BatchId);
            if (sheet is null)
            {
                return why!;
            }

            var batch = sheet.Batch;
            if (request.TotalMilligrams >= batch.TargetMilligrams)
            {
                return new Because($"{batch.Code} is to become {AmountWords.Grams(batch.TargetMilligrams)} now.", "Give a smaller total.");
            }

            if (Batches.Resize(batch, request.TotalMilligrams, isPlan: false) is { } refusal)
            {
                return refusal;
            }

            if (sheet.Lines.FirstOrDefault(l => sheet.Recorded(l) > 0 && sheet.Verdict(l, sheet.Recorded(l)) is Verdict.Over) is { } tooMuch)
            {
                return new AlreadyIn(batch.Code, tooMuch.MaterialName, sheet.Recorded(tooMuch), tooMuch.TargetMilligrams);
            }

            if (batch is { FillMilligrams: { } fill, PlannedUnits: not null })
            {
                batch.PlannedUnits = Math.Max(1, (int)(batch.TargetMilligrams * (1 - (batch.ExpectedLossPercent / 100m)) / fill));
            }

            sheet.Settle(sheet.Lines);
            sheet.Tell($"Made {batch.Code} smaller: {AmountWords.Grams(batch.TargetMilligrams)}");
            return (Outcome<Recorded>)sheet.Answer(null, sheet.NextOpen ?? sheet.Lines[^1]);
        }, cancel: cancel);

    /// <summary>
    /// The largest total below the present one for which every line's rest is on the shelf and no line holds too much
    /// already; null when there is none.
    /// </summary>
    private static long? SmallerTotal(OpenSheet sheet, Dictionary<Guid, long> usable)
    {
        var fractions = sheet.Lines.Select(l => l.Fraction).ToArray();
        // A material on several lines is shared by their fractions, so that its lines never ask for it twice.
        var have = sheet.Lines.Select(l =>
        {
            var share = sheet.Lines.Where(o => o.MaterialId == l.MaterialId).Sum(o => o.Fraction);
            return (Mass?)Mass.FromMilligrams(sheet.Recorded(l) + (l.DoneAt is null ? (long)(usable.GetValueOrDefault(l.MaterialId) * (l.Fraction / share)) : 0));
        }).ToArray();
        for (var i = 0; i < have.Length; i++)
        {
            // A finished line sets no limit of its own: its tolerance does, below.
            have[i] = sheet.Lines[i].DoneAt is null ? have[i] : null;
        }

        if (Scaling.LargestFrom(fractions, have) is not { } largest || largest.Total <= Mass.Zero || largest.Total.Milligrams >= sheet.Batch.TargetMilligrams)
        {
            return null;
        }

        var shares = Scaling.Split(largest.Total, fractions);
        var holds = sheet.Lines.Select((l, i) => (Target: shares[i], Recorded: Mass.FromMilligrams(sheet.Recorded(l))));
        var fits = holds.All(l => l.Target > Mass.Zero && (l.Recorded.IsZero || l.Recorded - l.Target <= WeighTolerance.Of(
            l.Target, Mass.FromMilligrams(sheet.Batch.ReadabilityMilligrams), sheet.Batch.TolerancePercent, sheet.Batch.ToleranceDivisions)));
        return fits ? largest.Total.Milligrams : null;
    }
}
