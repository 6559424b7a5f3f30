using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Grams turn into millilitres through a density, and only through one.
/// </summary>
public sealed class DensityUnknown : AdviceRule
{
    public override string Key => "unknown-density";

    public override string Title => "Density not known";

    public override string AppliesTo =>
        "A product sold by volume whose density comes neither from its lines nor from a measurement.";

    public override string Reason =>
        "Without a density there is no fill weight, no bottle count and no alcohol by volume.";

    public override Citation Source => new("Mass divided by volume", DataStatus.Derived);

    public override AdviceExample Example => new(
        "A fragrance oil without a density.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.OilMaterial with { Density = null }, 12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Warn, "No density, so fill weight, bottles and % vol are not worked out. Fig oil has no density. Enter it from the sheet, or weigh a known volume of the batch."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Density is not DensityResult.Unknown unknown || basis.Formula.Kind.NominalUnit != AmountUnit.Millilitre)
        {
            yield break;
        }

        AssessedLine[] lines = [.. basis.Lines.Where(basis.LacksDensity)];
        yield return lines.Length > 0
            ? Give(AdviceKind.Warn, $"No density, so fill weight, bottles and % vol are not worked out. {Names(lines)} {Verb(lines, "has", "have")} no density. Enter it from the sheet, or weigh a known volume of the batch.", lines, null, Workings(unknown))
            : Give(AdviceKind.Warn, $"No density, so fill weight, bottles and % vol are not worked out. {string.Join(" ", unknown.Why)} Or weigh a known volume of the batch.", [], null, Workings(unknown));
    }

    private WorkingStep[] Workings(DensityResult.Unknown unknown) => [.. unknown.Why.Select(why => Step($"{why}"))];
}
