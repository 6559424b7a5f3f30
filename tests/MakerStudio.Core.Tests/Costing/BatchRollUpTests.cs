using System.Globalization;
using MakerStudio.Core.Costing;

namespace MakerStudio.Core.Tests.Costing;

public class BatchRollUpTests
{
    private static readonly Guid Fragrance = Guid.NewGuid(), Alcohol = Guid.NewGuid(), Dpg = Guid.NewGuid(), Bottle = Guid.NewGuid(), Rest = Guid.NewGuid();

    /// <summary>Own worked example W2; sprayer, label and carton as one part.</summary>
    internal static readonly BatchInputs W2 = new(
        [
            new(Fragrance, "Fragrance", "P-1", 0.300m, 67.374m), new(Fragrance, "Fragrance", "P-2", 0.180m, 71.90m),
            new(Alcohol, "Alcohol", "P-3", 3.320m, 8.644m), new(Dpg, "DPG", "P-4", 0.200m, 11.20m),
        ],
        [new(Bottle, "Bottle", "P-5", 48, 0.8648m), new(Rest, "Sprayer, label, carton", "P-6", 48, 0.97m)],
        130m, 18.00m, 9.00m, 0.15m, 48, 1, 1, 3.940m, 3.936m);

    private static readonly PlannedBatch Plan = new(
        [
            new(new(CostKind.Material, Fragrance), "Fragrance", 0.480m, 67.374m), new(new(CostKind.Material, Alcohol), "Alcohol", 3.320m, 8.644m),
            new(new(CostKind.Material, Dpg), "DPG", 0.200m, 11.20m),
            new(new(CostKind.Packaging, Bottle), "Bottle", 1, 0.8648m, true), new(new(CostKind.Packaging, Rest), "Sprayer, label, carton", 1, 0.97m, true),
            new(new(CostKind.Labour), "Labour", 130m, 18m / 60m), new(new(CostKind.OverheadOfBatch), "Overhead of the batch", 1m, 9.00m),
            new(new(CostKind.OverheadOfUnits), "Overhead of units filled", 1m, 0.15m, true),
        ],
        48, 47);

    [Fact]
    public void Of_W2_OpensEachLotsShare()
    {
        var sheet = BatchRollUp.Of(W2);
        Assert.Equal(207.36268m, sheet.Total);
        Assert.Equal((0m, 207.36268m, 46), (sheet.Expensed, sheet.InStock, sheet.Saleable));
        Assert.Equal(4.3201m, Math.Round(sheet.PerFilled!.Value, 4));
        Assert.Equal(4.5079m, Math.Round(sheet.PerSaleable!.Value, 4));
        var lot = sheet.Lines[1];
        Assert.Equal(("P-2", 12.942m), (lot.Lot, lot.Cost));
        Assert.Equal(12.942m / 46m, lot.PerSaleable);
        Assert.Equal(12.942m / 48m, lot.PerFilled);
        Assert.Equal(207.36268m, sheet.Lines.Sum(l => l.Cost));
        Assert.Equal(1m, Math.Round(sheet.Lines.Sum(l => l.Share), 20));
        Assert.Equal(sheet.PerSaleable.Value, sheet.Lines.Sum(l => l.PerSaleable!.Value), 20);
    }

    [Fact]
    public void Of_W2_NamesTheLossTheBottlesCarry()
    {
        // Own sums: 64 g of 4,000 g of 64.09228; two units at 4.3201.
        var loss = BatchRollUp.Of(W2).Loss;
        Assert.Equal(64.09228m * 64m / 4000m, loss.Bulk);
        Assert.Equal(8.6401m, Math.Round(loss.Units, 4));
    }

    [Fact]
    public void Of_AFallenTray_IsExpensed_AndTheOthersCostNoMore()
    {
        var sheet = BatchRollUp.Of(W2 with { AbnormalUnits = 6 });
        Assert.Equal(40, sheet.Saleable);
        Assert.Equal(BatchRollUp.Of(W2).PerSaleable, sheet.PerSaleable);
        Assert.Equal(27.047306m, Math.Round(sheet.Expensed, 6));
        Assert.Equal(sheet.Total, sheet.InStock + sheet.Expensed);
    }

