using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// What the supplier says of phthalates; silence is not a no.
/// </summary>
public sealed class PhthalateStatement : AdviceRule
{
    public override string Key => "phthalate-statement";

    public override string Title => "Phthalate statement";

    public override string AppliesTo =>
        "A fragrance oil that is not stated to be free of phthalates.";

    public override string Reason =>
        "Some fragrance oils are thinned with diethyl phthalate; shops and buyers ask, and only the supplier can say.";

    public override Citation Source => new("Buyers ask for a supplier's statement", DataStatus.CommonPractice);

    public override AdviceExample Example => new(
        "A fragrance oil whose supplier has not said.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.OilMaterial with { PhthalateFree = null }, 12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Warn, "Nobody has stated that Fig oil is free of phthalates. Ask the supplier for it in writing and file it."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] oils = [.. basis.Lines.Where(line => line.Material.Kind is MaterialKind.FragranceOil)];
        AssessedLine[] with = [.. basis.Lines.Where(line => line.Material.PhthalateFree == false || basis.ShareIn(line, Known.Phthalate) > 0)];
        AssessedLine[] unsaid = [.. oils.Except(with).Where(line => line.Material.PhthalateFree is null)];
        if (with.Length > 0)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{Names(with)} {Verb(with, "holds", "hold")} phthalates by the papers. Use another, or tell those who ask.",
                with,
                null,
                [.. with.Select(line => Step($"{line.Material.Name}: not free of phthalates; {100 * line.Fraction:0.00} % of the total.", line))]);
        }

        if (unsaid.Length > 0)
        {
            yield return Give(
                AdviceKind.Warn,
                $"Nobody has stated that {Names(unsaid)} {Verb(unsaid, "is", "are")} free of phthalates. Ask the supplier for it in writing and file it.",
                unsaid,
                null,
                [.. unsaid.Select(line => Step($"{line.Material.Name}: no statement; {100 * line.Fraction:0.00} % of the total.", line))]);
        }
    }
}
