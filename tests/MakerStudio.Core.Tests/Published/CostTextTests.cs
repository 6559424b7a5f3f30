using MakerStudio.Core.Costing;
using MakerStudio.Core.Prices;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Short published sums, each read where its test says.</summary>
public class CostTextTests
{
    /// <summary>
    /// An AAT practice question on IAS 2, read on the AAT members' forum ("Inventory IAS 2"): three products, cost to
    /// date, cost to complete and selling price; the inventory is 1,543.
    /// </summary>
    [Fact]
    public void LowerOfCostAndNetRealisableValue_ItemByItem()
    {
        (decimal Cost, decimal ToComplete, decimal Price)[] products = [(400m, 180m, 562m), (572m, 210m, 798m), (615m, 173m, 762m)];
        var carried = products.Select(p => NetRealisable.Of(1m, p.Cost, new(p.Price, p.ToComplete, 0m)).CarriedAt).ToList();
        Assert.Equal([382m, 572m, 589m], carried);
        Assert.Equal(1543m, carried.Sum());
    }

    /// <summary>Accountantskills, "Markup setting for product pricing": sold for 300, cost 200, markup 50 %.</summary>
    [Fact]
    public void Markup_OnCost()
    {
        Assert.Equal(0.50m, Margins.Markup(300m, 200m));
        Assert.Equal(300m, Margins.NetAtMarkup(200m, 0.50m));
    }

    /// <summary>
    /// Lumen Learning, Managerial Accounting, "Allocating Overhead Using ABC": a set-up pool of 28,200 over 47 batches;
    /// a batch of 80 carries 7.50 each. Its prose misprints the pool as 28,800.
    /// </summary>
    [Fact]
    public void OverheadOfABatch_OverItsUnits()
    {
        var sheet = BatchCost.Of([], [], 0m, 0m, 28_200m / 47m, 0m, 80, 0, 0);
        Assert.Equal(600m, sheet.Overhead);
        Assert.Equal(7.50m, sheet.PerSaleable);
    }
}
