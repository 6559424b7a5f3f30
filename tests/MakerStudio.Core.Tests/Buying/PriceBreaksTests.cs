using MakerStudio.Core.Buying;

namespace MakerStudio.Core.Tests.Buying;

public class PriceBreaksTests
{
    // Own sums, all per kg: 1 kg lands at 80 + 12, 5 kg at 62 + 2.40 + 4.03, 25 kg at 52 + 1.60 + 3.38.
    private static readonly Offer[] Offers =
    [
        new("25 kg", 25m, 1300.00m, 40.00m, 84.50m),
        new("1 kg", 1m, 80.00m, 12.00m),
        new("5 kg", 5m, 330.00m, 12.00m, 20.15m, 0m, 20.00m),
    ];

    [Fact]
    public void Compare_AtLandedCost_SmallestFirst()
    {
        var compared = PriceBreaks.Compare(Offers, 0.5m, 0.05m);
        Assert.Equal(["1 kg", "5 kg", "25 kg"], compared.Offers.Select(o => o.Offer.Name));
        Assert.Equal([92.00m, 68.43m, 56.98m], compared.Offers.Select(o => o.UnitCost));
        Assert.Equal([0m, 250.15m, 1332.50m], compared.Offers.Select(o => o.TiedUp));
        Assert.Equal(5m * 92m - 342.15m, compared.Offers[1].Saves);
        Assert.Equal(30m, compared.Offers[0].CoverDays);
        Assert.Equal(510m / 30.4375m, compared.Offers[2].CoverMonths);
        Assert.Equal("25 kg", compared.Cheapest!.Offer.Name);
    }

    [Fact]
    public void Compare_WhatOutlastsItsLife_IsNotTheCheapest()
    {
        var compared = PriceBreaks.Compare(Offers, 0.5m, 0.05m, lifeDays: 365);
        Assert.Equal([false, false, true], compared.Offers.Select(o => o.OutlastsLife));
        Assert.Equal("5 kg", compared.Cheapest!.Offer.Name);
        Assert.Null(PriceBreaks.Compare(Offers, 0.5m, 0m, lifeDays: 365).Cheapest);
        Assert.Null(PriceBreaks.Compare(Offers, 0.5m, 0m).Offers[0].CoverMonths);
    }

    // Own sums: 140 for 19.75 kg is 7.0886… a kg; 158 kg at that are 1,120.00.
    [Fact]
    public void Compare_UnitCostWithoutEnd_SavesWholeCents()
    {
        var compared = PriceBreaks.Compare([new("25 L", 19.75m, 134m, 6m), new("200 L", 158m, 920m, 48m)], 0m, 1m);

        Assert.Equal([0m, 152m], compared.Offers.Select(o => o.Saves));
    }

    [Fact]
    public void Compare_BadOffers_Throw()
    {
        Assert.Throws<ArgumentException>(() => PriceBreaks.Compare([], 0m, 1m));
        Assert.Throws<ArgumentException>(() => PriceBreaks.Compare([new("none", 0m, 1m)], 0m, 1m));
    }

    [Fact]
    public void Totals_RoundEachLineAndTheTaxOnce()
    {
        // Own sums: 3 × 1.335 is 4.005, printed 4.01; 2.5 × 10 less 10 % is 22.50.
        var totals = PurchaseOrders.Totals([new("Wick", 3m, 1.335m), new("Wax", 2.5m, 10m, 0.10m)], 7.50m, 0.20m);
        Assert.Equal([4.01m, 22.50m], totals.Lines);
        Assert.Equal((26.51m, 7.50m, 6.80m, 40.81m), (totals.Goods, totals.Freight, totals.Tax, totals.Total));
        Assert.Equal(43m, PurchaseOrders.Totals([new("Wick", 3m, 14.3m)], 0m, 0m, 0).Total);
    }

    [Fact]
    public void Problems_SayWhatToMend()
    {
        Assert.Equal(
            ["Wick: order more than nothing.", "Wick: the price is below zero.", "Wick: a discount is between 0 % and 100 %.", "Freight is below zero.", "Tax is between 0 % and 100 %."],
            PurchaseOrders.Problems([new("Wick", 0m, -1m, 2m)], -1m, 2m));
        Assert.Equal(["The order has no lines."], PurchaseOrders.Problems([], 0m, 0m));
        Assert.Throws<ArgumentException>(() => PurchaseOrders.Totals([], 0m, 0m));
    }

    [Fact]
    public void Outstanding_NeverBelowZero()
    {
        Assert.Equal(2m, PurchaseOrders.Outstanding(5m, [1m, 2m]));
        Assert.Equal(0m, PurchaseOrders.Outstanding(5m, [6m]));
    }
}
