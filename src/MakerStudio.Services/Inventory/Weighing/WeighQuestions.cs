using System.Globalization;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Stock;

namespace MakerStudio.Services.Inventory;

/// <summary>
/// Why a reading was not recorded. With answers it is a question: the same reading, sent again with the answer, is
/// recorded. The reading itself stays on the sheet.
/// </summary>
public abstract record WeighRefusal : Refusal
{
    public override string Kept => "Nothing is recorded yet; your reading and the weighings before it are kept.";

    /// <summary>The possible answers, the most careful first.</summary>
    public virtual IReadOnlyList<WeighAnswer> Answers => [];
}

/// <summary>One answer to a question at the bench.</summary>
/// <param name="Key">One of <see cref="AnswerKeys"/>.</param>
/// <param name="Milligrams">The net mass, or the new total of the batch, this answer stands for.</param>
/// <param name="LotId">The lot this answer switches to.</param>
public sealed record WeighAnswer(string Key, string Title, string Text, bool NeedsReason = false, long? Milligrams = null, Guid? LotId = null);

/// <summary>Words the sheet sends back as answers.</summary>
public static class AnswerKeys
{
    /// <summary>Record the suggested mass instead of what was typed.</summary>
    public const string Suggested = "suggested";

    /// <summary>Record what was typed, although it looks wrong.</summary>
    public const string AsTyped = "as-typed";

    public const string Correct = "correct";
    public const string Accept = "accept";
    public const string OtherLot = "other-lot";
    public const string Smaller = "smaller";
    public const string ReceiptToFollow = "receipt-to-follow";
    public const string OutOfOrder = "out-of-order";
    public const string TakeOver = "take-over";
}

/// <summary>The typed mass lies a power of ten from its target.</summary>
/// <param name="SuggestedMilligrams">What was perhaps meant.</param>
public sealed record WrongMagnitude(MagnitudeQuestion Question, long TypedMilligrams, long TargetMilligrams, long SuggestedMilligrams) : WeighRefusal
{
    public override string Happened => Question.Sentence(CultureInfo.CurrentCulture);

    public override string Kept => $"Typed: {AmountWords.Grams(TypedMilligrams)}; target: {AmountWords.Grams(TargetMilligrams)}. Nothing is recorded until you answer.";

    public override IReadOnlyList<WeighAnswer> Answers =>
    [
        new(AnswerKeys.Suggested, $"Record {AmountWords.Grams(SuggestedMilligrams)}", "", Milligrams: SuggestedMilligrams),
        new(AnswerKeys.AsTyped, $"It is {AmountWords.Grams(TypedMilligrams)}", "Records it exactly as typed."),
    ];
}