    [Fact]
    public void Of_BulkSpilled_IsExpensedAtTheCostOfGoodBulk()
    {
        // Own sums: 394 g lost beside 3,546 g that reached filling, a tenth of what should have.
        var sheet = BatchRollUp.Of(W2 with { AbnormalQuantity = 0.394m, ToFilling = 3.546m, Filled = 43, InUnits = 3.526m });
        Assert.Equal(6.409228m, sheet.Expensed);
        Assert.Equal(sheet.PerSaleable!.Value, sheet.Lines.Sum(l => l.PerSaleable!.Value), 9);
        Assert.Contains(sheet.Workings, w => w.Says(CultureInfo.InvariantCulture) == "Abnormal loss of 0.394 of the bulk: 6.4092 is expensed.");
    }

    [Fact]
    public void Of_NotFilledYet_StandsInWorkInProgress()
    {
        var sheet = BatchRollUp.Of(W2 with { Filled = 0, Rejected = 0, Retained = 0, Packaging = [], ToFilling = null, InUnits = 0 });
        Assert.Equal(sheet.Total, sheet.InStock);
        Assert.Null(sheet.PerFilled);
        Assert.Null(sheet.PerSaleable);
        Assert.Equal(0m, sheet.Loss.Bulk);
    }

    [Fact]
    public void Of_AllFilledAndNothingLeft_AllIsExpensed()
    {
        var sheet = BatchRollUp.Of(W2 with { AbnormalUnits = 46 });
        Assert.Equal((sheet.Total, 0m), (sheet.Expensed, sheet.InStock));
        Assert.Null(sheet.PerSaleable);
    }

    [Fact]
    public void Of_MoreLostThanThereWas_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BatchRollUp.Of(W2 with { AbnormalUnits = 47 }));

    [Fact]
    public void Variance_SplitsByReason()
    {
        // Own sums. Price: 0.18 kg of fragrance at 71.90 instead of 67.374. Yield: planned 47 of 48, sold 46.
        var variance = BatchVariance.Of(Plan, BatchRollUp.Of(W2));
        Assert.Equal(0.18m * (71.90m - 67.374m), variance.Price);
        Assert.Equal(0m, variance.Quantity);
        var planned = 207.36268m - variance.Price;
        Assert.Equal(planned / 47m, variance.PlannedEach);
        Assert.Equal(planned / 47m, variance.Yield, 9);
        Assert.Equal(variance.Difference, variance.Price + variance.Quantity + variance.Yield - variance.Abnormal);
        Assert.Equal(4.5079m, Math.Round(variance.ActualEach!.Value, 4));
    }

    [Fact]
    public void Variance_MoreMinutes_UnplannedMaterial_AndOneLeftOut_AreQuantity()
    {
        var other = Guid.NewGuid();
        var actual = BatchRollUp.Of(W2 with { LabourMinutes = 150m, Materials = [W2.Materials[0] with { Quantity = 0.480m }, W2.Materials[2], new(other, "Benzyl benzoate", "P-9", 0.2m, 15m)] });
        var variance = BatchVariance.Of(Plan, actual);
        Assert.Equal(0m, variance.Price);
        Assert.Equal(20m * 0.30m + 3.00m - 2.24m, variance.Quantity);
        Assert.Equal(3.00m, variance.Lines.Single(l => l.Label == "Benzyl benzoate").Quantity);
        Assert.Equal(-2.24m, variance.Lines.Single(l => l.Label == "DPG").Quantity);
    }

    [Fact]
    public void Variance_FewerFilled_IsYield_NotABottleSaved()
    {
        var variance = BatchVariance.Of(Plan, BatchRollUp.Of(W2 with
        {
            Filled = 44, Packaging = [W2.Packaging[0] with { Quantity = 44 }, W2.Packaging[1] with { Quantity = 44 }],
        }));
        Assert.Equal(0m, variance.Quantity);
        Assert.True(variance.Yield > 0);
    }

    [Fact]
    public void Spread_ALateReceipt_S10()
    {
        // Own worked example: 180 g of fragrance at 70.00 instead of 67.37 a kg. Of 46, 10 sold and 2 given away.
        var change = 0.180m * (70.00m - 67.37m);
        Assert.Equal(0.4734m, change);
        var shares = Recost.Spread(change, 34, 10, 2);
        Assert.Equal(change, shares.InStock + shares.Sold + shares.Expensed);
        Assert.Equal(0.3499m, Math.Round(shares.InStock, 4));
        var back = Recost.Spread(-change, 34, 10, 2);
        Assert.Equal((-shares.InStock, -shares.Sold, -shares.Expensed), (back.InStock, back.Sold, back.Expensed));
        Assert.Equal(new RecostShares(0m, 0m, change), Recost.Spread(change, 0, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Recost.Spread(change, 0, 0, 0));
    }
}
