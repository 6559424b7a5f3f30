using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Formulation;

/// <summary>Lays a version out as the one input of an assessment. Pure, so that a page does it as somebody types.</summary>
public static class Assessed
{
    private const decimal Percent = 100m;

    /// <summary>Null while the lines do not add up, or have no mass.</summary>
    public static AssessedFormula? Of(FormulaSheet sheet, VersionRow version)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(version);
        var kind = ProductKinds.Get(sheet.Formula.ProductKind);
        var worked = Worked.Of(sheet, version);
        return worked.Shares.Count == 0 ? null : new(
            kind, Lines(version.Lines, worked.Shares, sheet.Facts), version.Measured.Facts,
            sheet.Sizes.Where(s => s.RetiredAt is null).Min(s => s.NominalMillilitres), sheet.Formula.EnoughScentPercent / Percent);
    }

    /// <summary>A density frozen on a line holds; everything else is as it is known today.</summary>
    internal static IReadOnlyList<AssessedLine> Lines(
        IReadOnlyList<LineRow> lines, IReadOnlyList<NormalisedLine> shares, IReadOnlyDictionary<Guid, AssessedMaterial> facts) =>
        [.. lines.Zip(shares, (line, share) =>
        {
            var material = facts[line.MaterialId];
            return new AssessedLine(
                line.LineId, line.DensityUsed is { } used ? material with { Density = new Density(used) } : material, share.Fraction, line.Basis);
        })];
}
