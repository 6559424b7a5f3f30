using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services.Tests.Inventory.Buying;

public class KeepPriceBreakTests
{
    [Fact]
    public async Task Keep_KilogramsAndLitres_StandInOneTableAtLandedCost()
    {
        await using var shop = await Shop.NewAsync("Ethanol 99.5 % vol, denatured", MaterialKind.Solvent, density: 0.79m);
        await shop.KeepAsync("Alder Supply", 20, AmountUnit.Kilogram, 128m, b => (b.Freight, b.Charges) = (26.88m, 18m));
        await shop.KeepAsync("Brackwater Solvents", 25, AmountUnit.Litre, 132m, b => b.Freight = 6m);

        var compared = (await shop.ViewAsync()).Compare(usePerDay: 100m, lifeDays: 1095)!;

        // Own sums: 25 L × 0.79 = 19.75 kg for 138.00; 20 kg for 172.88.
        Assert.Equal([19_750m, 20_000m], compared.Rows.Select(r => r.Is.Offer.Quantity));
        Assert.Equal([138m / 19_750m, 0.008644m], compared.Rows.Select(r => r.Is.UnitCost));
        Assert.Equal("Brackwater Solvents", compared.Cheapest!.Asked.Supplier);
        Assert.Equal((34.88m, 197.5m), (compared.Rows[1].Is.TiedUp, compared.Rows[0].Is.CoverDays));
    }

    [Fact]
    public async Task Keep_APriceForEach_IsTimesTheQuantity()
    {
        await using var shop = await Shop.NewAsync("Bottle 100 mL", MaterialKind.Bottle, StockUnit.Each);
        await shop.KeepAsync("Alder Supply", 500, AmountUnit.Each, 0.74m, b => (b.PriceIs, b.Freight) = (PriceIs.OfOne, 62.40m));

        var asked = Assert.Single((await shop.ViewAsync()).Breaks);

        Assert.Equal((370m, 432.40m, 0.8648m), (asked.PriceOfAll, asked.Landed, asked.UnitCost));
        Assert.Equal(("Ana", new DateOnly(2026, 10, 26)), (asked.Who, asked.AskedOn));
        Assert.Equal("Alder Supply asks 0.74 each from 500 pieces on of Bottle 100 mL", (await shop.ActsAsync())[^1]);
    }

    [Fact]
    public async Task Keep_SameQuantityAgain_HoldsTheLaterAndKeepsBoth()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await shop.KeepAsync("Alder Supply", 5, AmountUnit.Kilogram, 310m, b => b.AskedOn = new DateOnly(2026, 9, 1));
        await shop.KeepAsync("Alder Supply", 5.0m, AmountUnit.Kilogram, 318m);
        await shop.KeepAsync("Alder Supply", 25, AmountUnit.Kilogram, 1390m);

