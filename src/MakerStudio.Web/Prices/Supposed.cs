using System.Globalization;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Prices;

/// <summary>What may be supposed to change.</summary>
public enum SupposedKind
{
    Price,
    Load,
    Yield,
    Fee,
    Labour,
}

/// <summary>A change as it is typed, and what it does to every product.</summary>
public sealed class Supposed
{
    public SupposedKind Kind { get; set; }

    /// <summary>Begins from each product as it was filled last, where it was; else from today's purchase prices.</summary>
    public bool FromLastFilling { get; set; }
    public Guid? MaterialId { get; set; }

    /// <summary>Dearer by so many per cent, below zero cheaper.</summary>
    public decimal? PriceByPercent { get; set; } = 18m;

    /// <summary>Null for every product.</summary>
    public Guid? ProductId { get; set; }
    public decimal? Percent { get; set; }
    public Guid? ChannelId { get; set; }
    public decimal? FeePercent { get; set; }
    public decimal? PerHour { get; set; }

    /// <summary>Null while something is missing.</summary>
    public SupposedChange? Change(IReadOnlyList<ChannelRow> channels) => Kind switch
    {
        SupposedKind.Price when MaterialId is { } material && PriceByPercent is >= -100 and var by => new SupposedChange.PriceBy(material, by / 100m),
        SupposedKind.Load when Percent is >= 0 and <= 100 => new SupposedChange.LoadTo(ProductId, Percent.Value / 100m),
        SupposedKind.Yield when Percent is > 0 and <= 100 => new SupposedChange.YieldTo(ProductId, Percent.Value / 100m),
        SupposedKind.Fee when channels.FirstOrDefault(c => c.Id == ChannelId) is { } channel && FeePercent is >= 0 and <= 100 => Fee(channel.Is, FeePercent.Value / 100m),
        SupposedKind.Labour when PerHour is >= 0 => new SupposedChange.LabourRateTo(PerHour.Value),
        _ => null,
    };

    /// <summary>The first fee of the channel at another rate, or a new one.</summary>
    private static SupposedChange.FeeTo Fee(Channel channel, decimal rate) =>
        new(channel.Name, channel.Fees.Count > 0 ? channel.Fees[0] with { Rate = rate } : new ChannelFee("Fee", rate, 0m, FeeBasis.Paid));

    /// <summary>To stand behind an address, so that the file shows what the page shows.</summary>
    public string Query => QueryString.Create(
        new (string Name, object? Value)[]
        {
            ("kind", Kind), ("from", FromLastFilling ? "filling" : null), ("material", MaterialId), ("by", PriceByPercent), ("product", ProductId), ("percent", Percent),
            ("channel", ChannelId), ("fee", FeePercent), ("hour", PerHour),
        }.Where(typed => typed.Value is not null).Select(typed => KeyValuePair.Create(typed.Name, (string?)string.Format(CultureInfo.InvariantCulture, "{0}", typed.Value)))).ToString();

    internal static Supposed Of(SheetAsked asked) => new()
    {
        Kind = Enum.TryParse<SupposedKind>(asked.Query("kind"), out var kind) ? kind : default, MaterialId = asked.QueryId("material"), PriceByPercent = asked.QueryNumber("by"), FromLastFilling = asked.Query("from") == "filling",
        ProductId = asked.QueryId("product"), Percent = asked.QueryNumber("percent"), ChannelId = asked.QueryId("channel"), FeePercent = asked.QueryNumber("fee"),
        PerHour = asked.QueryNumber("hour"),
    };

    public IReadOnlyList<ProductEffect> Effects(PriceView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return Change(view.Channels) is { } change ? WhatIf.Of([.. Plans(view)], [change], view.Rules.Rounding) : [];
    }

    /// <summary>Products that can be costed, each as it is begun from.</summary>
    public IEnumerable<ProductPlan> Plans(PriceView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return view.Products.Select(p => FromLastFilling ? p.LastFill ?? p.Plan : p.Plan).OfType<ProductPlan>();
    }
}
