using MakerStudio.Core.Assessing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// What the supplier says of added CMR substances; silence is not a no.
/// </summary>
public sealed class CmrStatement : AdviceRule
{
    public override string Key => "cmr-statement";

    public override string Title => "CMR statement";

    public override string AppliesTo =>
        "A fragrance or essential oil that is not stated to be free of added CMR substances.";

    public override string Reason =>
        "What is carcinogenic, mutagenic or toxic for reproduction must not reach the public above its limit, and sheets of blends do not list everything.";

    public override Citation Source => new("REACH Annex XVII, entries 28 to 30: CMR of categories 1A and 1B not supplied to the public above their limits", DataStatus.Memory);

    public override AdviceExample Example => new(
        "A fragrance oil whose supplier has not said.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.OilMaterial with { CmrFree = null }, 12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Warn, "Nobody has stated that Fig oil is free of added CMR substances. Ask the supplier for it in writing and file it."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        AssessedLine[] oils = [.. basis.Lines.Where(line => line.Material.Kind is MaterialKind.FragranceOil or MaterialKind.EssentialOil)];
        AssessedLine[] with = [.. oils.Where(line => line.Material.CmrFree == false)];
        AssessedLine[] unsaid = [.. oils.Except(with).Where(line => line.Material.CmrFree is null)];
        if (with.Length > 0)
        {
            yield return Give(
                AdviceKind.Warn,
                $"{Names(with)} {Verb(with, "holds", "hold")} added CMR substances by the papers. Use another, or tell those who ask.",
                with,
                null,
                [.. with.Select(line => Step($"{line.Material.Name}: not free of added CMR substances; {100 * line.Fraction:0.00} % of the total.", line))]);
        }

        if (unsaid.Length > 0)
        {
            yield return Give(
                AdviceKind.Warn,
                $"Nobody has stated that {Names(unsaid)} {Verb(unsaid, "is", "are")} free of added CMR substances. Ask the supplier for it in writing and file it.",
                unsaid,
                null,
                [.. unsaid.Select(line => Step($"{line.Material.Name}: no statement; {100 * line.Fraction:0.00} % of the total.", line))]);
        }
    }
}
