using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;

namespace MakerStudio.Services.Formulation;

/// <summary>A part of what is made here.</summary>
/// <param name="Fraction">Share of the made material by weight, 0 to 1.</param>
public sealed record MadeFrom(Guid MaterialId, decimal Fraction);

/// <summary>
/// All that is known of the materials of a formula, and of what its pre-blends are made of. A pre-blend made here is
/// judged as its own ingredients: their sheets and certificates are known, its own are not.
/// </summary>
/// <param name="Materials">By id; ingredients of pre-blends are among them.</param>
/// <param name="Inside">By id of a material made here: the lines of its newest released version.</param>
public sealed record MaterialFacts(IReadOnlyDictionary<Guid, AssessedMaterial> Materials, IReadOnlyDictionary<Guid, IReadOnlyList<MadeFrom>> Inside)
{
    public static MaterialFacts None { get; } = new(new Dictionary<Guid, AssessedMaterial>(), new Dictionary<Guid, IReadOnlyList<MadeFrom>>());

    /// <summary>With what was read of others.</summary>
    public MaterialFacts And(MaterialFacts more) => new(
        new Dictionary<Guid, AssessedMaterial>(Materials.Concat(more.Materials).DistinctBy(m => m.Key)),
        new Dictionary<Guid, IReadOnlyList<MadeFrom>>(Inside.Concat(more.Inside).DistinctBy(m => m.Key)));

    /// <summary>A line as it is assessed: itself, or the ingredients of a pre-blend at any depth, each under the line's own id.</summary>
    /// <param name="fraction">Of the line in the formula, 0 to 1.</param>
    /// <exception cref="KeyNotFoundException">The material was not read.</exception>
    public IEnumerable<AssessedLine> Lines(Guid lineId, Guid materialId, decimal fraction, LineBasis basis) => Lines(lineId, materialId, fraction, basis, []);

    /// <param name="above">Materials already being looked into; a ring is left as it is.</param>
    private IEnumerable<AssessedLine> Lines(Guid lineId, Guid materialId, decimal fraction, LineBasis basis, HashSet<Guid> above) =>
        Inside.TryGetValue(materialId, out var parts) && parts.Count > 0 && !above.Contains(materialId)
            ? parts.SelectMany(part => Lines(lineId, part.MaterialId, fraction * part.Fraction, basis, [.. above, materialId]))
            : [new(lineId, Materials[materialId], fraction, basis)];
}
