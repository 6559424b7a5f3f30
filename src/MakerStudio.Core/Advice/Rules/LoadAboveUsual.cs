using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Allowed, since loads of 60 % are made; shown, since scent is the dearest line and the certificate has a limit.
/// </summary>
public sealed class LoadAboveUsual : AdviceRule
{
    public override string Key => "load-above-usual";

    public override string Title => "More scent than usual";

    public override string AppliesTo =>
        "A kind with a usual range of scent, and a load above it.";

    public override string Reason =>
        "Loads differ by a factor of ten. A high one costs, may pass the certificate's limit, and does not always smell stronger.";

    public override Citation Source => new("The usual loads of the kinds of product", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Alcohol room spray with 40 % of fragrance.",
        ExampleLines.Spray(ExampleLines.Oil(40m), ExampleLines.Alcohol(60m)),
        [
            (AdviceKind.Warn, "Scent is 40.00 % of the total; 3 to 15 % is usual for this kind. Look at the cost of a bottle and at the certificate's limit, and score it against a lighter one."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Formula.Kind.UsualLoad is { } usual && basis.Load.IsAbove(usual.Highest))
        {
            yield return Give(
                AdviceKind.Warn,
                $"Scent is {100 * basis.Load.OfBasis:0.00} % of {usual.Of}; {100 * usual.Lowest:0.##} to {100 * usual.Highest:0.##} % is usual for this kind. Look at the cost of a {basis.Formula.Kind.ContainerWord} and at the certificate's limit, and score it against a lighter one.",
                basis.Scent,
                basis.Load.OfBasis,
                Step($"Scent {100 * basis.Load.OfTotal:0.00} % of the total, {100 * basis.Load.OfBasis:0.00} % of {usual.Of}; usual up to {100 * usual.Highest:0.##} %."));
        }
    }
}
