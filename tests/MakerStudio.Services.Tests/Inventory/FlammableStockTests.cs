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

    private static async Task<Guid> LiquidAsync(TestStudio studio, string name, MaterialKind kind, decimal density, string classes)
    {
        var id = await studio.MaterialAsync(name, kind, density: density);
        (await studio.Get<Materials>().SetSafetyAsync(studio.Ana, new SetSafety { MaterialId = id, Hazards = new() { Classes = classes } })).Expect();
        return id;
    }
}
