using MakerStudio.Core.Finished;

namespace MakerStudio.Core.Tests.Finished;

public class KitsTests
{
    private static readonly Guid Spray = Guid.NewGuid(), Candle = Guid.NewGuid();
    private static readonly Guid Rs1 = Guid.NewGuid(), Rs2 = Guid.NewGuid(), Cn1 = Guid.NewGuid();

    /// <summary>Three kits: six sprays out of two batches, three candles, boxes for 2.00.</summary>
    private static readonly KitAssembly Made = new(
        3, [new(Spray, Rs1, "RS-1", 4, 18.04m), new(Spray, Rs2, "RS-2", 2, 10.00m), new(Candle, Cn1, "CN-1", 3, 10.00m)], 2.00m);

    [Fact]
    public void Assembly_CostsItsPartsAndKeepsTheirCodes()
    {
        Assert.Equal(40.04m, Made.Cost);
        Assert.Equal(40.04m / 3, Made.UnitCost);
        Assert.Equal(["CN-1", "RS-1", "RS-2"], Made.BatchCodes);
    }

    [Fact]
    public void Undo_All_GivesEveryCoinBack()
    {
        var undone = Undone(Made.Undo(3, new Dictionary<Guid, int> { [Rs1] = 4, [Rs2] = 2, [Cn1] = 3 }));
        Assert.Equal(Made.Components, undone.Back);
        Assert.Equal(2.00m, undone.BoxValue);
        Assert.Null(undone.Left);
    }

    [Fact]
    public void Undo_One_SplitsTheMoneyWithoutARest()
    {
        Assert.Null(Made.Obvious(1));
        var undone = Undone(Made.Undo(1, new Dictionary<Guid, int> { [Rs1] = 1, [Rs2] = 1, [Cn1] = 1 }));
        Assert.Equal(4.51m, undone.Back[0].Value);
        Assert.Equal(2, undone.Left!.Kits);
        Assert.Equal([3, 1, 2], undone.Left.Components.Select(c => c.Count));
        Assert.Equal(Made.Cost, undone.Back.Sum(b => b.Value) + undone.BoxValue + undone.Left.Cost);
    }

    [Fact]
    public void Obvious_OneBatchOfEach_NeedsNobodyToReadCodes()
    {
        var plain = Made with { Components = [Made.Components[0] with { Count = 6 }, Made.Components[2]] };
        Assert.Equal(new Dictionary<Guid, int> { [Rs1] = 4, [Cn1] = 2 }, plain.Obvious(2));
    }

    [Theory]
    [InlineData(4, 0, 0, 0, "There are 3 kits to take apart.")]
    [InlineData(1, 2, 1, 1, "1 kit holds 2 of RS-1, RS-2; read the codes off and say how many of each.")]
    [InlineData(2, 1, 3, 2, "Only 2 of RS-2 went into these kits.")]
    [InlineData(1, 3, -1, 1, "Name only batches that are in these kits.")]
    public void Undo_DoesNotFit_SaysWhy(int kits, int first, int second, int candles, string says) =>
        Assert.Equal(says, Assert.IsType<KitUndoResult.NotPossible>(
            Made.Undo(kits, new Dictionary<Guid, int> { [Rs1] = first, [Rs2] = second, [Cn1] = candles })).Says);

    private static KitUndoResult.Undone Undone(KitUndoResult result) => Assert.IsType<KitUndoResult.Undone>(result);
}
