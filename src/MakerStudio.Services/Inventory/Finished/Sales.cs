using System.Runtime.CompilerServices;
using MakerStudio.Core.Finished;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What the form of a sale starts from.</summary>
/// <param name="Goods">Saleable units at the place, by batch.</param>
/// <param name="Kits">Assembled kits that are left; only on the studio's shelf and at stalls.</param>
/// <param name="LastTags">What one of a product last cost on its tag, by product.</param>
/// <param name="Last">Channel and tax of the last sale, to begin with.</param>
/// <param name="Channels">Of the price book, in its order.</param>
/// <param name="Asked">Tags of the price book in force today.</param>
public sealed record SaleForm(
    DateOnly Today, PlaceRow Place, IReadOnlyList<PlaceRow> Places, IReadOnlyList<GoodsRow> Goods, IReadOnlyList<KitLotRow> Kits,
    IReadOnlyList<LastTag> LastTags, IReadOnlyList<CustomerRow> Customers, LastTerms? Last, IReadOnlyList<ChannelRow> Channels, IReadOnlyList<AskedTag> Asked)
{
    /// <summary>The channel of that name, however it is capitalised; null when the price book has none.</summary>
    public ChannelRow? ChannelOf(string? name) => Channels.FirstOrDefault(c => string.Equals(c.Name, name?.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// What is asked of one buyer: the price book's tag in that channel, of which a shop that buys from us pays our part;
    /// else what one last cost.
    /// </summary>
    public decimal? TagOf(Product product, string? channel)
    {
        ArgumentNullException.ThrowIfNull(product);
        if (ChannelOf(channel) is { } known && Asked.FirstOrDefault(t => t.ChannelId == known.Id && t.FormulaId == product.FormulaId && t.SizeName == product.SizeName) is { } asked)
        {
            return decimal.Round(asked.Tag * known.Is.OurShare, 2, MidpointRounding.AwayFromZero);
        }

        return LastTags.FirstOrDefault(t => t.FormulaId == product.FormulaId && t.SizeName == product.SizeName)?.Tag;
    }
}

public sealed record AskedTag(Guid FormulaId, string SizeName, Guid ChannelId, decimal Tag);

public sealed record LastTag(Guid FormulaId, string? SizeName, decimal Tag);

public sealed record LastTerms(string Channel, decimal TaxPercent, TaxBasis TaxBasis);

/// <param name="Net">Of the whole sale, without tax and before fees; not rounded.</param>
/// <param name="IsTakenBack">Another sale names it and turns it round.</param>
public sealed record SaleRow(
    Guid Id, string Code, SaleKind Kind, DateOnly SoldOn, DateTimeOffset At, string Channel, string? Reference, string? Customer, string Place, int Units,
    decimal Net, decimal Fees, bool IsTakenBack, bool IsSent);

public sealed record SaleView(SaleRow Sale, string Initials, string? Note, decimal TaxPercent, TaxBasis TaxBasis, string? OfSale, IReadOnlyList<SaleLineRow> Lines, IReadOnlyList<DispatchRow> Dispatches);

/// <param name="Code">Of the batch or the kits.</param>
/// <param name="Returned">Units of it that came back since.</param>
public sealed record SaleLineRow(string Code, string Name, Guid? BatchId, int Quantity, decimal Tag, decimal NetPrice, decimal? UnitCost, bool IsForBroken, string? Reason, int Returned);

/// <summary>A line with what belongs to its whole sale beside it.</summary>
public sealed record SoldLineRow(string Sale, SaleKind Kind, DateOnly SoldOn, string Channel, string? Reference, string? Customer, SaleLineRow Line);

public sealed record DispatchRow(DateOnly SentOn, string? Carrier, string? Tracking, string? Note, string Initials);

public sealed partial class Sales(StudioStore store)
{
    internal const string CodePrefix = "SL";

    /// <summary>Null when there is no such place.</summary>
    public async Task<SaleForm?> FormAsync(Guid? placeId = null, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var places = (await new Places(store).ListAsync(cancel)).Where(p => !p.IsClosed && p.Kind != PlaceKind.Consignment).ToList();
        if (places.Find(p => p.Id == (placeId ?? Place.StudioId)) is not { } place)
        {
            return null;
        }

        var goods = await FinishedGoods.RowsAsync(db, db.UnitBalances.Where(b => b.PlaceId == place.Id && b.Status == UnitStatus.Saleable), cancel);
        var last = await db.Sales.Where(s => s.Kind == SaleKind.Sale && s.Channel != Consignments.Channel).OrderByDescending(s => s.At)
            .Select(s => new LastTerms(s.Channel, s.TaxPercent, s.TaxBasis)).FirstOrDefaultAsync(cancel);
        var today = await StudioDay.TodayAsync(db, store.Clock, cancel);
        return new SaleForm(
            today, place, places, goods, place.Kind == PlaceKind.Studio ? await Kits.LeftAsync(db, cancel) : [],
            await LastTagsAsync(db, goods, cancel), await new Customers(store).ListAsync(take: 200, cancel: cancel), last,
            await PriceBook.ChannelsAsync(db, cancel), await PriceBook.AskedAsync(db, today, cancel));
    }

    /// <summary>Newest first.</summary>
    /// <param name="after">The last row of the page before.</param>
    /// <param name="take">1 to 200 rows.</param>
    public async Task<IReadOnlyList<SaleRow>> ListAsync(SaleRow? after = null, int take = 50, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var sales = db.Sales.AsQueryable();
        if (after is not null)
        {
            sales = sales.Where(s => EF.Functions.LessThan(ValueTuple.Create(s.At, s.Code), ValueTuple.Create(after.At, after.Code)));
        }

        return await RowsAsync(db, sales.OrderByDescending(s => s.At).ThenByDescending(s => s.Code).Take(Math.Clamp(take, 1, 200)), cancel);
    }

    /// <summary>All of them, newest first, read page by page.</summary>
    public async IAsyncEnumerable<SaleRow> AllAsync([EnumeratorCancellation] CancellationToken cancel = default)
    {
        const int page = 200;
        for (var rows = await ListAsync(null, page, cancel); rows.Count > 0; rows = await ListAsync(rows[^1], page, cancel))
        {
            foreach (var row in rows)
            {
                yield return row;
            }
        }
    }

    /// <summary>The lines of one sale, or of all, newest sale first; read row by row.</summary>
    public async IAsyncEnumerable<SoldLineRow> LinesAsync(string? code = null, [EnumeratorCancellation] CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var rows =
            from line in db.SaleLines
            join sale in db.Sales on line.SaleId equals sale.Id
            where code == null || sale.Code == code
            orderby sale.At descending, sale.Code descending, line.Position
            select new SoldLineRow(
                sale.Code, sale.Kind, sale.SoldOn, sale.Channel, sale.Reference, sale.Customer!.Name,
                new SaleLineRow(
                    line.BatchId != null ? line.Batch!.Code : line.KitLot!.Code,
                    line.BatchId != null ? line.Batch!.ScentName + (line.Batch.SizeName == null ? "" : ", " + line.Batch.SizeName) : line.KitLot!.Name,
                    line.BatchId, line.Quantity, line.Tag, line.NetPrice, line.UnitCost, line.IsForBroken, line.Reason,
                    -db.SaleLines.Where(r => r.BatchId == line.BatchId && db.Sales.Any(s => s.Id == r.SaleId && s.OfSaleId == sale.Id && s.Kind == SaleKind.Return)).Sum(r => r.Quantity)));
        await foreach (var row in rows.AsAsyncEnumerable().WithCancellation(cancel))
        {
            yield return row;
        }
    }

    public async Task<SaleView?> FindAsync(string code, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        if (await RowsAsync(db, db.Sales.Where(s => s.Code == code), cancel) is not [var row])
        {
            return null;
        }

        var more = await db.Sales.Where(s => s.Id == row.Id).Select(s => new
        {
            s.Note, s.TaxPercent, s.TaxBasis, Of = db.Sales.Where(o => o.Id == s.OfSaleId).Select(o => o.Code).FirstOrDefault(),
            Initials = db.Users.Where(p => p.Id == s.PersonId).Select(p => p.Initials).First(),
        }).SingleAsync(cancel);
        var lines = await LinesAsync(row.Code, cancel).Select(l => l.Line).ToListAsync(cancel);
        var sent = await (
            from dispatch in db.Dispatches
            join person in db.Users on dispatch.PersonId equals person.Id
            where dispatch.SaleId == row.Id
            orderby dispatch.At
            select new DispatchRow(dispatch.SentOn, dispatch.Carrier, dispatch.Tracking, dispatch.Note, person.Initials)).ToListAsync(cancel);
        return new SaleView(row, more.Initials, more.Note, more.TaxPercent, more.TaxBasis, more.Of, lines, sent);
    }

    private static async Task<List<SaleRow>> RowsAsync(StudioDb db, IQueryable<Sale> sales, CancellationToken cancel) => await sales.Select(s => new SaleRow(
        s.Id, s.Code, s.Kind, s.SoldOn, s.At, s.Channel, s.Reference, s.Customer!.Name, db.Places.Where(p => p.Id == s.PlaceId).Select(p => p.Name).First(),
        s.Lines.Where(l => !l.IsForBroken).Sum(l => l.Quantity), s.Lines.Sum(l => l.Quantity * l.NetPrice), s.Fees,
        db.Sales.Any(r => r.OfSaleId == s.Id && r.Kind == SaleKind.Reversal), db.Dispatches.Any(d => d.SaleId == s.Id))).ToListAsync(cancel);

    private static async Task<IReadOnlyList<LastTag>> LastTagsAsync(StudioDb db, List<GoodsRow> goods, CancellationToken cancel)
    {
        var formulas = goods.Select(g => g.Product.FormulaId).Distinct().ToArray();
        var tags = await (
            from line in db.SaleLines
            join sale in db.Sales on line.SaleId equals sale.Id
            join batch in db.Batches on line.BatchId equals batch.Id
            join version in db.FormulaVersions on batch.FormulaVersionId equals version.Id
            where formulas.Contains(version.FormulaId) && sale.Kind == SaleKind.Sale && sale.Channel != Consignments.Channel
            group new { sale.At, line.Tag } by new { version.FormulaId, batch.SizeName } into g
            select new { g.Key.FormulaId, g.Key.SizeName, g.OrderByDescending(x => x.At).First().Tag }).ToListAsync(cancel);
        return [.. tags.Select(t => new LastTag(t.FormulaId, t.SizeName, t.Tag))];
    }
}
