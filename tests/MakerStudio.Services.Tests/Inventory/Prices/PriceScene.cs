using MakerStudio.Core.Prices;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory.Prices;

/// <summary>The worked batch of 4,000 g, filled as 48 with one reject and one retain, and its 100 mL size.</summary>
internal sealed class PriceScene : IAsyncDisposable
{
    private PriceScene(TestStudio studio, Guid batch, Guid size) => (Studio, Batch, Size) = (studio, batch, size);

    public TestStudio Studio { get; }
    public Guid Batch { get; }
    public Guid Size { get; }
    public PriceBook Book => Studio.Get<PriceBook>();

    public static async Task<PriceScene> NewAsync(bool filled = true)
    {
        var studio = await TestStudio.NewAsync();
        var batch = await studio.WorkedBatchAsync();
        if (filled)
        {
            (await studio.Get<Fills>().RecordAsync(studio.Bo, Fill(batch))).Expect();
        }

        await using var db = studio.Db();
        var formula = await db.Batches.Where(b => b.Id == batch).Select(b => b.FormulaVersion!.FormulaId).SingleAsync();
        var parts = await db.BatchParts.Where(p => p.BatchId == batch).Select(p => p.MaterialId).ToListAsync();
        var size = new FormulaSize { FormulaId = formula, Name = "100 mL", NominalMillilitres = 100m, OverfillMilligrams = 500 };
        size.Parts.AddRange(parts.Select(p => new FormulaSizePart { MaterialId = p, CountPerUnit = 1 }));
        db.FormulaSizes.Add(size);
        await db.SaveChangesAsync();
        return new PriceScene(studio, batch, size.Id);
    }

    public static RecordFill Fill(Guid batch) => new()
    {
        BatchId = batch, ToFillingGrams = 3_940, FillGrams = 82.0m, Filled = 48, Rejected = 1, Retained = 1, LabourMinutes = 130,
    };

    public static KeepChannel Channel(string name) => new() { Name = name, TaxPercent = 20, TaxBasis = TaxBasis.InTag, CostPerUnit = 0, Wanted = 6 };

    /// <summary>Web shop: 2.9 % + 0.30, 6.5 %, mailer 0.55. Market stall: card 1.75 %.</summary>
    public async Task<(Guid Web, Guid Stall)> ChannelsAsync()
    {
        var web = (await Book.KeepChannelAsync(Studio.Ana, Channel("Web shop") with
        {
            CostPerUnit = 0.55m, Fees = [new() { Name = "Payment", Percent = 2.9m, Fixed = 0.30m }, new() { Name = "Marketplace", Percent = 6.5m }],
        })).Expect().ChannelId;
        Studio.Clock.Advance(TimeSpan.FromMinutes(1));
        var stall = (await Book.KeepChannelAsync(Studio.Ana, Channel("Market stall") with { Fees = [new() { Name = "Card", Percent = 1.75m }] })).Expect().ChannelId;
        return (web, stall);
    }

    public async Task TagAsync(decimal amount, params Guid[] channels) =>
        (await Book.SetTagAsync(Studio.Ana, new SetTag { SizeId = Size, ChannelIds = [.. channels], Amount = amount })).Expect();

    public async Task NewerLotAsync(string material, string code, decimal unitCost)
    {
        await using var db = Studio.Db();
        var id = await db.Materials.Where(m => m.Name == material).Select(m => m.Id).SingleAsync();
        var lot = await Studio.LotAsync(id, code, 100m, unitCost, status: LotStatus.Released);
        await db.Lots.Where(l => l.Id == lot).ExecuteUpdateAsync(s => s.SetProperty(l => l.ReceivedOn, new DateOnly(2026, 10, 20)));
    }

    public ValueTask DisposeAsync() => Studio.DisposeAsync();
}
