using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Formulation;

/// <summary>How much scent is in a product, in the words its kind uses.</summary>
/// <param name="OfTotal">Fraction of the total by weight.</param>
/// <param name="Fraction">Fraction of what <paramref name="Of"/> names; null where there is none of it.</param>
/// <param name="Of">"w/w", "of wax" or "of dry wt".</param>
/// <param name="Usual">Null where the kind has no usual range.</param>
public sealed record ScentLoad(decimal OfTotal, decimal? Fraction, string Of, LoadRange? Usual)
{
    public bool IsUsual => Usual is null || Fraction is null || Usual.Holds(decimal.Round(Fraction.Value, 4));
}

/// <summary>The largest batch the shelf allows now, and the material that runs out first.</summary>
public sealed record LargestNow(Mass Total, Guid LimitingMaterialId);

/// <summary>
/// Everything that follows from a version's lines. Pure, so that a page works it out as it is typed; a released version
/// is worked out from what was frozen.
/// </summary>
/// <param name="Shares">In order of addition; empty while the lines do not add up.</param>
/// <param name="Problems">Why they do not add up yet.</param>
/// <param name="Mixed">Density of the mixture: measured, or reckoned from the lines, or why it is not known; null while they do not add up.</param>
/// <param name="Measured">Density as measured.</param>
/// <param name="CostPerGram">From the newest landed costs; null where one is missing.</param>
/// <param name="WithoutCost">Names of the materials whose cost is not known.</param>
public sealed record Worked(
    IReadOnlyList<NormalisedLine> Shares, IReadOnlyList<LineProblem> Problems, DensityResult? Mixed, Density? Measured,
    decimal? CostPerGram, IReadOnlyList<string> WithoutCost, ScentLoad? Load, LargestNow? Largest)
{
    public bool AddsUp => Problems.Count == 0;

    /// <summary>Reckoned from the lines: alcohol and water as one, the rest by its volume; null where a density is missing.</summary>
    public Density? Estimate => (Mixed as DensityResult.Known)?.Estimate;

    /// <summary>The density to fill by: the measured one, else the estimate.</summary>
    public Density? Density => Measured ?? Estimate;

    public NormalisedLine? Share(Guid lineId) => Shares.FirstOrDefault(s => s.LineId == lineId);

    public static Worked Of(
        string productKind, FormulaState state, IReadOnlyList<LineRow> lines, MeasuredRow measuredFacts,
        IReadOnlyDictionary<Guid, LineMaterial> materials, MaterialFacts facts)
    {
        var measured = measuredFacts.Facts.Density;
        var result = state == FormulaState.Released ? Frozen(lines) : Formulation(lines, materials);
        if (result is not FormulationResult.Normalised { Lines: var shares })
        {
            return new([], ((FormulationResult.CannotNormalise)result).Problems, null, measured, null, [], null, null);
        }

        var parts = lines.Zip(shares, (line, share) => new Part(materials[line.MaterialId], share.Fraction)).Where(p => p.Fraction > 0).ToArray();
        var without = parts.Where(p => p.Material.UnitCost is null).Select(p => p.Material.Name).Distinct().ToArray();
        return new(
            shares, [], parts.Length == 0 ? null : DensityOf(Assessed.Lines(lines, shares, facts), measured), measured,
            without.Length > 0 ? null : parts.Sum(p => p.Fraction * p.Material.UnitCost!.Value), without,
            LoadOf(ProductKinds.Get(productKind), parts), LargestOf(parts));
    }

    public static Worked Of(FormulaSheet sheet, VersionRow version) =>
        Of(sheet.Formula.ProductKind, version.State, version.Lines, version.Measured, sheet.Materials, sheet.Facts);

    /// <summary>What to weigh into one unit of a size; null where a volume has no density yet.</summary>
    public Mass? Fill(SizeRow size) => size switch
    {
        { NominalMilligrams: { } mg } => Mass.FromMilligrams(mg + size.OverfillMilligrams),
        { NominalMillilitres: { } ml } when Density is { } density =>
            FillMass.Of(Volume.FromMillilitres(ml), density, Mass.FromMilligrams(size.OverfillMilligrams)),
        _ => null,
    };

    /// <summary>Cost of 100 mL of what is sold by volume, or of 100 g; null where a cost or density is missing.</summary>
    public decimal? CostPerHundred(ProductKind kind) => kind.NominalUnit == AmountUnit.Millilitre
        ? CostPerGram * 100m * Density?.GramsPerMillilitre
        : CostPerGram * 100m;

    internal static TypedLine Typed(LineRow line, IReadOnlyDictionary<Guid, LineMaterial> materials)
    {
        var material = materials[line.MaterialId];
        return new(line.LineId, line.Amount, line.Basis, DensityOf(line, materials), material.Kind == MaterialKind.Wax, material.DropMilligrams);
    }

    private static FormulationResult Formulation(IReadOnlyList<LineRow> lines, IReadOnlyDictionary<Guid, LineMaterial> materials) =>
        Core.Blending.Formulation.Normalise([.. lines.Select(l => Typed(l, materials))]);

    internal static FormulationResult.Normalised Frozen(IReadOnlyList<LineRow> lines)
    {
        var ordered = lines.OrderBy(l => l.LineId).ToArray();
        var percents = LargestRemainder.Share(
            Core.Blending.Formulation.PercentUnits, [.. ordered.Select(l => l.Fraction ?? throw new InvalidOperationException("A released line has no fraction."))]);
        var shares = ordered.Select((l, i) => new NormalisedLine(l.LineId, l.Fraction!.Value, percents[i] / 100m)).ToDictionary(s => s.LineId);
        return new([.. lines.Select(l => shares[l.LineId])]);
    }

    /// <summary>Of the finished mixture at 20 °C, the one way it is reckoned anywhere.</summary>
    internal static DensityResult DensityOf(IReadOnlyList<AssessedLine> lines, Density? measured) => MixtureVolume.Of(
        Mixture.Of(lines.Select(FormulaMixture.Of)), new Celsius((decimal)MixtureVolume.LineCelsius), measured);

    private static Density? DensityOf(LineRow line, IReadOnlyDictionary<Guid, LineMaterial> materials) =>
        line.DensityUsed is { } used ? new Density(used) : materials[line.MaterialId].DensityKnown;

    private static ScentLoad LoadOf(ProductKind kind, Part[] parts)
    {
        var scent = parts.Sum(p => p.Fraction * p.Material.ScentShare);
        var (of, basis) = kind.UsualLoad?.Of switch
        {
            "wax" => ("of wax", parts.Where(p => p.Material.Kind == MaterialKind.Wax).Sum(p => p.Fraction)),
            "dry weight" => ("of dry wt", parts.Where(p => p.Material.Kind == MaterialKind.DryBotanical).Sum(p => p.Fraction)),
            _ => ("w/w", 1m),
        };
        return new(scent, basis > 0 ? scent / basis : null, of, kind.UsualLoad);
    }

    private static LargestNow? LargestOf(Part[] parts)
    {
        var byMaterial = parts.GroupBy(p => p.Material.Id).Select(g => (g.First().Material, Fraction: g.Sum(p => p.Fraction))).ToArray();
        var largest = Scaling.LargestFrom(
            [.. byMaterial.Select(m => m.Fraction)],
            [.. byMaterial.Select(m => (Mass?)Mass.FromMilligrams(Math.Max(0, m.Material.Available)))]);
        return largest is null ? null : new(largest.Total, byMaterial[largest.LimitingLine].Material.Id);
    }

    private sealed record Part(LineMaterial Material, decimal Fraction);
}
