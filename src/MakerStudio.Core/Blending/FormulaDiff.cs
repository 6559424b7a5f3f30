namespace MakerStudio.Core.Blending;

/// <summary>A line of a formula version, in order of addition, for comparing versions.</summary>
/// <param name="Key">What makes it the same line in both versions: its material.</param>
/// <param name="Percent">Per cent by weight as shown.</param>
public sealed record VersionLine(Guid Key, string Name, decimal Percent);

/// <summary>One difference between two versions. Positions count from 1.</summary>
public abstract record LineChange(Guid Key, string Name)
{
    public sealed record Added(Guid Key, string Name, decimal Percent, int Position) : LineChange(Key, Name);

    public sealed record Removed(Guid Key, string Name, decimal Percent, int Position) : LineChange(Key, Name);

    /// <summary>The share by weight went from one per cent to another.</summary>
    public sealed record Amount(Guid Key, string Name, decimal From, decimal To) : LineChange(Key, Name);

    /// <summary>Its place in the order of addition changed beyond what added and removed lines account for.</summary>
    public sealed record Moved(Guid Key, string Name, int From, int To) : LineChange(Key, Name);
}

public static class FormulaDiff
{
    /// <summary>
    /// The changes from one version to the next: removed lines in their old order, then the new version's lines in
    /// theirs. A material on several lines is paired first with first, second with second.
    /// </summary>
    public static IReadOnlyList<LineChange> Between(IReadOnlyList<VersionLine> before, IReadOnlyList<VersionLine> after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var wasAt = Occurrences(before).Select((key, i) => (key, i)).ToDictionary(pair => pair.key, pair => pair.i);
        (Guid, int)[] now = Occurrences(after);
        int?[] cameFrom = now.Select(key => wasAt.TryGetValue(key, out int i) ? i : (int?)null).ToArray();
        HashSet<int> kept = cameFrom.OfType<int>().ToHashSet();
        HashSet<int> inPlace = LongestRising(cameFrom.OfType<int>().ToArray());

        IEnumerable<LineChange> removed = before
            .Select((line, i) => (line, i))
            .Where(pair => !kept.Contains(pair.i))
            .Select(pair => new LineChange.Removed(pair.line.Key, pair.line.Name, pair.line.Percent, pair.i + 1));
        IEnumerable<LineChange> rest = after.SelectMany((line, i) => cameFrom[i] is { } old
            ? Changes(before[old], old, line, i, inPlace)
            : [new LineChange.Added(line.Key, line.Name, line.Percent, i + 1)]);
        return removed.Concat(rest).ToArray();
    }

    private static IEnumerable<LineChange> Changes(VersionLine old, int oldAt, VersionLine line, int at, HashSet<int> inPlace)
    {
        if (old.Percent != line.Percent)
        {
            yield return new LineChange.Amount(line.Key, line.Name, old.Percent, line.Percent);
        }

        if (!inPlace.Contains(oldAt))
        {
            yield return new LineChange.Moved(line.Key, line.Name, oldAt + 1, at + 1);
        }
    }

    private static (Guid Key, int Occurrence)[] Occurrences(IReadOnlyList<VersionLine> lines)
    {
        var seen = new Dictionary<Guid, int>();
        return lines.Select(line =>
        {
            int occurrence = seen.GetValueOrDefault(line.Key);
            seen[line.Key] = occurrence + 1;
            return (line.Key, occurrence);
        }).ToArray();
    }

    /// <summary>The largest set of lines whose order is unchanged; every other line is the one that moved.</summary>
    private static HashSet<int> LongestRising(int[] places)
    {
        var length = new int[places.Length];
        var previous = new int[places.Length];
        int best = -1;
        for (int i = 0; i < places.Length; i++)
        {
            (length[i], previous[i]) = (1, -1);
            for (int j = 0; j < i; j++)
            {
                if (places[j] < places[i] && length[j] + 1 > length[i])
                {
                    (length[i], previous[i]) = (length[j] + 1, j);
                }
            }

            best = best < 0 || length[i] > length[best] ? i : best;
        }

        var rising = new HashSet<int>();
        for (int i = best; i >= 0; i = previous[i])
        {
            rising.Add(places[i]);
        }

        return rising;
    }
}
