using MakerStudio.Core.Labels.Rules;

namespace MakerStudio.Core.Labels;

/// <summary>Every element of a label, in the order of the list on the page. A new rule is a file and a line here.</summary>
public static class LabelRules
{
    public static IReadOnlyList<LabelRule> All { get; } =
    [
        new NameAndKind(),
        new NetQuantityStated(),
        new BatchCode(),
        new BestBefore(),
        new MakerNamed(),
        new SignalWordSaid(),
        new PictogramsShown(),
        new HazardStatementsSaid(),
        new SubstancesNamed(),
        new SupplementalSaid(),
        new PrecautionsSaid(),
        new AllergensDeclared(),
        new CautionsOfKind(),
        new MakersOwnLines(),
        new PoisonCentreCode(),
        new SquareCode(),
    ];
}