        Assert.Equal([318m, 1390m], (await shop.ViewAsync()).Breaks.Select(b => b.Price));
        await using var db = shop.Studio.Db();
        Assert.Equal([310m, 318m, 1390m], await db.PriceBreaks.OrderBy(b => b.Id).Select(b => b.Price).ToListAsync());
    }

    [Fact]
    public async Task Keep_SameRequestTwice_IsKeptOnce()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var request = shop.Request("Alder Supply", 5, AmountUnit.Kilogram, 310m);

        (await shop.Prices.KeepBreakAsync(shop.Studio.Ana, request)).Expect();
        (await shop.Prices.KeepBreakAsync(shop.Studio.Ana, request)).Expect();

        await using var db = shop.Studio.Db();
        Assert.Equal(1, await db.PriceBreaks.CountAsync());
    }

    [Fact]
    public async Task Keep_WhatCannotBeReckonedWith_IsRefusedInWords()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);

        Assert.Contains("needs its density", await shop.WhyNotAsync(shop.Request("Alder Supply", 5, AmountUnit.Litre, 310m)));
        Assert.Contains("stocked by mass", await shop.WhyNotAsync(shop.Request("Alder Supply", 5, AmountUnit.Each, 310m)));
        Assert.Contains("above 0", await shop.WhyNotAsync(shop.Request("Alder Supply", 0, AmountUnit.Kilogram, 310m)));
        Assert.Contains("above 0", await shop.WhyNotAsync(shop.Request("Alder Supply", 5, AmountUnit.Kilogram, -1m)));
        Assert.Contains("27 Oct 2026 is still to come", await shop.WhyNotAsync(shop.Request("Alder Supply", 5, AmountUnit.Kilogram, 310m) with { AskedOn = new DateOnly(2026, 10, 27) }));
        Assert.Contains("Choose whose price", await shop.WhyNotAsync(shop.Request("Alder Supply", 5, AmountUnit.Kilogram, 310m) with { SupplierId = null }));
        Assert.Contains("not bought from this supplier", await shop.WhyNotAsync(shop.Request("Alder Supply", 5, AmountUnit.Kilogram, 310m) with { SupplierId = Guid.CreateVersion7() }));
        Assert.Contains("This material", await shop.WhyNotAsync(shop.Request("Alder Supply", 5, AmountUnit.Kilogram, 310m) with { MaterialId = Guid.CreateVersion7() }));
        Assert.Empty((await shop.ViewAsync()).Breaks);
    }

    [Fact]
    public async Task End_ABreak_TakesItOffAndItCanBeAskedAnew()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await shop.KeepAsync("Alder Supply", 5, AmountUnit.Kilogram, 310m);
        var asked = (await shop.ViewAsync()).Breaks.Single();

        (await shop.Prices.EndBreakAsync(shop.Studio.Bo, new EndPriceBreak { PriceBreakId = asked.Id })).Expect();

        Assert.Empty((await shop.ViewAsync()).Breaks);
        Assert.Null((await shop.ViewAsync()).Compare(1m, null));
        Assert.Equal("Alder Supply no longer asks 310.00 for 5 kg of Fig fragrance oil", (await shop.ActsAsync())[^1]);
        await shop.KeepAsync("Alder Supply", 5, AmountUnit.Kilogram, 305m);
        Assert.Equal(305m, (await shop.ViewAsync()).Breaks.Single().Price);
        Assert.IsType<NotFound>((await shop.Prices.EndBreakAsync(shop.Studio.Bo, new EndPriceBreak { PriceBreakId = 999 })).Refusal);
    }

    [Fact]
    public async Task View_SupplierTakenOffTheMaterial_LeavesItsBreaksOut()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await shop.KeepAsync("Alder Supply", 5, AmountUnit.Kilogram, 310m);
        var materials = shop.Studio.Get<Materials>();
        var form = (await materials.FormAsync(shop.MaterialId))!;
        form.Suppliers.RemoveAll(s => s.Name == "Alder Supply");

        (await materials.ChangeAsync(shop.Studio.Ana, form)).Expect();

        Assert.Empty((await shop.ViewAsync()).Breaks);
    }

    [Fact]
    public async Task View_DensityTakenAway_SaysWhichCannotBeCompared()
    {
        await using var shop = await Shop.NewAsync("Ethanol 99.5 % vol, denatured", MaterialKind.Solvent, density: 0.79m);
        await shop.KeepAsync("Brackwater Solvents", 25, AmountUnit.Litre, 132m);
        await using (var db = shop.Studio.Db())
        {
            (await db.Materials.SingleAsync()).Density = null;
            (await db.Materials.SingleAsync()).DensityAtCelsius = null;
            await db.SaveChangesAsync();
        }

        var view = await shop.ViewAsync();

        Assert.Contains("density", view.Breaks.Single().WhyNot);
        Assert.Null(view.Compare(1m, null));
        Assert.Null(view.Alert());
    }

    /// <summary>25 kg outlast a year at 26.7 g a day with 3.8 kg there; 5 kg do not.</summary>
    [Fact]
    public async Task Compare_WhatOutlastsItsLife_IsNotTheCheapestThoughItIsTheLowest()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await shop.Studio.LotAsync(shop.MaterialId, "P-1", 3_800m, 0.0658m);
        await shop.KeepAsync("Alder Supply", 5, AmountUnit.Kilogram, 318m, b => b.Freight = 11m);
        await shop.KeepAsync("Alder Supply", 25, AmountUnit.Kilogram, 1390m);

        var view = await shop.ViewAsync();
        var compared = view.Compare(26.7m, 365)!;

        Assert.Equal((5m, 25m), (compared.Cheapest!.Asked.Quantity, compared.Lowest.Asked.Quantity));
        Assert.Equal([8_800m / 26.7m, 28_800m / 26.7m], compared.Rows.Select(r => r.Is.CoverDays));
        Assert.Equal([false, true], compared.Rows.Select(r => r.Is.OutlastsLife));
        Assert.Equal(25m, view.Compare(26.7m, null)!.Cheapest!.Asked.Quantity);
        Assert.Null(view.Compare(0m, 365)!.Cheapest);
    }

    [Fact]
    public async Task Alert_EvenTheLowestAskedIsFarAbove_SaysSo()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await shop.Studio.LotAsync(shop.MaterialId, "P-1", 3_800m, 0.060m);
        await shop.KeepAsync("Alder Supply", 1, AmountUnit.Kilogram, 90m);
        await shop.KeepAsync("Alder Supply", 5, AmountUnit.Kilogram, 350m, b => b.Freight = 10m);

        var alert = (await shop.ViewAsync()).Alert();

        Assert.Equal(new PriceAlert(0.072m, 0.060m, 0.2m, "Alder Supply", new DateOnly(2026, 10, 26), IsAsked: true), alert);
        await shop.KeepAsync("Alder Supply", 25, AmountUnit.Kilogram, 1500m);
        Assert.Null((await shop.ViewAsync()).Alert());
    }

    [Fact]
    public async Task PriceBreaks_Rows_AreNeverChangedNorDeleted()
    {
        await using var shop = await Shop.NewAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await shop.KeepAsync("Alder Supply", 5, AmountUnit.Kilogram, 310m);
        await using var line = new NpgsqlConnection(shop.Studio.OwnerConnectionString);
        await line.OpenAsync();
        foreach (var change in new[] { "update price_breaks set price = 1", "delete from price_breaks", "truncate price_breaks" })
        {
            await using var command = new NpgsqlCommand(change, line);
            await Assert.ThrowsAsync<PostgresException>(() => command.ExecuteNonQueryAsync());
        }
    }

    /// <summary>One material bought from two suppliers.</summary>
    private sealed class Shop : IAsyncDisposable
    {
        private readonly Dictionary<string, Guid> _suppliers = [];

        public TestStudio Studio { get; private init; } = default!;
        public Guid MaterialId { get; private init; }
        public MaterialPrices Prices => Studio.Get<MaterialPrices>();

        public static async Task<Shop> NewAsync(string material, MaterialKind kind, StockUnit unit = StockUnit.Gram, decimal? density = null)
        {
            var studio = await TestStudio.NewAsync();
            var shop = new Shop { Studio = studio, MaterialId = await studio.MaterialAsync(material, kind, unit, density) };
            await using var db = studio.Db();
            foreach (var name in new[] { "Alder Supply", "Brackwater Solvents" })
            {
                shop._suppliers[name] = await studio.SupplierAsync(name);
                db.MaterialSuppliers.Add(new MaterialSupplier { MaterialId = shop.MaterialId, SupplierId = shop._suppliers[name] });
            }

            await db.SaveChangesAsync();
            return shop;
        }

        public KeepPriceBreak Request(string supplier, decimal quantity, AmountUnit unit, decimal price) =>
            new() { MaterialId = MaterialId, SupplierId = _suppliers[supplier], Quantity = quantity, Unit = unit, Price = price };

        public async Task KeepAsync(string supplier, decimal quantity, AmountUnit unit, decimal price, Action<KeepPriceBreak>? more = null)
        {
            var request = Request(supplier, quantity, unit, price);
            more?.Invoke(request);
            (await Prices.KeepBreakAsync(Studio.Ana, request)).Expect();
        }

        public async Task<string> WhyNotAsync(KeepPriceBreak request) => (await Prices.KeepBreakAsync(Studio.Ana, request)).Refusal!.ToString();

        public async Task<MaterialPricesView> ViewAsync() => (await Prices.ViewAsync(MaterialId))!;

        public async Task<IReadOnlyList<string>> ActsAsync()
        {
            await using var db = Studio.Db();
            return await db.Acts.OrderBy(a => a.Id).Select(a => a.What).ToListAsync();
        }

        public ValueTask DisposeAsync() => Studio.DisposeAsync();
    }
}
