using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Formulation;

/// <summary>Lays a version out as the one input of an assessment. Pure, so that a page does it as somebody types.</summary>
public static class Assessed
{
    private const decimal Percent = 100m;

    /// <summary>The same with the version worked out here. Null while the lines do not add up, or have no mass.</summary>
    public static AssessedFormula? Of(FormulaSheet sheet, VersionRow version) => Of(sheet, version, Worked.Of(sheet, version));

    /// <summary>Null while the lines do not add up, or have no mass.</summary>
    /// <param name="worked">Of the same version.</param>
    public static AssessedFormula? Of(FormulaSheet sheet, VersionRow version, Worked worked)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(version);
        ArgumentNullException.ThrowIfNull(worked);
        return worked.Shares.All(s => s.Fraction == 0) ? null : new(
            ProductKinds.Get(sheet.Formula.ProductKind), Lines(version.Lines, worked.Shares, sheet.Facts), version.Measured.Facts,
            sheet.Sizes.Where(s => s.RetiredAt is null).Min(s => s.NominalMillilitres), sheet.Formula.EnoughScentPercent / Percent);
    }

    /// <summary>
    /// A density frozen on a line holds; everything else is as it is known today. A part of a pre-blend that has no
    /// density of its own takes the pre-blend's.
    /// </summary>
    internal static IReadOnlyList<AssessedLine> Lines(IReadOnlyList<LineRow> lines, IReadOnlyList<NormalisedLine> shares, MaterialFacts facts) =>
        [.. lines.Zip(shares, (line, share) => Parts(line, share.Fraction, facts)).SelectMany(parts => parts)];

    private static IEnumerable<AssessedLine> Parts(LineRow line, decimal fraction, MaterialFacts facts)
    {
        Density? whole = line.DensityUsed is { } used ? new Density(used) : facts.Materials[line.MaterialId].Density;
        foreach (var part in facts.Lines(line.LineId, line.MaterialId, fraction, line.Basis))
        {
            var density = part.Material.Id == line.MaterialId ? whole : part.Material.Density ?? whole;
            // A sheet is read once for each object, so a material that stays as it is stays the same object.
            yield return density == part.Material.Density ? part : part with { Material = part.Material with { Density = density } };
        }
    }
}
