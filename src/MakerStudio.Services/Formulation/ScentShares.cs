using MakerStudio.Core.Materials;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>
/// How much of a material is scent: oils wholly, a pre-blend by the oils in its newest released version, at any depth.
/// A pre-blend that was bought counts wholly, since nothing says otherwise.
/// </summary>
internal sealed class ScentShares
{
    private readonly Dictionary<Guid, (Guid MaterialId, MaterialKind Kind, decimal Fraction)[]> _inside;

    private ScentShares(Dictionary<Guid, (Guid, MaterialKind, decimal)[]> inside) => _inside = inside;

    public static async Task<ScentShares> ReadAsync(StudioDb db, CancellationToken cancel)
    {
        var lines = await MadeOf.NewestReleased(db)
            .SelectMany(
                v => db.FormulaLines.Where(l => l.FormulaVersionId == v.VersionId),
                (v, l) => new { v.Makes, l.Position, l.MaterialId, l.Material!.Kind, Fraction = l.Fraction ?? 0m })
            .ToListAsync(cancel);
        return new(lines.GroupBy(l => l.Makes).ToDictionary(g => g.Key, g => g.OrderBy(l => l.Position).Select(l => (l.MaterialId, l.Kind, l.Fraction)).ToArray()));
    }

    public decimal Of(Guid materialId, MaterialKind kind) => Of(materialId, kind, []);

    /// <summary>The lines of every material made here that is among these or inside them, at any depth.</summary>
    public Dictionary<Guid, IReadOnlyList<MadeFrom>> Below(IEnumerable<Guid> materialIds)
    {
        var below = new Dictionary<Guid, IReadOnlyList<MadeFrom>>();
        var open = new Queue<Guid>(materialIds);
        while (open.TryDequeue(out var at))
        {
            if (_inside.TryGetValue(at, out var lines) && below.TryAdd(at, [.. lines.Select(l => new MadeFrom(l.MaterialId, l.Fraction))]))
            {
                Array.ForEach(lines, l => open.Enqueue(l.MaterialId));
            }
        }

        return below;
    }

    /// <param name="above">Materials already being looked into; a cycle adds nothing.</param>
    private decimal Of(Guid materialId, MaterialKind kind, HashSet<Guid> above)
    {
        if (kind is MaterialKind.FragranceOil or MaterialKind.EssentialOil)
        {
            return 1m;
        }

        if (kind != MaterialKind.PreBlend)
        {
            return 0m;
        }

        if (!_inside.TryGetValue(materialId, out var lines))
        {
            return 1m;
        }

        return above.Contains(materialId) ? 0m : lines.Sum(l => l.Fraction * Of(l.MaterialId, l.Kind, [.. above, materialId]));
    }
}
