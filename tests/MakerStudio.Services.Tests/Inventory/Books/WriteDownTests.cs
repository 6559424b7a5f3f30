using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Tests.Inventory.Prices;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services.Tests.Inventory.Books;

using Books = Services.Inventory.Books;

/// <summary>Lower of cost and what it will bring, lot by lot: IAS 2, paragraphs 28 to 33, read second-hand. Own sums.</summary>
public class WriteDownTests
{
    [Fact]
    public async Task OneBatch_IsWrittenDownAlone_AndLeavesWithItsUnits()
    {
        await using var scene = await PriceScene.NewAsync();
        var (studio, books) = (scene.Studio, scene.Studio.Get<Books>());
        var other = await studio.AlsoFilledAsync("RS-7", scene.Batch, 20);
        var product = (await books.ReadAsync()).Finished.Single();
        Assert.Equal(["RS-1", "RS-7"], product.Lots.Select(l => l.Code));
        var hazy = product.Lots.Single(l => l.Code == "RS-7");
        studio.Clock.Advance(TimeSpan.FromMinutes(1));

        // 20 at 4.00, each brings 3.50 − 0.50: 20 × 1.00.
        var down = (await books.WriteDownAsync(studio.Ana, new WriteDownStock { Product = product.Key, Lot = hazy.Lot, SellingPrice = 3.50m, ToSell = 0.50m, Reason = "Hazy" })).Expect();

        Assert.Equal(("Fig, 100 mL RS-7", 20m, 20m), (down.What, down.Amount, down.Change));
        var row = (await books.ReadAsync()).Finished.Single();
        Assert.Equal((0m, 20m, 20m), (row.Lots[0].WrittenDown, row.Lots[1].WrittenDown, row.WrittenDown));
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        var sale = SeedGoods.SaleOf(other, 5);
        sale.Lines[0].Reason = "The buyer chose";
        (await studio.Get<Sales>().RecordAsync(studio.Bo, sale)).Expect();
        sale = SeedGoods.SaleOf(scene.Batch, 40);
        sale.Lines[0].Reason = "The buyer chose";
        (await studio.Get<Sales>().RecordAsync(studio.Bo, sale with { RequestId = Guid.CreateVersion7() })).Expect();

        // 15 of 20 are left, and of the other batch's sale nothing is touched.
        var view = await books.ReadAsync();
        Assert.Equal((15m, "RS-7"), (view.Finished.Single().WrittenDown, view.WriteDowns.Single().Lot));
        Assert.Equal((20m, 15m), (view.WriteDowns.Single().Amount, view.WriteDowns.Single().Held));
        Assert.True(view.Check.Holds);
        var again = await books.WriteDownAsync(studio.Ana, new WriteDownStock { Product = product.Key, Lot = hazy.Lot, SellingPrice = 3.50m, ToSell = 0.50m, Reason = "Hazy" });
        Assert.Contains("carried at that already", Assert.IsType<Because>(again.Refusal).Happened, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ValuationMethod.SpecificLot, "20", "0")]
    [InlineData(ValuationMethod.Fifo, "15", "5")]
    [InlineData(ValuationMethod.MovingAverage, "15", "5")]
    public async Task OneLotOfAMaterial_ByMethod_IsComparedWithWhatItCosts(ValuationMethod method, string dear, string cheap)
    {
        // 1 kg at 60.00 and 1 kg at 50.00; where lots are not kept apart, one costs 55.00.
        await using var studio = await TestStudio.NewAsync();
        var books = studio.Get<Books>();
        (await books.ChooseMethodAsync(studio.Ana, new ChooseMethod { YearOf = new DateOnly(2026, 10, 26), Method = method })).Expect();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        await studio.LotAsync(oil, "P-1", 1_000, 0.060m);
        await studio.LotAsync(oil, "P-2", 1_000, 0.050m);

        var down = (await books.WriteDownAsync(studio.Ana, new WriteDownStock { MaterialId = oil, Lot = "P-1", SellingPrice = 40m, Reason = "Went off" })).Expect();

        Assert.Equal(Number(dear), down.Amount);
        Assert.Equal(110m - Number(dear), (await books.ReadAsync()).Materials.Single().Value);
        // Each lot at 50.00: what is above it goes down, and P-1 is taken back in part.
        var all = (await books.WriteDownAsync(studio.Ana, new WriteDownStock { MaterialId = oil, SellingPrice = 50m, Reason = "Price list" })).Expect();
        Assert.Equal((10m, Number(cheap)), (all.Amount, (await books.ReadAsync()).Materials.Single().Lots[1].WrittenDown));
        // It recovers beyond cost: never above it.
        var back = (await books.WriteDownAsync(studio.Ana, new WriteDownStock { MaterialId = oil, SellingPrice = 900m, Reason = "It cleared" })).Expect();
        Assert.Equal((0m, -10m, 110m), (back.Amount, back.Change, (await books.ReadAsync()).Materials.Single().Value));
        Assert.Empty((await studio.Get<Verify>().RunAsync()).Differences);
    }

