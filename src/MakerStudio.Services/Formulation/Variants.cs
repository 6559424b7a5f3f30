using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;

namespace MakerStudio.Services.Formulation;

/// <summary>A formula as it would be with one thing changed, to look at before anything is.</summary>
/// <param name="Name">What was changed, in words.</param>
/// <param name="From">The lines it was made from.</param>
public sealed record TriedLines(string Name, IReadOnlyList<LineRow> From, IReadOnlyList<LineRow> Lines)
{
    /// <summary>
    /// Takes the change back out of lines that may have been worked on since: what it took out returns to its place,
    /// what it altered is as before, everything else stays.
    /// </summary>
    public IReadOnlyList<LineRow> TakenBack(IReadOnlyList<LineRow> now)
    {
        ArgumentNullException.ThrowIfNull(now);
        var after = Lines.ToDictionary(l => l.LineId);
        var lines = now.Select(line => From.FirstOrDefault(l => l.LineId == line.LineId) is { } before
            && after.TryGetValue(line.LineId, out var changed) && changed != before ? before : line).ToList();
        foreach (var (line, at) in From.Select((l, i) => (l, i)).Where(l => !after.ContainsKey(l.l.LineId)))
        {
            lines.Insert(Math.Min(at, lines.Count), line);
        }

        return lines;
    }
}

/// <summary>Variants of a draft in one press. Pure.</summary>
public static class Variants
{
    /// <summary>What carries the rest, the first kind that is there.</summary>
    private static readonly MaterialKind[] Carriers = [MaterialKind.Solvent, MaterialKind.CarrierBase, MaterialKind.Water, MaterialKind.Wax];

    /// <summary>What a solvent may be exchanged for.</summary>
    public static bool IsSolvent(MaterialKind kind) => kind is MaterialKind.Solvent or MaterialKind.CarrierBase;

    /// <summary>
    /// Without its fixatives; the carrier takes their share where shares are of the whole. Null where there is none, or
    /// nothing else.
    /// </summary>
    public static TriedLines? WithoutFixative(IReadOnlyList<LineRow> lines, IReadOnlyDictionary<Guid, LineMaterial> materials)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(materials);
        var kept = lines.Where(l => materials[l.MaterialId].Kind != MaterialKind.Fixative).ToArray();
        if (kept.Length == lines.Count || kept.Length == 0)
        {
            return null;
        }

        var isOfTheWhole = kept.All(l => l.Basis is LineBasis.PercentByWeight or LineBasis.PercentByVolume);
        if (isOfTheWhole && kept.All(l => l.Amount is not null) && Carrier(kept, materials) is { } carrier)
        {
            kept = [.. kept.Select(l => l == carrier ? l with { Amount = null } : l)];
        }

        return new("Without fixative", lines, kept);
    }

    /// <summary>The same with its main solvent exchanged, amounts as typed. Null where it has no solvent.</summary>
    public static TriedLines? WithSolvent(IReadOnlyList<LineRow> lines, IReadOnlyDictionary<Guid, LineMaterial> materials, LineMaterial solvent)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(materials);
        ArgumentNullException.ThrowIfNull(solvent);
        return Solvent(lines, materials) is not { } old || old.MaterialId == solvent.Id ? null
            : new($"With {solvent.Name}", lines, [.. lines.Select(l => l == old ? l with { MaterialId = solvent.Id } : l)]);
    }

    /// <summary>The line of the main solvent; null where there is none.</summary>
    public static LineRow? Solvent(IReadOnlyList<LineRow> lines, IReadOnlyDictionary<Guid, LineMaterial> materials)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return Largest(lines.Where(l => IsSolvent(materials[l.MaterialId].Kind)));
    }

    private static LineRow? Carrier(LineRow[] lines, IReadOnlyDictionary<Guid, LineMaterial> materials) =>
        Carriers.Select(kind => Largest(lines.Where(l => materials[l.MaterialId].Kind == kind))).FirstOrDefault(l => l is not null);

    /// <summary>"The rest" counts as the largest.</summary>
    private static LineRow? Largest(IEnumerable<LineRow> lines) => lines.MaxBy(l => l.Amount ?? decimal.MaxValue);
}
