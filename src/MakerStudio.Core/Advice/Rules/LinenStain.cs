using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Whatever is coloured, browns or does not dry leaves a mark on cloth.
/// </summary>
public sealed class LinenStain : AdviceRule
{
    /// <summary>Vanillin's share of the scent by weight; own limit.</summary>
    private const double VanillinFrom = 0.01;

    public override string Key => "linen-stain";

    public override string Title => "Stains on cloth";

    public override string AppliesTo =>
        "Every linen spray; a warning where it holds colour, vanillin at 1 % of the scent or more, or a fixative.";

    public override string Reason =>
        "Colour stays in cloth, vanillin browns in it, and heavy fixatives leave greasy spots.";

    public override Citation Source => new("Spot test on white cotton, looked at after 24 h; no heavy fixatives", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "Linen spray with a colourant.",
        ExampleLines.Of(new LinenSpray(), ExampleLines.Oil(2m), ExampleLines.Line(ExampleLines.Material("Blue", MaterialKind.Colourant), 0.1m), ExampleLines.Alcohol(97.9m)),
        [
            (AdviceKind.Warn, "It may mark cloth: Blue brings colour. Leave it out, or spray white cotton, wait 24 h in daylight and look."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Formula.Kind is not LinenSpray)
        {
            yield break;
        }

        AssessedLine[] colours = [.. basis.OfKind(MaterialKind.Colourant)];
        AssessedLine[] fixatives = [.. basis.OfKind(MaterialKind.Fixative)];
        AssessedLine[] browning = Math.Round(basis.VanillinOfScent, AdviceBasis.ShareDecimals) >= VanillinFrom
            ? [.. basis.Lines.Where(line => basis.VanillinIn(line) > 0)]
            : [];
        AssessedLine[] lines = [.. colours.Concat(fixatives).Concat(browning).Distinct()];
        WorkingStep workings = Step($"Colour {100 * colours.Sum(line => line.Fraction):0.###} %, fixative {100 * fixatives.Sum(line => line.Fraction):0.00} % by weight; vanillin {100 * basis.VanillinOfScent:0.00} % of the scent, limit {100 * VanillinFrom:0} %.");
        if (lines.Length == 0)
        {
            yield return Give(AdviceKind.Note, $"Spray white cotton, wait 24 h in daylight and look for a mark.", [], null, workings);
            yield break;
        }

        string[] why =
        [
            .. colours.Length > 0 ? [$"{Names(colours)} {Verb(colours, "brings", "bring")} colour"] : Array.Empty<string>(),
            .. browning.Length > 0 ? [$"{Names(browning)} {Verb(browning, "browns", "brown")} with vanillin"] : Array.Empty<string>(),
            .. fixatives.Length > 0 ? [$"{Names(fixatives)} {Verb(fixatives, "dries", "dry")} slowly and can leave a greasy spot"] : Array.Empty<string>(),
        ];
        yield return Give(AdviceKind.Warn, $"It may mark cloth: {string.Join("; ", why)}. Leave it out, or spray white cotton, wait 24 h in daylight and look.", lines, null, workings);
    }
}
