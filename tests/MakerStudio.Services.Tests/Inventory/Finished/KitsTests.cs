using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Finished;

public class KitsTests
{
    /// <summary>A kit of two sprays in one box, with 46 sprays of RS-1 and so many boxes at 1.20.</summary>
    private static async Task<(Guid Kit, Guid Batch, Guid Box)> KitAsync(TestStudio studio, decimal boxes = 50)
    {
        var batch = await studio.FilledBatchAsync();
        var material = await studio.MaterialAsync("Gift box", MaterialKind.Carton, StockUnit.Each);
        var box = await studio.LotAsync(material, "X-9", boxes, 1.20m);
        await using var db = studio.Db();
        var formula = await db.FormulaVersions.Select(v => v.FormulaId).FirstAsync();
        var kit = (await studio.Get<Kits>().DefineAsync(studio.Ana, new DefineKit
        {
            Name = "Fig pair", Items = [new KitItemTyped { FormulaId = formula, SizeName = "100 mL", Count = 2 }], Parts = [new KitPartTyped { MaterialId = material, Count = 1 }],
        })).Expect();
        return (kit.KitId, batch, box);
    }

    private static async Task<long> BoxesAsync(TestStudio studio, Guid lot)
    {
        await using var db = studio.Db();
        return await db.LotBalances.Where(b => b.LotId == lot).Select(b => b.OnHand).SingleAsync();
    }

    [Fact]
    public async Task Assemble_MoreThanTheBoxesAllow_NamesTheScarcest()
    {
        await using var studio = await TestStudio.NewAsync();
        var (kit, batch, _) = await KitAsync(studio, boxes: 9);

        var refused = Assert.IsType<KitShort>((await studio.Get<Kits>().AssembleAsync(studio.Ana, new AssembleKit { KitId = kit, Count = 12 })).Refusal);

        Assert.Equal((9, "Gift box"), (refused.Possible, refused.Scarcest));
        Assert.Equal(46, await studio.UnitsAsync(batch));
    }

    [Fact]
    public async Task Assemble_FromTwoBatches_EveryKitKeepsItsCodesAndCost()
    {
        await using var studio = await TestStudio.NewAsync();
        var (kit, batch, box) = await KitAsync(studio);
        await studio.AlsoFilledAsync("RS-7", batch, 3, new DateOnly(2027, 3, 1));

        var made = (await studio.Get<Kits>().AssembleAsync(studio.Ana, new AssembleKit { KitId = kit, Count = 4 })).Expect();

        // RS-7 expires first: one kit of 2 × RS-7, one of both, two of RS-1.
        Assert.Equal(["KT-1 × 1", "KT-2 × 1", "KT-3 × 2"], made.Codes);
        var lots = (await studio.Get<Kits>().ViewAsync()).Lots.OrderBy(l => l.Code).ToList();
        Assert.Equal(["RS-7", "X-9"], lots[0].Contents.Select(c => c.Code));
        Assert.Equal(["RS-7", "RS-1", "X-9"], lots[1].Contents.Select(c => c.Code));
        Assert.Equal(4m + 4m + 1.20m, lots[0].UnitCost);
        Assert.Equal((41, 46), (await studio.UnitsAsync(batch), await BoxesAsync(studio, box)));
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Undo_PartOfALot_BringsUnitsAndGoodBoxesBack()
    {
        await using var studio = await TestStudio.NewAsync();
        var (kit, batch, box) = await KitAsync(studio);
        var kits = studio.Get<Kits>();
        (await kits.AssembleAsync(studio.Ana, new AssembleKit { KitId = kit, Count = 5 })).Expect();
        var lot = Assert.Single((await kits.ViewAsync()).Lots);

        (await kits.UndoAsync(studio.Bo, new UndoKit { KitLotId = lot.Id, Count = 2, Reason = "Sold singly instead" })).Expect();
        (await kits.UndoAsync(studio.Bo, new UndoKit { KitLotId = lot.Id, Count = 1, Reason = "Box torn", PackagingIsGood = false })).Expect();

        Assert.Equal((46 - 4, 50 - 3), (await studio.UnitsAsync(batch), await BoxesAsync(studio, box)));
        Assert.Equal(2, Assert.IsType<UnitsShort>((await kits.UndoAsync(studio.Bo, new UndoKit { KitLotId = lot.Id, Count = 3, Reason = "All" })).Refusal).There);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Sell_Kits_WhoHasThemKnowsTheUnitsInsideAndTakingBackRestoresThem()
    {
        await using var studio = await TestStudio.NewAsync();
        var (kit, batch, _) = await KitAsync(studio);
        (await studio.Get<Kits>().AssembleAsync(studio.Ana, new AssembleKit { KitId = kit, Count = 5 })).Expect();
        var lot = Assert.Single((await studio.Get<Kits>().ViewAsync()).Lots);
        var customer = (await studio.Get<Customers>().AddAsync(studio.Ana, new AddCustomer { Name = "Marlow Street Shop" })).Expect();
        var sale = new RecordSale { Channel = "Wholesale", CustomerId = customer.CustomerId, Lines = [new SoldLine { KitLotId = lot.Id, Quantity = 3, Tag = 40m }] };

        var sold = (await studio.Get<Sales>().RecordAsync(studio.Ana, sale)).Expect();

        var holder = Assert.Single(await studio.Get<FinishedGoods>().HoldersAsync("RS-1"));
        Assert.Equal(("Marlow Street Shop", 6), (holder.Who, holder.Units));
        Assert.Equal(2, Assert.Single((await studio.Get<Kits>().ViewAsync()).Lots).Left);
        (await studio.Get<Sales>().ReturnAsync(studio.Ana, new ReturnUnits { SaleId = sold.SaleId, BatchId = batch, Count = 1, Reason = "Leaks" })).Expect();
        Assert.Equal(5, Assert.Single(await studio.Get<FinishedGoods>().HoldersAsync("RS-1")).Units);
        Assert.IsType<UnitsShort>((await studio.Get<Sales>().RecordAsync(studio.Ana, sale with { RequestId = Guid.CreateVersion7() })).Refusal);
        Assert.True((await studio.Get<Verify>().RunAsync()).Agrees);
    }

    [Fact]
    public async Task Assemble_TwoAtOnceOfTheLast_ExactlyOneGetsThem()
    {
        await using var studio = await TestStudio.NewAsync();
        var (kit, batch, _) = await KitAsync(studio, boxes: 200);
        Task<Outcome<KitsAssembled>> Make(Actor who) => Task.Run(() => studio.Get<Kits>().AssembleAsync(who, new AssembleKit { KitId = kit, Count = 15 }));

        var outcomes = await Task.WhenAll(Make(studio.Ana), Make(studio.Bo));

        Assert.Single(outcomes, o => o is Done<KitsAssembled>);
        Assert.Equal(8, Assert.IsType<KitShort>(Assert.Single(outcomes, o => o is Refused<KitsAssembled>).Refusal).Possible);
        Assert.Equal(16, await studio.UnitsAsync(batch));
    }
}
