namespace MakerStudio.Core.Prices;

/// <summary>What a saleable unit cost from a day on.</summary>
/// <param name="From">Its filling's code.</param>
public sealed record CostFromDay(DateOnly Day, decimal UnitCost, string From);

/// <summary>What was asked in a channel from a day on; null where it was no longer sold there.</summary>
public sealed record TagFromDay(Guid ChannelId, DateOnly Day, decimal? Tag);

/// <summary>How a channel stood from a day on: its tax, its fees, its part of the net.</summary>
public sealed record TermsFromDay(Guid ChannelId, DateOnly Day, Channel Channel);

/// <summary>A channel as it stood at the end of a day on which something changed.</summary>
/// <param name="CostFrom">The filling the cost is from.</param>
public sealed record MarginOnDay(Guid ChannelId, DateOnly Day, string CostFrom, PricedUnit Unit)
{
    /// <summary>A fraction before fees; null when nothing is asked.</summary>
    public decimal? Margin => Unit.Margin;
}

/// <summary>Margins as they stood: at every day the cost, the tag or the channel changed, with what was so on that day.</summary>
public static class MarginOverTime
{
    /// <summary>
    /// One row for each channel and each day on which anything of it changed, and one for today; none before all three
    /// are known and none while it was not sold there. Later entries of one day count, in the order given.
    /// </summary>
    /// <param name="terms">A channel's first terms also hold for the time before them: nothing older is known.</param>
    public static IReadOnlyList<MarginOnDay> Of(
        IReadOnlyList<CostFromDay> costs, IReadOnlyList<TagFromDay> tags, IReadOnlyList<TermsFromDay> terms, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(tags);
        ArgumentNullException.ThrowIfNull(terms);
        return [.. terms.Select(t => t.ChannelId).Distinct().SelectMany(id => OfChannel(
            id, costs, [.. tags.Where(t => t.ChannelId == id)], [.. terms.Where(t => t.ChannelId == id)], today))];
    }

    private static IEnumerable<MarginOnDay> OfChannel(
        Guid id, IReadOnlyList<CostFromDay> costs, IReadOnlyList<TagFromDay> tags, IReadOnlyList<TermsFromDay> terms, DateOnly today)
    {
        var days = costs.Select(c => c.Day).Concat(tags.Select(t => t.Day)).Concat(terms.Select(t => t.Day)).Append(today);
        foreach (var day in days.Where(d => d <= today).Distinct().Order())
        {
            if (Last(costs, c => c.Day, day) is { } cost && Last(tags, t => t.Day, day) is { Tag: { } tag })
            {
                var channel = Last(terms, t => t.Day, day) ?? terms.MinBy(t => t.Day)!;
                yield return new MarginOnDay(id, day, cost.From, Pricing.At(tag, cost.UnitCost, channel.Channel));
            }
        }
    }

    /// <summary>The last entry of the latest day that had come.</summary>
    private static T? Last<T>(IReadOnlyList<T> entries, Func<T, DateOnly> dayOf, DateOnly day)
        where T : class
    {
        T? found = null;
        foreach (var entry in entries)
        {
            if (dayOf(entry) <= day && (found is null || dayOf(entry) >= dayOf(found)))
            {
                found = entry;
            }
        }

        return found;
    }
}