/// <summary>The line would be over its tolerance.</summary>
/// <param name="AcceptedFraction">The line's share of the batch if it is accepted and the rest is on target.</param>
/// <param name="TopUps">What a correction adds to lines already weighed.</param>
/// <param name="NewTargets">The new targets of the lines still open.</param>
/// <param name="StockNote">Whether the usable lots hold what a correction takes.</param>
public sealed record OverTolerance(
    string MaterialName, long ReadingMilligrams, long LineMilligrams, long TargetMilligrams, decimal OverFraction, decimal PlannedFraction, decimal AcceptedFraction,
    decimal Factor, IReadOnlyList<CorrectionStep> TopUps, IReadOnlyList<CorrectionStep> NewTargets, long NewTotalMilligrams, bool StockAllows, string StockNote)
    : WeighRefusal
{
    public override string Happened =>
        $"{MaterialName} is {AmountWords.Grams(LineMilligrams - TargetMilligrams)} over, +{AmountWords.Percent(OverFraction, 1)}.";

    public override string ToDo => "Correct by scaling up, or accept it with a reason.";

    public override IReadOnlyList<WeighAnswer> Answers =>
    [
        new(AnswerKeys.Correct, $"Correct by scaling up × {Factor.ToString("0.00##", CultureInfo.CurrentCulture)}", CorrectText, Milligrams: ReadingMilligrams),
        new(AnswerKeys.Accept, $"Accept {AmountWords.Grams(LineMilligrams)}",
            $"{MaterialName} becomes {AmountWords.Percent(AcceptedFraction)} instead of {AmountWords.Percent(PlannedFraction)} if the rest is on target. Needs a reason.",
            NeedsReason: true, Milligrams: ReadingMilligrams),
    ];

    private string CorrectText
    {
        get
        {
            var add = string.Join(" and ", TopUps.Select(s => $"{AmountWords.Grams(s.Milligrams)} {s.MaterialName}"));
            var rest = string.Join(", ", NewTargets.Select(s => $"{s.MaterialName} becomes {AmountWords.Grams(s.Milligrams)}"));
            var steps = (add.Length, rest.Length) switch
            {
                (0, 0) => "",
                (0, _) => $"{rest}. ",
                (_, 0) => $"Add {add}. ",
                _ => $"Add {add}, then {rest}. ",
            };
            return $"{steps}Total {AmountWords.Grams(NewTotalMilligrams)}, formula exact. {StockNote}";
        }
    }
}

/// <summary>A line in a correction: what is added to it, or what its target becomes.</summary>
public sealed record CorrectionStep(Guid LineId, string MaterialName, long Milligrams);

/// <summary>The lot holds less than the reading.</summary>
/// <param name="OtherLots">Lots of the same material that may be used, in the order to use them.</param>
/// <param name="SmallerTotal">The largest batch that every line still allows, or null when it cannot be made smaller.</param>
public sealed record LotShort(
    string LotCode, string MaterialName, long ReadingMilligrams, long OnHandMilligrams, IReadOnlyList<OtherLot> OtherLots, long? SmallerTotal) : WeighRefusal
{
    public long ShortBy => ReadingMilligrams - OnHandMilligrams;

    public override string Happened => LotCode.Length == 0
        ? $"No lot of {MaterialName} is named for {AmountWords.Grams(ReadingMilligrams)}."
        : $"{LotCode} is short {AmountWords.Grams(ShortBy)}: it has {AmountWords.Grams(OnHandMilligrams)} left and the reading is {AmountWords.Grams(ReadingMilligrams)}.";

    public override string ToDo => "Use another lot, make less, or mark receipt to follow.";

    public override IReadOnlyList<WeighAnswer> Answers =>
    [
        .. OtherLots.Select(l => new WeighAnswer(
            AnswerKeys.OtherLot, $"Use {l.Code}", $"It has {AmountWords.Grams(l.OnHandMilligrams)}.", LotId: l.LotId)),
        .. SmallerTotal is { } total
            ? [new WeighAnswer(AnswerKeys.Smaller, $"Make {AmountWords.Grams(total)}", "Every line is made smaller, the formula stays exact. Weigh this line again to its new target.", Milligrams: total)]
            : Array.Empty<WeighAnswer>(),
        new(AnswerKeys.ReceiptToFollow, "Receipt to follow",
            OnHandMilligrams > 0
                ? $"{AmountWords.Grams(OnHandMilligrams)} from {LotCode}, {AmountWords.Grams(ShortBy)} at the last cost until its delivery is here. Needs a reason."
                : $"{AmountWords.Grams(ShortBy)} at the last cost until its delivery is here. Needs a reason.",
            NeedsReason: true, Milligrams: ReadingMilligrams),
    ];
}

public sealed record OtherLot(Guid LotId, string Code, long OnHandMilligrams);

/// <summary>A line that comes earlier in the order of addition is still open.</summary>
public sealed record OutOfOrder(string MaterialName, string ComesFirst, long ReadingMilligrams) : WeighRefusal
{
    public override string Happened => $"{ComesFirst} comes before {MaterialName} in the order of addition.";

    public override string ToDo => $"Weigh {ComesFirst} first, or record {MaterialName} now with a reason.";

    public override IReadOnlyList<WeighAnswer> Answers =>
        [new(AnswerKeys.OutOfOrder, $"Record {MaterialName} now", "The change of order is noted on the batch. Needs a reason.", NeedsReason: true, Milligrams: ReadingMilligrams)];
}

/// <summary>The last day of use is past.</summary>
public sealed record LotExpired(string LotCode, DateOnly On, ExpiryReason Reason) : WeighRefusal
{
    public override string Happened => Reason switch
    {
        ExpiryReason.Retest => $"{LotCode} was to be retested by {AmountWords.Day(On)}.",
        ExpiryReason.Opened => $"{LotCode} has been open longer than its life after opening; the last day was {AmountWords.Day(On)}.",
        _ => $"{LotCode} expired on {AmountWords.Day(On)}.",
    };

    public override string ToDo => Reason == ExpiryReason.Retest
        ? $"Re-smell it and record the retest on {LotCode}, or use another lot."
        : "Use another lot.";
}

public sealed record LotNotReleased(string LotCode, LotStatus Status) : WeighRefusal
{
    public override string Happened => $"{LotCode} is {(Status == LotStatus.Quarantine ? "in quarantine" : "on hold")}.";

    public override string ToDo => $"Release {LotCode} in the Storeroom, or use another lot.";
}

/// <summary>Final: there is no override.</summary>
public sealed record LotRejected(string LotCode) : WeighRefusal
{
    public override string Happened => $"{LotCode} is rejected.";

    public override string ToDo => "Use another lot and set this jar aside.";
}

/// <summary>The code belongs to something else than the line asks for.</summary>
public sealed record WrongMaterial(string LotCode, string Holds, string Wanted) : WeighRefusal
{
    public override string Happened => $"{LotCode} holds {Holds}. This line is {Wanted}.";

    public override string ToDo => $"Take a jar of {Wanted}.";
}

public sealed record NotWeighing(string Code, BatchState State) : WeighRefusal
{
    public override string Happened => State switch
    {
        BatchState.Planned => $"Weighing {Code} has not started.",
        BatchState.Discarded => $"{Code} was discarded.",
        _ => $"The last addition of {Code} was confirmed.",
    };

    public override string ToDo => State switch
    {
        BatchState.Planned => "Start weighing on its plan, then record.",
        BatchState.Discarded => "Set the vessel aside; look at the plan for the reason.",
        _ => "Add more with its own act on the batch; it restarts the clock.",
    };
}

/// <summary>The sheet is in the partner's name.</summary>
public sealed record WeighedByPartner(string Code, string Partner) : WeighRefusal
{
    public override string Happened => $"{Partner} is weighing {Code}.";

    public override string ToDo => "Take the sheet over if you go on with it.";

    public override IReadOnlyList<WeighAnswer> Answers => [new(AnswerKeys.TakeOver, $"Take over from {Partner}", "The sheet is then in your name.")];
}

/// <summary>The line is finished.</summary>
public sealed record AlreadyConfirmed(string MaterialName, long RecordedMilligrams) : WeighRefusal
{
    public override string Happened => $"{MaterialName} is done: {AmountWords.Grams(RecordedMilligrams)} recorded.";

    public override string ToDo => "If that is wrong, reverse its weighing first.";
}