    [Fact]
    public async Task Kits_AreWrittenDownAndTakenBack()
    {
        await using var studio = await TestStudio.NewAsync();
        var batch = await studio.FilledBatchAsync();
        var box = await studio.MaterialAsync("Gift box", MaterialKind.Carton, StockUnit.Each);
        await studio.LotAsync(box, "X-9", 50, 1.20m);
        Guid formula;
        await using (var db = studio.Db())
        {
            formula = await db.FormulaVersions.Select(v => v.FormulaId).FirstAsync();
        }

        var kit = (await studio.Get<Kits>().DefineAsync(studio.Ana, new DefineKit
        {
            Name = "Fig pair", Items = [new KitItemTyped { FormulaId = formula, SizeName = "100 mL", Count = 2 }], Parts = [new KitPartTyped { MaterialId = box, Count = 1 }],
        })).Expect();
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        (await studio.Get<Kits>().AssembleAsync(studio.Ana, new AssembleKit { KitId = kit.KitId, Count = 3 })).Expect();
        var books = studio.Get<Books>();
        var row = (await books.ReadAsync()).Finished.Single(f => f.FormulaId is null);
        Assert.Equal((3, "KT-1"), (row.Units, Assert.Single(row.Lots).Code));

        var down = (await books.WriteDownAsync(studio.Ana, new WriteDownStock { Product = row.Key, Lot = row.Lots[0].Lot, SellingPrice = 6m, Reason = "Boxes faded" })).Expect();

        Assert.Equal(row.Cost - 18m, down.Amount);
        var view = await books.ReadAsync();
        Assert.Equal(18m, view.Finished.Single(f => f.FormulaId is null).Value);
        Assert.Equal(("Fig pair", "KT-1"), (view.WriteDowns.Single().What, view.WriteDowns.Single().Lot));
        Assert.Equal(["Fig pair", "Fig"], (await books.YearEndAsync()).Places.Select(p => p.Scent).OrderDescending());
        var back = (await books.WriteDownAsync(studio.Ana, new WriteDownStock { Product = row.Key, SellingPrice = 30m, Reason = "New boxes" })).Expect();
        Assert.Equal((0m, -down.Amount), (back.Amount, back.Change));
        Assert.True((await books.ReadAsync()).Check.Holds);
        Assert.IsType<NotFound>((await books.WriteDownAsync(studio.Ana, new WriteDownStock { Product = row.Key, Lot = "KT-9", SellingPrice = 1m, Reason = "None" })).Refusal);
    }

    /// <summary>Before lots were told apart, an entry meant all there was of the item: it still does.</summary>
    [Fact]
    public async Task AnEntryWithoutALot_IsSharedOverWhatThereWas()
    {
        await using var studio = await TestStudio.NewAsync();
        var oil = await studio.MaterialAsync("Fig fragrance oil", MaterialKind.FragranceOil);
        var first = await studio.LotAsync(oil, "P-1", 1_000, 0.060m);
        await studio.LotAsync(oil, "P-2", 3_000, 0.060m);
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        await using (var line = new NpgsqlConnection(studio.OwnerConnectionString))
        {
            await line.OpenAsync();
            await using var old = new NpgsqlCommand(
                $"insert into write_downs (material_id, quantity, cost, selling_price, to_complete, to_sell, amount, reason, person_id, at, request_id) values ('{oil}', 4000000, 240, 30, 0, 0, 120, 'Old', '{studio.Ana.PersonId}', '{studio.Clock.GetUtcNow():O}', '{Guid.CreateVersion7()}')", line);
            await old.ExecuteNonQueryAsync();
        }

        var books = studio.Get<Books>();
        Assert.Equal([30m, 90m], (await books.ReadAsync()).Materials.Single().Lots.Select(l => l.WrittenDown));
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        (await studio.Get<Lots>().AdjustAsync(studio.Bo, new AdjustLot { LotId = first, Change = -500_000, Reason = AdjustmentReason.Spill })).Expect();
        Assert.Equal(15m + 90m, (await books.ReadAsync()).Materials.Single().WrittenDown);
    }

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
