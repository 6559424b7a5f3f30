using System.Text.Json;
using MakerStudio.Core.Curing;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>A product's margins through its fillings, tags and channels, and through its sales as they happened.</summary>
/// <param name="Stood">As asked, by channel and then day; the last of each is today.</param>
/// <param name="Sold">As sold, oldest first.</param>
public sealed record MarginHistory(IReadOnlyList<MarginRow> Stood, IReadOnlyList<SoldMarginRow> Sold);

/// <param name="IsOwn">We sell there ourselves, so the floor watches it.</param>
/// <param name="Batch">The filling the cost is from.</param>
/// <param name="Margin">A fraction before fees; null when nothing is asked.</param>
/// <param name="Contribution">Money left of one after tax, fees and cost, not rounded.</param>
public sealed record MarginRow(Guid ChannelId, string Channel, bool IsOwn, DateOnly Day, decimal Tag, decimal UnitCost, string Batch, decimal? Margin, decimal Contribution);

/// <summary>What was sold of it on a day in a channel, sales that were taken back left out.</summary>
/// <param name="Revenue">Our part of the net, before fees, to as many decimals as a net is kept with.</param>
/// <param name="Cost">As the units cost when they were sold.</param>
public sealed record SoldMarginRow(DateOnly Day, string Channel, int Units, decimal Revenue, decimal Cost)
{
    public decimal? Margin => Margins.Margin(Revenue, Cost);
}

public sealed partial class PriceBook
{
    /// <summary>Sales older than this are not told; own bound.</summary>
    public const int SalesMonths = 36;

    /// <summary>Null when there is no such size.</summary>
    public async Task<MarginHistory?> MarginsAsync(Guid sizeId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var size = await db.FormulaSizes.Where(s => s.Id == sizeId).Select(s => new { s.FormulaId, s.Name }).SingleOrDefaultAsync(cancel);
        if (size is null)
        {
            return null;
        }

        var zone = await StudioDay.ZoneAsync(db, cancel);
        var today = StudioTime.Today(store.Clock, zone);
        var stood = MarginOverTime.Of(
            await CostsAsync(db, size.FormulaId, size.Name, zone, cancel), await TagsFromAsync(db, sizeId, zone, cancel), await TermsAsync(db, sizeId, zone, cancel), today);
        return new MarginHistory(
            [.. stood.Select(m => new MarginRow(m.ChannelId, m.Unit.Channel.Name, m.Unit.Channel.OurShare == 1m, m.Day, m.Unit.Tag, m.Unit.UnitCost, m.CostFrom, m.Margin, m.Unit.Contribution))],
            await SoldAsync(db, size.FormulaId, size.Name, today.AddMonths(-SalesMonths), cancel));
    }

    private static async Task<List<CostFromDay>> CostsAsync(StudioDb db, Guid formulaId, string size, TimeZoneInfo zone, CancellationToken cancel)
    {
        var fills = await db.Fills
            .Where(f => f.Batch!.FormulaVersion!.FormulaId == formulaId && f.Batch.SizeName == size && f.Filled - f.Rejected - f.Retained > 0)
            .OrderBy(f => f.At).Select(f => new { f.At, f.Batch!.Code, f.TotalCost, Saleable = f.Filled - f.Rejected - f.Retained }).ToListAsync(cancel);
        return fills.ConvertAll(f => new CostFromDay(StudioTime.Today(f.At, zone), f.TotalCost / f.Saleable, f.Code));
    }

    /// <summary>Tags in the order they were set; a retired channel asks nothing from the day it was retired.</summary>
    private static async Task<List<TagFromDay>> TagsFromAsync(StudioDb db, Guid sizeId, TimeZoneInfo zone, CancellationToken cancel)
    {
        var tags = await db.PriceTags.Where(t => t.FormulaSizeId == sizeId).OrderBy(t => t.FromDay).ThenBy(t => t.Id)
            .Select(t => new TagFromDay(t.SalesChannelId, t.FromDay, t.Amount)).ToListAsync(cancel);
        var ids = tags.Select(t => t.ChannelId).Distinct().ToArray();
        var retired = await db.SalesChannels.Where(c => ids.Contains(c.Id) && c.RetiredAt != null).Select(c => new { c.Id, At = c.RetiredAt!.Value }).ToListAsync(cancel);
        return [.. tags, .. retired.Select(c => new TagFromDay(c.Id, StudioTime.Today(c.At, zone), null))];
    }

    private static async Task<List<TermsFromDay>> TermsAsync(StudioDb db, Guid sizeId, TimeZoneInfo zone, CancellationToken cancel)
    {
        var rows = await (
            from terms in db.ChannelTerms
            join channel in db.SalesChannels on terms.SalesChannelId equals channel.Id
            where db.PriceTags.Any(t => t.FormulaSizeId == sizeId && t.SalesChannelId == channel.Id)
            orderby channel.CreatedAt, channel.Id, terms.At, terms.Id
            select new { Terms = terms, channel.Name }).AsNoTracking().ToListAsync(cancel);
        return rows.ConvertAll(r => new TermsFromDay(r.Terms.SalesChannelId, StudioTime.Today(r.Terms.At, zone), new Channel(
            r.Name, new SalesTax(r.Terms.TaxRate, r.Terms.TaxBasis), JsonSerializer.Deserialize<List<ChannelFee>>(r.Terms.Fees, FeesJson)!, r.Terms.CostPerUnit, r.Terms.OurShare)));
    }

    /// <summary>Own sales at their net; a shop's at what its report leaves us of it. Kits are not here: their price is not one product's.</summary>
    private static async Task<IReadOnlyList<SoldMarginRow>> SoldAsync(StudioDb db, Guid formulaId, string size, DateOnly since, CancellationToken cancel)
    {
        var lines =
            from line in db.SaleLines
            join sale in db.Sales on line.SaleId equals sale.Id
            where line.Batch!.FormulaVersion!.FormulaId == formulaId && line.Batch.SizeName == size && !line.IsForBroken && line.UnitCost != null
                && sale.Kind == SaleKind.Sale && sale.SoldOn >= since && !db.Sales.Any(r => r.OfSaleId == sale.Id && r.Kind == SaleKind.Reversal)
            let kept = 1m - (from report in db.ConsignmentReports
                             where report.SaleId == sale.Id
                             from told in report.Lines
                             where told.BatchId == line.BatchId
                             select told.CommissionPercent).FirstOrDefault() / 100m
            select new { sale.SoldOn, sale.Channel, line.Quantity, Revenue = line.Quantity * line.NetPrice * kept, Cost = line.Quantity * line.UnitCost!.Value };
        return await lines.GroupBy(l => new { l.SoldOn, l.Channel })
            .OrderBy(g => g.Key.SoldOn).ThenBy(g => g.Key.Channel)
            .Select(g => new SoldMarginRow(g.Key.SoldOn, g.Key.Channel, g.Sum(l => l.Quantity), decimal.Round(g.Sum(l => l.Revenue), Sales.NetDecimals), decimal.Round(g.Sum(l => l.Cost), Sales.NetDecimals)))
            .ToListAsync(cancel);
    }
}
