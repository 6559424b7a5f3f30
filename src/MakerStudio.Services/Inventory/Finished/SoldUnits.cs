using MakerStudio.Core.Finished;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Units of a batch that went out with sales and have not come back.</summary>
internal static class SoldUnits
{
    private static readonly UnitMoveKind[] Sold = [UnitMoveKind.Sale, UnitMoveKind.Dispatch, UnitMoveKind.ReportSold, UnitMoveKind.Return];

    /// <summary>Units by the sale they first went out with, above zero. Returns and reversals count against that sale.</summary>
    /// <param name="saleId">Only this sale; null for all.</param>
    public static async Task<Dictionary<Guid, int>> OutAsync(StudioDb db, Guid batchId, Guid? saleId, CancellationToken cancel)
    {
        var roots =
            from sale in db.Sales
            join of in db.Sales on sale.OfSaleId equals of.Id into ofs
            from of in ofs.DefaultIfEmpty()
            select new { sale.Id, Root = of == null ? sale.Id : of.OfSaleId ?? of.Id };
        var alone = await (
            from movement in db.UnitMovements
            join root in roots on movement.SaleId equals root.Id
            where movement.BatchId == batchId && Sold.Contains(movement.Kind) && (saleId == null || root.Root == saleId)
            group movement.Change by root.Root into g
            select new { g.Key, Units = -g.Sum() }).ToListAsync(cancel);
        var inKits = await (
            from line in db.SaleLines
            join content in db.KitLotContents on line.KitLotId equals content.KitLotId
            join root in roots on line.SaleId equals root.Id
            where content.BatchId == batchId && (saleId == null || root.Root == saleId)
            group line.Quantity * content.Count by root.Root into g
            select new { g.Key, Units = g.Sum() }).ToListAsync(cancel);
        return alone.Concat(inKits).GroupBy(s => s.Key, s => s.Units).Where(g => g.Sum() > 0).ToDictionary(g => g.Key, g => g.Sum());
    }
}
