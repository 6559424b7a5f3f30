using System.Globalization;
using MakerStudio.Core.Prices;

namespace MakerStudio.Core.Tests.Prices;

public class PricingTests
{
    [Fact]
    public void Margins_W3()
    {
        Assert.Equal(11.275m, Margins.NetAtMarkup(QuinceYard.Cost, 1.50m));
        Assert.Equal(0.60m, Margins.MarginOfMarkup(1.50m));
        Assert.Equal(12.89m, Math.Round(Margins.NetAtMargin(QuinceYard.Cost, 0.65m), 2));
        Assert.Equal((9.02m, 18.04m), Margins.Keystone(QuinceYard.Cost));
        Assert.Equal(0.375m, Margins.MarginOfMarkup(0.60m));
        Assert.Equal(1.5m, Margins.MarkupOfMargin(0.60m));
    }

    [Fact]
    public void At_TagWithTaxInIt_W3()
    {
        var unit = Pricing.At(22.00m, QuinceYard.Cost, QuinceYard.Direct);
        Assert.Equal(18.33m, Math.Round(unit.Net, 2));
        Assert.Equal(0.754m, Math.Round(unit.Margin!.Value, 3));
        Assert.Equal(3.065m, Math.Round(unit.Markup!.Value, 3));
        Assert.Equal(3.67m, Math.Round(unit.Tax, 2));
        Assert.Equal(22.00m, Math.Round(unit.Paid, 20));
    }

    [Fact]
    public void At_WholesaleAtHalfTheNet_W3()
    {
        var unit = Pricing.At(22.00m, QuinceYard.Cost, Channel.Wholesale("Shops", QuinceYard.Tax20));
        Assert.Equal(9.17m, Math.Round(unit.Revenue, 2));
        Assert.Equal(0.508m, Math.Round(unit.Margin!.Value, 3));
        Assert.Equal(unit.Revenue - QuinceYard.Cost, Math.Round(unit.Contribution, 20), 18);
    }

    [Fact]
    public void At_Consignment_KeepsWhatTheCommissionLeaves()
    {
        var unit = Pricing.At(22.00m, QuinceYard.Cost, Channel.Consignment("Corner shop", QuinceYard.Tax20, 0.40m));
        Assert.Equal(11.00m, Math.Round(unit.Revenue, 10));
    }

    [Fact]
    public void At_TaxAddedAtTheTill_TagIsNet_AndFeesAreChargedOnTaxToo()
    {
        var channel = new Channel("Fair", new SalesTax(0.08m, TaxBasis.AtTill), [new("Card", 0.02m, 0.10m, FeeBasis.Paid), new("Fair", 0.05m, 0, FeeBasis.Net)]);
        var unit = Pricing.At(20.00m, 5m, channel);
        Assert.Equal(20.00m, unit.Net);
        Assert.Equal(21.60m, unit.Paid);
        Assert.Equal([0.532m, 1.00m], unit.Fees.Select(f => f.Amount));
        Assert.Equal(13.468m, unit.Contribution);
    }

    [Fact]
    public void At_EveryNumber_IsInTheWorkings()
    {
        var said = Pricing.At(22.00m, QuinceYard.Cost, QuinceYard.Web).Workings.Select(w => w.Says(CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(
            [
                "Tag 22.00 ÷ 1.2: 18.3333 net.",
                "Payment: 2.9 % of 22.0000 and 0.30: 0.9380.",
                "Marketplace: 6.5 % of 22.0000 and 0.00: 1.4300.",
                "Each unit sold costs 0.55 more.",
                "18.3333 − fees 2.3680 − sale 0.55 − unit 4.5100: 10.9053 left.",
                "Margin (18.3333 − 4.5100) ÷ 18.3333: 75.4 % before fees.",
            ], said);
    }

    [Fact]
    public void At_ChannelOutOfRange_SaysWhy()
    {
        var channel = QuinceYard.Web with { OurShare = 0m };
        var error = Assert.Throws<ArgumentException>(() => Pricing.At(22m, 1m, channel));
        Assert.Equal("Web: our part of the net is above 0 % and at most 100 %.", error.Message);
        Assert.Equal(2, (channel with { CostPerUnit = -1m }).Problems().Count);
        Assert.Equal(["Web: Card is between 0 % and 100 %.", "Web: Card is below zero."],
            (QuinceYard.Web with { Fees = [new("Card", 1.1m, -1m, FeeBasis.Net)] }).Problems());
    }

    [Fact]
    public void At_NothingPaid_MarginIsUnknown()
    {
        var unit = Pricing.At(0m, 0m, QuinceYard.Direct);
        Assert.Null(unit.Margin);
        Assert.Null(unit.Markup);
        Assert.Null(unit.LeftOfRevenue);
    }
}
