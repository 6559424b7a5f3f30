using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// A material nothing is known of leaves a hole in every sum it should be in.
/// </summary>
public sealed class CompositionUnknown : AdviceRule
{
    public override string Key => "unknown-composition";

    public override string Title => "Composition not known";

    public override string AppliesTo =>
        "A material with neither hazards nor a composition on its papers; water and dry botanicals are let be.";

    public override string Reason =>
        "Hazards, allergens, volatile share and flash point are sums over what the papers say; a blank is not a zero.";

    public override Citation Source => new("Sums over what the papers state", DataStatus.Derived);

    public override AdviceExample Example => new(
        "A fragrance oil with nothing entered from its sheet.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.OilMaterial with { Hazards = null }, 12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Warn, "Nothing is entered of what Fig oil is made of: 12.00 % of the total is missing from the sums of hazards, allergens and volatile share. Sections 2 and 3 of the SDS have it."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] lines = [.. basis.Lines.Where(IsBlank)];
        decimal share = lines.Sum(line => line.Fraction);
        if (lines.Length > 0)
        {
            yield return Give(
                AdviceKind.Warn,
                $"Nothing is entered of what {Names(lines)} {Verb(lines, "is", "are")} made of: {100 * share:0.00} % of the total is missing from the sums of hazards, allergens and volatile share. Sections 2 and 3 of the SDS have it.",
                lines,
                share,
                [.. lines.Select(line => Step($"{line.Material.Name}: {100 * line.Fraction:0.00} % by weight, neither hazards nor composition.", line))]);
        }
    }

    private static bool IsBlank(AssessedLine line)
    {
        AssessedMaterial material = line.Material;
        bool isLetBe = material.Kind is MaterialKind.Water or MaterialKind.DryBotanical || material.Strength is not null;
        return !isLetBe && material.Composition.Count == 0 && string.IsNullOrWhiteSpace(material.Hazards?.Classes) && Substances.Find(material.Cas) is null;
    }
}
