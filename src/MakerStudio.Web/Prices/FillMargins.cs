using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Prices;

/// <summary>The margin at each filling under the tag that stood then.</summary>
internal static class FillMargins
{
    private const int MostChannels = 3;

    /// <summary>Channels of our own that ever had a tag, the first three.</summary>
    public static IEnumerable<ChannelRow> Own(PriceView view, IReadOnlyList<TagEntry> tags) =>
        view.Channels.Where(c => c.IsOwn && tags.Any(t => t.ChannelId == c.Id)).Take(MostChannels);

    /// <summary>Under the newest tag entered before the filling, else the first there was; null without a cost or a tag.</summary>
    public static decimal? At(FillHistoryRow fill, ChannelRow channel, IReadOnlyList<TagEntry> tags)
    {
        var here = tags.Where(t => t.ChannelId == channel.Id).OrderBy(t => t.At).ToList();
        var tag = here.LastOrDefault(t => t.At <= fill.At) ?? here.FirstOrDefault();
        return fill.PerSaleable is { } cost && tag?.Amount is { } amount ? Pricing.At(amount, cost, channel.Is).Margin : null;
    }
}
