using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Ethanol is sold with water in it, and the water decides haze, density and flash point.
/// </summary>
public sealed class AlcoholStrengthUnknown : AdviceRule
{
    public override string Key => "unknown-alcohol-strength";

    public override string Title => "Alcohol strength not known";

    public override string AppliesTo =>
        "A material that is ethanol by its CAS number, without a strength and without water in its composition.";

    public override string Reason =>
        "Ethanol is sold with some water in it, and that water decides haze, density, flash point and alcohol by volume.";

    public override Citation Source => new("Ethanol without a strength is reckoned as pure", DataStatus.Derived);

    public override AdviceExample Example => new(
        "Ethanol 88 without its strength, fragrance 12.",
        ExampleLines.Spray(ExampleLines.Oil(12m), ExampleLines.Line(ExampleLines.Material("Ethanol", MaterialKind.Solvent, Substances.EthanolCas), 88m)),
        [
            (AdviceKind.Warn, "Ethanol has no strength entered and is reckoned as pure, so it looks clearer and stronger than it may be. Enter % vol, % by weight or US proof, as the supplier states it."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] lines = [.. basis.Lines.Where(line => IsEthanol(line.Material))];
        if (lines.Length > 0)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{Names(lines)} {Verb(lines, "has", "have")} no strength entered and {Verb(lines, "is", "are")} reckoned as pure, so it looks clearer and stronger than it may be. Enter % vol, % by weight or US proof, as the supplier states it.",
                lines,
                null,
                [.. lines.Select(line => Step($"{line.Material.Name}: {100 * line.Fraction:0.00} % by weight, reckoned as pure ethanol.", line))]);
        }
    }

    private static bool IsEthanol(AssessedMaterial material) =>
        material.Cas?.Text == Substances.EthanolCas && material.Strength is null
        && material.Composition.All(part => part.Cas != Substances.WaterCas);
}
