using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// A drop has no fixed mass: twenty to a millilitre by convention, fifteen to thirty-five in practice.
/// </summary>
public sealed class Drops : AdviceRule
{
    public override string Key => "drops";

    public override string Title => "Lines in drops";

    public override string AppliesTo =>
        "A line typed in drops.";

    public override string Reason =>
        "A drop weighs what the dropper and the oil make it weigh, so a formula in drops cannot be made again.";

    public override Citation Source => new("20 drops to 1 mL by convention, 15 to 35 in practice", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Fragrance typed in drops, about to be released.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.OilMaterial, 12m, LineBasis.Drops), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Stop, "Fig oil is typed in drops, and a drop has no fixed mass. Weigh it once and type grams or per cent before this is released."),
        ], IsBeingReleased: true);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] lines = [.. basis.Lines.Where(line => line.Basis == LineBasis.Drops)];
        if (lines.Length == 0)
        {
            yield break;
        }

        WorkingStep workings = Step($"Lines in drops: {lines.Length}; {100 * lines.Sum(line => line.Fraction):0.00} % of the total by weight.");
        yield return basis.IsBeingReleased
            ? Give(AdviceKind.Stop, $"{Names(lines)} {Verb(lines, "is", "are")} typed in drops, and a drop has no fixed mass. Weigh it once and type grams or per cent before this is released.", lines, lines.Length, workings)
            : Give(AdviceKind.Note, $"{Names(lines)} {Verb(lines, "is", "are")} typed in drops: good for a trial. Weigh 20 drops to know what one weighs; a released formula takes grams or per cent.", lines, lines.Length, workings);
    }
}
