using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Inventory;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests.Inventory;

/// <summary>Suppliers and papers for tests of the storeroom, and short ways to receive.</summary>
internal static class ReceivingSeed
{
    public static async Task<Guid> SupplierAsync(this TestStudio studio, string name = "Alder Supply")
    {
        await using var db = studio.Db();
        var supplier = new Supplier { Name = name };
        db.Suppliers.Add(supplier);
        await db.SaveChangesAsync();
        return supplier.Id;
    }

    public static async Task RequireAsync(this TestStudio studio, Guid materialId, params PaperKind[] papers)
    {
        await using var db = studio.Db();
        var material = await db.Materials.SingleAsync(m => m.Id == materialId);
        material.RequiredPapers = [.. papers];
        await db.SaveChangesAsync();
    }

    public static async Task PaperAsync(this TestStudio studio, Guid materialId, PaperKind kind, Guid? lotId = null)
    {
        await using var db = studio.Db();
        db.Papers.Add(new Paper
        {
            MaterialId = materialId, LotId = lotId, Kind = kind, FileName = "paper.pdf", ContentType = "application/pdf", Content = [1], Size = 1,
            AddedById = studio.Bo.PersonId, AddedAt = studio.Clock.GetUtcNow(),
        });
        await db.SaveChangesAsync();
    }

    public static PostDelivery Invoice(Guid supplierId, params DeliveryLineTyped[] lines) =>
        new() { SupplierId = supplierId, ReceivedOn = new DateOnly(2026, 9, 24), Lines = [.. lines] };

    public static DeliveryLineTyped Line(Guid materialId, decimal quantity, AmountUnit unit, decimal price) =>
        new() { MaterialId = materialId, Quantity = quantity, Unit = unit, Price = price };

    /// <summary>Receives one line and answers with its lot.</summary>
    public static async Task<PostedLot> ReceiveAsync(
        this TestStudio studio, Guid supplierId, Guid materialId, decimal quantity, AmountUnit unit, decimal price) =>
        (await studio.Get<Deliveries>().PostAsync(studio.Ana, Invoice(supplierId, Line(materialId, quantity, unit, price)))).Expect().Lots.Single();

    public static async Task<LotRow> LotRowAsync(this TestStudio studio, string code) => (await studio.Get<Lots>().FindAsync(code))!;

    /// <summary>Rows of every table a command writes: a refusal must leave them as they are.</summary>
    public static async Task<string> FootprintAsync(this TestStudio studio)
    {
        await using var db = studio.Db();
        var counts = new[]
        {
            await db.Movements.CountAsync(), await db.LotEvents.CountAsync(), await db.Acts.CountAsync(), await db.HandledRequests.CountAsync(),
            await db.Lots.CountAsync(), await db.Deliveries.CountAsync(), await db.DeliveryLines.CountAsync(), await db.Drafts.CountAsync(),
        };
        var balances = await db.LotBalances.OrderBy(b => b.LotId).Select(b => b.OnHand).ToListAsync();
        var codes = await db.CodeCounters.OrderBy(c => c.Prefix).Select(c => c.Prefix + c.Last).ToListAsync();
        return string.Join(',', counts.Select(c => (long)c).Concat(balances)) + string.Concat(codes);
    }
}
