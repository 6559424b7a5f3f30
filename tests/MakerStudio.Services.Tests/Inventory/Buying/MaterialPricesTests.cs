using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using static MakerStudio.Services.Tests.Inventory.ReceivingSeed;

namespace MakerStudio.Services.Tests.Inventory.Buying;

public class MaterialPricesTests
{
    private static readonly DateOnly October = new(2026, 10, 1);

    [Fact]
    public async Task View_DeliveriesOfTwoSuppliers_AreThereNewestFirstAtLandedCost()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil, density: 0.98m);
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        var (alder, mill) = (await studio.SupplierAsync(), await studio.SupplierAsync("Old Mill Scents"));
        var first = Invoice(alder, Line(oil, 5, AmountUnit.Kilogram, 310m), Line(wax, 10, AmountUnit.Kilogram, 58m));
        first.Freight = 36.80m;
        first.FreightBasis = Core.Costing.FreightBasis.Value;
        first.Lines[0].Discount = 10m;
        first.Lines[0].Duty = 20.15m;
        await PostAsync(studio, first);
        var second = Invoice(mill, Line(oil, 0.5m, AmountUnit.Litre, 31.36m));
        second.ReceivedOn = October;
        await PostAsync(studio, second);

        var view = (await studio.Get<MaterialPrices>().ViewAsync(oil))!;

        Assert.Equal(["D-2", "D-1"], view.Paid.Select(p => p.DeliveryCode));
        var (litre, can) = (view.Paid[0], view.Paid[1]);
        Assert.Equal(("Old Mill Scents", 0.5m, AmountUnit.Litre, 490_000L, 0.064m), (litre.Supplier, litre.QuantityTyped, litre.Unit, litre.Quantity, litre.UnitCost));
        // Freight by value: 300 of 358 is 30.84 of 36.80. 310 − 10 + 20.15 + 30.84 over 5,000 g.
        Assert.Equal((310m, 10m, 30.84m, 20.15m, 350.99m), (can.Price, can.Discount, can.FreightShare, can.Charges, can.LandedTotal));
        Assert.Equal(0.070198m, can.UnitCost);
        Assert.Equal((0.070198m, October), (view.Trend!.First.UnitCost, view.Trend.Last.On));
        Assert.Equal((litre.UnitCost, null), (view.Reckoned!.Value, view.Alert()));
    }

    [Fact]
    public async Task View_TakenBackDelivery_IsLeftOut()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var posted = await PostAsync(studio, Invoice(await studio.SupplierAsync(), Line(oil, 5, AmountUnit.Kilogram, 310m)));
        (await studio.Get<Deliveries>().TakeBackAsync(studio.Bo, new TakeBackDelivery { DeliveryId = posted.Id, Reason = "typed twice" })).Expect();

        var view = (await studio.Get<MaterialPrices>().ViewAsync(oil))!;

        Assert.Empty(view.Paid);
        Assert.Equal((null, null), ((object?)view.Trend, (object?)view.Alert()));
    }

    [Fact]
    public async Task View_ReceiptToFollow_IsAnEstimateUntilItIsMatched()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var version = await studio.ReleasedFormulaAsync("Fig", "room-spray-alcohol", (oil, 100m));
        await using (var db = studio.Db())
        {
            var line = new BatchLine { Position = 1, MaterialId = oil, MaterialName = "Fig fragrance oil", Fraction = 1, PlannedMilligrams = 180_000, TargetMilligrams = 180_000 };
            var batch = new Batch
            {
                Code = "RS-1", FormulaVersionId = version, ScentName = "Fig", VersionNumber = 1, ProductKind = "room-spray-alcohol", State = BatchState.Weighing,
                TargetMilligrams = 180_000, PlannedById = studio.Ana.PersonId, PlannedAt = studio.Clock.GetUtcNow(), Lines = { line },
            };
            db.Batches.Add(batch);
            await db.SaveChangesAsync();
            var weighing = new Weighing
            {
                BatchId = batch.Id, BatchLineId = line.Id, NetMilligrams = 180_000, UnitCost = 0.06737m, PersonId = studio.Bo.PersonId, At = studio.Clock.GetUtcNow(), RequestId = Guid.CreateVersion7(),
            };
            db.Weighings.Add(weighing);
            db.PendingReceipts.Add(new PendingReceipt
            {
                MaterialId = oil, BatchId = batch.Id, WeighingId = weighing.Id, Milligrams = 180_000, EstimatedUnitCost = 0.06737m, PersonId = studio.Bo.PersonId, At = studio.Clock.GetUtcNow(),
            });
            await db.SaveChangesAsync();
        }

        var view = (await studio.Get<MaterialPrices>().ViewAsync(oil))!;

        Assert.Equal(new EstimateRow("RS-1", new DateOnly(2026, 10, 26), 180_000, 0.06737m, null), Assert.Single(view.ToFollow));
        Assert.Empty(view.Paid);
    }

    [Fact]
    public async Task Alert_RejectedLotWasDearer_SaysByHowMuchAndWhichProducts()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var alder = await studio.SupplierAsync();
        await studio.ReceiveAsync(alder, oil, 5, AmountUnit.Kilogram, 300m);
        var dear = Invoice(alder, Line(oil, 5, AmountUnit.Kilogram, 360m));
        dear.ReceivedOn = October;
        dear.Lines[0].ConfirmedUnitPrice = 72m;
        var lot = (await PostAsync(studio, dear)).Lots.Single().LotId;
        await using (var db = studio.Db())
        {
            (await db.Lots.SingleAsync(l => l.Id == lot)).Status = LotStatus.Rejected;
            await db.SaveChangesAsync();
        }

        var view = (await studio.Get<MaterialPrices>().ViewAsync(oil))!;

        // 0.072 against 0.060 is 20 % more.
        Assert.Equal(new PriceAlert(0.072m, 0.06m, 0.2m, "Alder Supply", October, IsAsked: false), view.Alert());
        Assert.True(view.Paid[0].IsRejected);
    }

    [Fact]
    public async Task ProductsWith_SomeHoldIt_NamesThoseAlone()
    {
        await using var studio = await TestStudio.NewAsync();
        await studio.WorkedBatchAsync();
        var oil = await studio.MaterialOfLotAsync("P-1");
        var sprayer = await studio.MaterialOfLotAsync("S-2");
        await using (var db = studio.Db())
        {
            var formula = await db.FormulaVersions.Select(v => v.FormulaId).SingleAsync();
            db.FormulaSizes.Add(new FormulaSize { FormulaId = formula, Name = "100 mL", NominalMillilitres = 100m, Parts = { new FormulaSizePart { MaterialId = sprayer, CountPerUnit = 1 } } });
            await db.SaveChangesAsync();
        }

        var prices = studio.Get<MaterialPrices>();

        Assert.Equal(["Fig, 100 mL"], await prices.ProductsWithAsync(oil));
        Assert.Equal(["Fig, 100 mL"], await prices.ProductsWithAsync(sprayer));
        Assert.Empty(await prices.ProductsWithAsync(await studio.MaterialAsync("Linen fragrance oil", MaterialKind.FragranceOil)));
        Assert.Null(await prices.ViewAsync(Guid.CreateVersion7()));
    }

    private static async Task<DeliveryPosted> PostAsync(TestStudio studio, PostDelivery invoice) =>
        (await studio.Get<Deliveries>().PostAsync(studio.Ana, invoice)).Expect();
}
