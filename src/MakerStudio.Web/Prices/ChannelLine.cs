using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Prices;

/// <summary>What one unit of a product brings in a channel; nothing is rounded but the lowest safe tag.</summary>
/// <param name="Unit">Null without a tag there.</param>
/// <param name="Safe">The lowest tag that pays cost, fees and the contribution wanted; null where none does.</param>
internal sealed record ChannelLine(ChannelRow Channel, decimal UnitCost, PricedUnit? Unit, PriceResult.Found? Safe)
{
    public decimal? LowestSafe => Safe?.Tag;

    public decimal? FeesAndSale => Unit?.Fees.Sum(f => f.Amount) + Channel.Is.CostPerUnit;

    /// <summary>What the contribution lacks of what is wanted; 0 or less where it is reached.</summary>
    public decimal? ShortBy => Channel.Wanted - Unit?.Contribution;

    public static IReadOnlyList<ChannelLine> Of(PriceView view, ProductRow product, decimal unitCost) =>
    [
        .. view.Channels.Select(channel => new ChannelLine(
            channel, unitCost,
            product.Tags.FirstOrDefault(t => t.ChannelId == channel.Id) is { } tag ? Pricing.At(tag.Amount, unitCost, channel.Is) : null,
            TargetPrice.Of(unitCost, new PriceTarget.Contribution(channel.Wanted), channel.Is, view.Rules.Rounding) as PriceResult.Found)),
    ];
}
