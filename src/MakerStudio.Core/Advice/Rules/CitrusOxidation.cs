using MakerStudio.Core.Assessing;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Advice.Rules;

/// <summary>
/// Limonene and its like take up oxygen: the scent turns to turpentine, and what forms sensitises skin.
/// </summary>
public sealed class CitrusOxidation : AdviceRule
{
    /// <summary>Citrus materials' share of the scent materials; own limit.</summary>
    private const decimal RichFrom = 0.5m;

    public override string Key => "citrus-oxidation";

    public override string Title => "Citrus goes off in air";

    public override string AppliesTo =>
        "Scent with citrus oil, or with 30 % or more of limonene, in any product.";

    public override string Reason =>
        "Limonene takes up oxygen: the scent dulls towards turpentine, and what forms is a stronger sensitiser than it was.";

    public override Citation Source => new("IFRA Standard on limonene: peroxides kept low, as by an antioxidant; half of the scent and 30 % are our own limits", DataStatus.Memory);

    public override AdviceExample Example => new(
        "Orange oil as the only scent, no antioxidant.",
        ExampleLines.Spray(ExampleLines.Line(ExampleLines.Orange, 12m), ExampleLines.Alcohol(88m)),
        [
            (AdviceKind.Warn, "Orange oil is 100 % of the scent, and no antioxidant is on the papers. It oxidises: ask the supplier or add one, keep it cold, full and dark, and smell it again 6 to 12 months after opening."),
        ]);

    public override IEnumerable<AdviceGiven> Judge(AdviceBasis basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        IReadOnlyList<AssessedLine> citrus = basis.Citrus;
        if (citrus.Count == 0)
        {
            yield break;
        }

        decimal share = citrus.Sum(line => line.Fraction) / Math.Max(basis.Scent.Sum(line => line.Fraction), citrus.Sum(line => line.Fraction));
        bool isKept = basis.Lines.Any(basis.HoldsAntioxidant);
        WorkingStep workings = Step($"Citrus materials {100 * share:0.##} % of the scent materials, rich from {100 * RichFrom:0} %; antioxidant on the papers: {(isKept ? "yes" : "no")}.");
        yield return share >= RichFrom && !isKept
            ? Give(AdviceKind.Warn, $"{Names(citrus)} {Verb(citrus, "is", "are")} {100 * share:0.##} % of the scent, and no antioxidant is on the papers. It oxidises: ask the supplier or add one, keep it cold, full and dark, and smell it again 6 to 12 months after opening.", citrus, share, workings)
            : Give(AdviceKind.Note, $"{Names(citrus)} {Verb(citrus, "holds", "hold")} citrus, which oxidises. Keep {Verb(citrus, "it", "them")} cold, full and dark, and smell again 6 to 12 months after opening.", citrus, share, workings);
    }
}
