using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// The studio's own room trials outrank any usual range.
/// </summary>
public sealed class LoadAboveEnough : AdviceRule
{
    public override string Key => "load-above-enough";

    public override string Title => "More scent than helped";

    public override string AppliesTo =>
        "A load above the one where the studio's own trials stopped scoring higher.";

    public override string Reason =>
        "What the nose no longer notices is paid for all the same.";

    public override Citation Source => new("the studio's own room trials", DataStatus.Read);

    public override AdviceExample Example => new(
        "Trials stopped rising at 9 %; the formula has 12 %.",
        ExampleLines.Spray(ExampleLines.Oil(12m), ExampleLines.Alcohol(88m)) with { EnoughScent = 0.09m },
        [
            (AdviceKind.Warn, "Scent is 12.00 % of the total. In your own trials more than 9.00 % stopped helping: 3.00 points of it do nothing you scored."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Formula.EnoughScent is { } enough && basis.Load.IsAbove(enough))
        {
            yield return Give(
                AdviceKind.Warn,
                $"Scent is {100 * basis.Load.OfBasis:0.00} % of {basis.Load.Basis}. In your own trials more than {100 * enough:0.00} % stopped helping: {100 * (basis.Load.OfBasis - enough):0.00} points of it do nothing you scored.",
                basis.Scent,
                basis.Load.OfBasis,
                Step($"Load {100 * basis.Load.OfBasis:0.00} % of {basis.Load.Basis}; enough by the trials {100 * enough:0.00} %."));
        }
    }
}
