using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Formulation;

/// <summary>The newest released version of a formula that makes a material.</summary>
internal sealed record Maker
{
    public Guid Makes { get; init; }
    public Guid VersionId { get; init; }
}

/// <summary>Which materials are made here, and from what.</summary>
internal static class MadeOf
{
    public static IQueryable<Maker> NewestReleased(StudioDb db) => db.Formulas
        .Where(f => f.MakesMaterialId != null && f.Versions.Any(v => v.State == FormulaState.Released))
        .Select(f => new Maker
        {
            Makes = f.MakesMaterialId!.Value,
            VersionId = f.Versions.Where(v => v.State == FormulaState.Released).OrderByDescending(v => v.Number).First().Id,
        });

    /// <summary>
    /// The names along the way by which a formula would consume what it makes, or null: the line's material, then what
    /// that is made of. Read while <see cref="LockAsync"/> is held, so that two releases cannot close a ring together.
    /// </summary>
    /// <param name="makes">What the formula makes.</param>
    /// <param name="uses">The materials of its lines.</param>
    public static async Task<IReadOnlyList<string>?> WayBackAsync(StudioDb db, Guid makes, IEnumerable<Guid> uses, Guid ownFormula, CancellationToken cancel)
    {
        var own = db.Formulas.Where(f => f.Id == ownFormula).SelectMany(f => f.Versions).Select(v => v.Id);
        var edges = await NewestReleased(db)
            .Where(m => !own.Contains(m.VersionId))
            .SelectMany(m => db.FormulaLines.Where(l => l.FormulaVersionId == m.VersionId), (m, l) => new { Made = m.Makes, l.MaterialId })
            .ToListAsync(cancel);
        var into = edges.ToLookup(e => e.Made, e => e.MaterialId);
        var cameFrom = new Dictionary<Guid, Guid?>();
        var open = new Queue<Guid>();
        foreach (var use in uses.Distinct())
        {
            cameFrom[use] = null;
            open.Enqueue(use);
        }

        while (open.TryDequeue(out var at))
        {
            if (at == makes)
            {
                return await NamesAsync(db, Way(cameFrom, at), cancel);
            }

            foreach (var next in into[at].Where(next => cameFrom.TryAdd(next, at)))
            {
                open.Enqueue(next);
            }
        }

        return null;
    }

    /// <summary>One release of a pre-blend at a time, until the transaction ends.</summary>
    public static Task LockAsync(StudioDb db, CancellationToken cancel) =>
        db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext('pre-blends'))", cancel);

    private static List<Guid> Way(Dictionary<Guid, Guid?> cameFrom, Guid end)
    {
        var way = new List<Guid>();
        for (Guid? at = end; at is { } step; at = cameFrom[step])
        {
            way.Insert(0, step);
        }

        return way;
    }

    private static async Task<IReadOnlyList<string>> NamesAsync(StudioDb db, List<Guid> way, CancellationToken cancel)
    {
        var names = await db.Materials.Where(m => way.Contains(m.Id)).ToDictionaryAsync(m => m.Id, m => m.Name, cancel);
        return [.. way.Select(id => names[id])];
    }
}
