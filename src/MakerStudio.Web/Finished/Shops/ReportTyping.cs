using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Finished.Shops;

/// <summary>What is typed of one batch in a shop's report.</summary>
public sealed class ReportLine
{
    /// <summary>Money is paid in coins; what a unit cost is not.</summary>
    private const int Coins = 2;

    public required HeldRow Held { get; set; }
    public decimal? Sold { get; set; }
    public decimal? Broken { get; set; }
    public decimal? SentBack { get; set; }
    public decimal? Left { get; set; }
    public decimal? NetPrice { get; set; }
    public decimal? Commission { get; set; }
    public decimal? PaidPerBroken { get; set; }

    public bool IsTold => Sold is not null || Broken is not null || SentBack is not null || Left is not null;

    /// <summary>What it comes to; null while the counts do not meet.</summary>
    public ConsignmentResult.Settled? Settled => IsTold && Commission is >= 0 and < 100 && NetPrice is >= 0 && PaidPerBroken is null or >= 0
        && Sold is null or >= 0 && Broken is null or >= 0 && SentBack is null or >= 0 && Left is null or >= 0
        ? Consignment.Settle(Held.Goods.Count, new ConsignmentTerms(NetPrice ?? 0, (Commission ?? 0) / 100m, PaidPerBroken ?? 0), new ShopReport((int)(Sold ?? 0), (int)(Broken ?? 0), (int)(SentBack ?? 0), (int?)Left)) as ConsignmentResult.Settled
        : null;

    public static ReportLine Of(HeldRow held, PlaceRow place)
    {
        ArgumentNullException.ThrowIfNull(held);
        ArgumentNullException.ThrowIfNull(place);
        return new ReportLine
        {
            Held = held, NetPrice = held.NetPrice, Commission = held.CommissionPercent,
            PaidPerBroken = place.PaysBroken && held.Goods.UnitCost is { } cost ? decimal.Round(cost, Coins, MidpointRounding.AwayFromZero) : 0m,
        };
    }

    public ShopReported Request() => new()
    {
        BatchId = Held.Goods.BatchId, Sold = (int)(Sold ?? 0), Broken = (int)(Broken ?? 0), SentBack = (int)(SentBack ?? 0), Left = (int?)Left,
        NetPrice = NetPrice ?? 0, CommissionPercent = Commission ?? 0, PaidPerBroken = PaidPerBroken ?? 0,
    };
}
