using MakerStudio.Core.Assessing;
using MakerStudio.Core.FlashPoints;
using MakerStudio.Core.Materials;
using MakerStudio.Services.Accounts;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Services.Tests.Inventory;

public class FlammableStockTests
{
    [Fact]
    public async Task Flammable_ShelfBatchAndBottles_AreAddedUpByClassAgainstTheLimits()
    {
        await using var studio = await TestStudio.NewAsync();
        var ethanol = await LiquidAsync(studio, "Ethanol", MaterialKind.Solvent, 0.79m, "Flam. Liq. 2 H225");
        var oil = await LiquidAsync(studio, "Fig fragrance oil", MaterialKind.FragranceOil, 0.98m, "Skin Sens. 1 H317");
        var mystery = await studio.MaterialAsync("Mystery oil", MaterialKind.FragranceOil);
        var wax = await studio.MaterialAsync("Soy wax", MaterialKind.Wax);
        await studio.LotAsync(ethanol, "E-1", 15_000m, 0.01m);
        await studio.LotAsync(ethanol, "E-2", 800m, 0.01m, status: Core.Stock.LotStatus.OnHold);
        await studio.LotAsync(oil, "P-1", 500m, 0.06m);
        await studio.LotAsync(mystery, "P-2", 100m, 0.06m);
        await studio.LotAsync(wax, "W-1", 10_000m, 0.01m);
        (await studio.Get<StudioSettings>().SetWhereWeSellAsync(studio.Ana, new SetWhereWeSell
        {
            Scheme = LabelScheme.EuropeanUnion,
            FlammableLimits =
            [
                new() { Name = "Insurer", Counts = [FlammableCategory.Category2], Most = 10 },
                new() { Name = "Lease", Counts = [FlammableCategory.Category1, FlammableCategory.Category2], Most = 31.6m, Measure = FlammableMeasure.Kilograms },
            ],
        })).Expect();

        var found = await studio.Get<Stock>().FlammableAsync();

        Assert.Equal(["Ethanol", "Fig fragrance oil", "Mystery oil"], found.Holdings.Select(h => h.Name));
        // 15.8 kg at 0.79 g/mL are 20 L; a lot on hold burns too.
        Assert.Equal((FlammableCategory.Category2, 15_800_000L, 20_000m), (found.Totals[0].Category!.Value, found.Totals[0].Milligrams, found.Totals[0].Millilitres));
        Assert.Equal([2m, 0.5m], found.Standings.Select(s => s.Share));
        Assert.Equal([true, false], found.Standings.Select(s => s.IsOver));
        // What is not known keeps a limit from being surely kept.
        Assert.Equal(["Mystery oil"], found.Standings[1].LeftOut);
        Assert.False(found.Standings[1].IsSurelyWithin);
        Assert.Null(found.Totals[^1].Category);
    }

    /// <summary>46 on the shelf, 1 rejected, 1 retained; 12 go to a shop and 2 into gift sets that stay here; 3 are sold.</summary>
    [Fact]
    public async Task Flammable_BottlesAtAShop_AreNotInTheHouse_ThoseInAKitAre()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        Assert.Equal(48 * 82_000L, await MilligramsAsync(studio));

        var shop = await studio.ShopAsync();
        (await studio.Get<Consignments>().PlaceAsync(studio.Ana, new PlaceUnits { PlaceId = shop, Lines = [new() { BatchId = batch, Count = 12, NetPrice = 18.33m }] })).Expect();
        Assert.Equal(36 * 82_000L, await MilligramsAsync(studio));

        var fig = (await studio.Get<FinishedGoods>().OfBatchAsync("RS-1"))[0].Product;
        var kit = (await studio.Get<Kits>().DefineAsync(studio.Ana, new DefineKit { Name = "Pair", Items = [new() { FormulaId = fig.FormulaId, SizeName = fig.SizeName, Count = 2 }] })).Expect();
        (await studio.Get<Kits>().AssembleAsync(studio.Bo, new AssembleKit { KitId = kit.KitId, Count = 1 })).Expect();
        Assert.Equal(36 * 82_000L, await MilligramsAsync(studio));

        (await studio.Get<Sales>().RecordAsync(studio.Bo, SeedGoods.SaleOf(batch, 3))).Expect();
        (await studio.Get<Consignments>().BringBackAsync(studio.Ana, new BringBackUnits { PlaceId = shop, BatchId = batch, Count = 4 })).Expect();
        Assert.Equal(37 * 82_000L, await MilligramsAsync(studio));
    }

    /// <summary>Of the filled batch alone.</summary>
    private static async Task<long> MilligramsAsync(TestStudio studio) =>
        Assert.Single((await studio.Get<Stock>().FlammableAsync()).Holdings, h => h.Where == "/finished/RS-1").Milligrams;

    private static async Task<Guid> LiquidAsync(TestStudio studio, string name, MaterialKind kind, decimal density, string classes)
    {
        var id = await studio.MaterialAsync(name, kind, density: density);
        (await studio.Get<Materials>().SetSafetyAsync(studio.Ana, new SetSafety { MaterialId = id, Hazards = new() { Classes = classes } })).Expect();
        return id;
    }
}
