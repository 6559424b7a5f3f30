using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Prices;

/// <summary>Margins over time as they are drawn and said.</summary>
internal static class MarginWords
{
    /// <summary>More lines than these are not told apart; the table has all.</summary>
    public const int MostLines = 4;

    public const string AsSold = "as sold";

    /// <summary>For the table and its file, newest first: days on which something changed; today's row is in the drawing only, unless it did.</summary>
    public static IEnumerable<MarginRow> Changes(MarginHistory history) => history.Stood.GroupBy(m => m.ChannelId)
        .SelectMany(g => g.Where((m, i) => i == 0 || m with { Day = default } != g.ElementAt(i - 1) with { Day = default })).OrderByDescending(m => m.Day).ThenBy(m => m.Channel);

    /// <summary>Per cent by day: a line for each channel, and a mark alone for each day's sales.</summary>
    public static IReadOnlyList<DayPoint> Points(MarginHistory history) =>
    [
        .. Lines(history).Take(MostLines).SelectMany(line => line.Rows.Select(m => new DayPoint(m.Day, Percent(m.Margin!.Value), line.Name))),
        .. history.Sold.Where(s => s.Margin is not null).Select(s => new DayPoint(s.Day, Percent(s.Margin!.Value), AsSold, IsAlone: true)),
    ];

    /// <summary>"Web shop: 76.3 %, 0.9 points up since 10 Nov 2026. …"; one sentence a line, then the sales.</summary>
    public static string Says(MarginHistory history, decimal? floor)
    {
        var (revenue, cost) = (history.Sold.Sum(s => s.Revenue), history.Sold.Sum(s => s.Cost));
        var sold = history.Sold.Count == 0 ? "Nothing of it was sold yet."
            : $"As sold: {PriceWords.Margin(Core.Prices.Margins.Margin(revenue, cost))} over {Written.Count(history.Sold.Sum(s => s.Units))} units since {Written.Day(history.Sold[0].Day)}.";
        return string.Join(" ", [.. Lines(history).Select(l => Of(l.Name, l.Rows, floor)), sold]);
    }

    /// <summary>Channels whose margin was the same on the same days are one line with both names.</summary>
    private static IEnumerable<(string Name, List<MarginRow> Rows)> Lines(MarginHistory history) => history.Stood.Where(m => m.Margin is not null)
        .GroupBy(m => m.ChannelId).Select(g => g.ToList())
        .GroupBy(rows => string.Join('|', rows.Select(r => $"{r.Day:O} {r.Margin} {r.IsOwn}")))
        .Select(same => (string.Join(", ", same.Select(rows => rows[0].Channel)), same.First()));

    private static string Of(string name, List<MarginRow> rows, decimal? floor)
    {
        var (first, last) = (rows[0], rows[^1]);
        var change = Math.Round(Percent(last.Margin!.Value), 1) - Math.Round(Percent(first.Margin!.Value), 1);
        var moved = first.Day == last.Day ? "" : change == 0 ? $", as on {Written.Day(first.Day)}" : $", {Written.AsStated(Math.Abs(change))} points {(change > 0 ? "up" : "down")} since {Written.Day(first.Day)}";
        return $"{name}: {Written.Percent(last.Margin.Value)} %{moved}{(IsUnder(last, floor) ? $", under its floor of {Written.Percent(floor!.Value)} %" : "")}.";
    }

    /// <summary>A floor watches what we sell ourselves.</summary>
    public static bool IsUnder(MarginRow row, decimal? floor) => row.IsOwn && row.Margin < floor;

    private static decimal Percent(decimal fraction) => Math.Round(100m * fraction, 2);
}
