using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Prices;

/// <summary>Prices as these pages say them.</summary>
internal static class PriceWords
{
    /// <summary>"Tag 22.27, or load 11.1 %": what brings a margin back; null where nothing does.</summary>
    public static string? WayBack(MarginAlert alert)
    {
        var ways = new List<string>();
        if (alert.RestoringTag is PriceResult.Found found)
        {
            ways.Add($"tag {Written.Money(found.Tag)}");
        }

        if (alert.Load is LoadAnswer.Restores restores)
        {
            ways.Add($"load {Written.Percent(restores.Load)} % w/w");
        }

        return ways.Count == 0 ? null : string.Join(", or ", ways);
    }

    /// <summary>What stock is written down by, in a column.</summary>
    public static string Down(decimal amount) => amount == 0 ? "–" : Written.Money(amount);

    public static string Margin(decimal? fraction) => fraction is { } known ? $"{Written.Percent(known)} %" : "–";

    /// <summary>"2.9 % + 0.30, 6.5 %, 0.55 a sale, 60 % of the net is ours".</summary>
    public static string Terms(Channel channel)
    {
        var terms = channel.Fees.Select(f => f.Fixed == 0 ? $"{Written.AsStated(100 * f.Rate)} %" : f.Rate == 0 ? Written.Money(f.Fixed) : $"{Written.AsStated(100 * f.Rate)} % + {Written.Money(f.Fixed)}").ToList();
        if (channel.CostPerUnit != 0)
        {
            terms.Add($"{Written.Money(channel.CostPerUnit)} a sale");
        }

        if (channel.OurShare != 1m)
        {
            terms.Add($"{Written.AsStated(100 * channel.OurShare)} % of the net is ours");
        }

        return terms.Count == 0 ? "no fees" : string.Join(", ", terms);
    }

    public static string Tax(SalesTax tax) =>
        tax.Rate == 0 ? "no tax" : $"{Written.AsStated(100 * tax.Rate)} % {(tax.Basis == TaxBasis.InTag ? "in the tag" : "added at the till")}";
}
