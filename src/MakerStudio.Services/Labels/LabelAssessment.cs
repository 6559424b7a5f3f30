using MakerStudio.Core.Assessing;
using MakerStudio.Core.Labels;
using MakerStudio.Core.Products;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Formulation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Labels;

/// <summary>What the materials say now of a released version in one pack.</summary>
internal static class LabelAssessment
{
    /// <summary>The label's facts with the given words, without what only a batch knows.</summary>
    /// <param name="version">Released, with its lines and formula.</param>
    public static async Task<LabelFacts> FactsAsync(
        StudioDb db, FormulaVersion version, NetContent net, LabelWording wording, string? ufi, DateOnly today, CancellationToken cancel)
    {
        var formula = version.Formula!;
        var choices = await Markets.OfAsync(db, today, cancel);
        var maker = await db.Studio.Select(s => new LabelMaker(s.Name, s.Address, s.Phone)).SingleAsync(cancel);
        var assessment = Assessment.Of(await FormulaOfAsync(db, version, net, cancel), choices);
        return new(
            formula.Name, formula.ProductKind, net, choices.Scheme, HazardsOf(assessment),
            [.. (assessment?.Allergens.Declared ?? []).Select(share => share.Allergen.Name)], ufi, maker, wording, null);
    }

    private static LabelHazards HazardsOf(Assessment? assessment) => assessment switch
    {
        null => LabelHazards.None,
        { Label: { } label } => LabelHazards.Of(label, [.. assessment.Unknown.Select(each => each.What)]),
        { UsLabel: { } us } => LabelHazards.Of(us),
        _ => LabelHazards.None,
    };

    private static async Task<AssessedFormula> FormulaOfAsync(StudioDb db, FormulaVersion version, NetContent net, CancellationToken cancel)
    {
        var facts = await AssessedMaterials.OfAsync(db, version.Lines.Select(line => line.MaterialId), cancel);
        LineRow[] rows = [.. version.Lines.OrderBy(line => line.Position).Select(LineRow.Of)];
        return new(
            ProductKinds.Get(version.Formula!.ProductKind), Assessed.Lines(rows, Worked.Frozen(rows).Lines, facts), MeasuredRow.Of(version).Facts,
            net.IsVolume ? net.Amount : null);
    }
}
