using MakerStudio.Core.Curing;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What products cost and what is asked for them, by channel: one file a use case in this folder.</summary>
public sealed partial class PriceBook(StudioStore store)
{
    /// <summary>Every product on sale with its costs, tags and floor, by scent and content.</summary>
    public async Task<PriceView> ReadAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await ReadAsync(db, store.Clock, cancel);
    }

    internal static async Task<PriceView> ReadAsync(StudioDb db, TimeProvider clock, CancellationToken cancel)
    {
        var studio = await db.Studio.SingleAsync(cancel);
        var today = StudioTime.Today(clock, TimeZoneInfo.FindSystemTimeZoneById(studio.TimeZone));
        var rules = RowOf(await db.PriceRules.SingleOrDefaultAsync(cancel));
        var channels = await ChannelsAsync(db, cancel);
        return new PriceView(studio.Currency, today, rules, channels, await ProductPlans.ReadAsync(db, studio, rules, channels, today, cancel));
    }

    internal static PriceRulesRow RowOf(PriceRules? rules)
    {
        var row = rules ?? new PriceRules();
        return new(row.TaxRate, row.TaxBasis, row.Ending, row.MarginFloor, row.YearMonth, row.YearDay, row.Version);
    }

    internal static async Task<IReadOnlyList<ChannelRow>> ChannelsAsync(StudioDb db, CancellationToken cancel)
    {
        var rows = await db.SalesChannels.Where(c => c.RetiredAt == null).OrderBy(c => c.CreatedAt).ThenBy(c => c.Id).Include(c => c.Fees).ToListAsync(cancel);
        return [.. rows.Select(c => new ChannelRow(c.Id, c.Wanted, CoreOf(c), c.Version))];
    }

    internal static Channel CoreOf(SalesChannel row) => new(
        row.Name, new SalesTax(row.TaxRate, row.TaxBasis),
        [.. row.Fees.OrderBy(f => f.Position).Select(f => new ChannelFee(f.Name, f.Rate, f.Fixed, f.Basis))], row.CostPerUnit, row.OurShare);

    /// <summary>Tags in force on a day, of sizes and channels that are in use.</summary>
    internal static async Task<IReadOnlyList<AskedTag>> AskedAsync(StudioDb db, DateOnly day, CancellationToken cancel)
    {
        var tags = await (
            from size in db.FormulaSizes
            from channel in db.SalesChannels
            where size.RetiredAt == null && channel.RetiredAt == null
            from tag in db.PriceTags.Where(t => t.FormulaSizeId == size.Id && t.SalesChannelId == channel.Id && t.FromDay <= day)
                .OrderByDescending(t => t.FromDay).ThenByDescending(t => t.Id).Take(1)
            where tag.Amount != null
            select new AskedTag(size.FormulaId, size.Name, channel.Id, tag.Amount!.Value)).ToListAsync(cancel);
        return tags;
    }

    /// <summary>All that was ever asked for a product, newest first.</summary>
    public async Task<IReadOnlyList<TagEntry>> TagHistoryAsync(Guid sizeId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await (
            from tag in db.PriceTags
            join channel in db.SalesChannels on tag.SalesChannelId equals channel.Id
            join person in db.Users on tag.PersonId equals person.Id
            where tag.FormulaSizeId == sizeId
            orderby tag.FromDay descending, tag.Id descending
            select new TagEntry(channel.Id, channel.Name, tag.Amount, tag.FromDay, tag.Note, person.Initials, tag.At)).ToListAsync(cancel);
    }

    /// <summary>What each filling of a product cost and yielded, oldest first.</summary>
    public async Task<IReadOnlyList<FillHistoryRow>> FillHistoryAsync(Guid sizeId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        var rows = await (
            from size in db.FormulaSizes
            from fill in db.Fills
            where size.Id == sizeId && fill.Batch!.FormulaVersion!.FormulaId == size.FormulaId && fill.Batch.SizeName == size.Name
            orderby fill.At
            select new
            {
                fill.Batch!.Code, fill.At, fill.Filled, fill.Rejected, fill.Retained, fill.FillMilligrams, fill.TotalCost,
                Weighed = db.Weighings.Where(w => w.BatchId == fill.BatchId && w.ReversedAt == null).Sum(w => w.NetMilligrams),
            }).ToListAsync(cancel);
        return [.. rows.Select(r => new FillHistoryRow(
            r.Code, r.At, r.Filled, r.Filled - r.Rejected - r.Retained is > 0 and var saleable ? r.TotalCost / saleable : null,
            r.Weighed == 0 ? null : (decimal)r.FillMilligrams * r.Filled / r.Weighed))];
    }
}

/// <param name="Ending">What a tag ends in; null for any coin.</param>
/// <param name="MarginFloor">A fraction, for every product without one of its own; null watches none.</param>
public sealed record PriceRulesRow(decimal TaxRate, TaxBasis TaxBasis, decimal? Ending, decimal? MarginFloor, int YearMonth, int YearDay, uint Version)
{
    public TagRounding Rounding => new(2, Ending);
}

/// <param name="Wanted">Contribution wanted of each unit.</param>
public sealed record ChannelRow(Guid Id, decimal Wanted, Channel Is, uint Version)
{
    public string Name => Is.Name;

    /// <summary>A floor watches the tags we sell at ourselves; where a shop takes a part, the wanted contribution is watched.</summary>
    public bool IsOwn => Is.OurShare == 1m;
}

/// <param name="Today">In the studio's time zone.</param>
public sealed record PriceView(string Currency, DateOnly Today, PriceRulesRow Rules, IReadOnlyList<ChannelRow> Channels, IReadOnlyList<ProductRow> Products)
{
    /// <summary>Margins under their floors, the one that falls shortest first.</summary>
    public IReadOnlyList<ProductAlert> Alerts() => [.. Products.SelectMany(Alerts).OrderBy(a => a.Alert.Margin - a.Alert.Floor)];

    /// <summary>One for each tag that stands, even where several channels ask the same.</summary>
    public IEnumerable<ProductAlert> Alerts(ProductRow product)
    {
        ArgumentNullException.ThrowIfNull(product);
        if (product is not { Floor: { } floor, Plan: { } plan, Cost: { } cost })
        {
            yield break;
        }

        var own = Channels.Where(c => c.IsOwn).Join(product.Tags, c => c.Id, t => t.ChannelId, (c, t) => (c.Is, t.Amount));
        foreach (var same in own.GroupBy(t => (t.Amount, t.Is.Tax)))
        {
            var (channel, tag) = same.First();
            if (MarginFloor.Check(product.Name, Pricing.At(tag, cost, channel), floor, Rules.Rounding, plan.LoadModel()) is { } alert)
            {
                yield return new ProductAlert(product.SizeId, product.Name, [.. same.Select(t => t.Is.Name)], alert);
            }
        }
    }
}

/// <param name="Channels">Those that ask this tag.</param>
public sealed record ProductAlert(Guid SizeId, string Product, IReadOnlyList<string> Channels, MarginAlert Alert);

/// <summary>A formula in a size, with a batch of it as it was filled last and as it would cost today.</summary>
/// <param name="LastFill">Null while it was never filled.</param>
/// <param name="AtTodaysPrices">At the landed cost of the newest lots; null where <paramref name="WhyNot"/> says why.</param>
/// <param name="LacksWork">Never filled, so labour and overhead are not in the cost.</param>
/// <param name="Floor">A fraction: its own, else the studio's; null when none is watched.</param>
/// <param name="Tags">In force today.</param>
public sealed record ProductRow(
    Guid SizeId, Guid FormulaId, string Scent, string ProductKind, string SizeName, int VersionNumber, decimal? Millilitres,
    string? LastBatch, DateTimeOffset? LastFilledAt, ProductPlan? LastFill, ProductPlan? AtTodaysPrices, string? WhyNot, bool LacksWork,
    decimal? Floor, bool FloorIsOwn, IReadOnlyList<TagRow> Tags)
{
    public string Name => $"{Scent}, {SizeName}";

    /// <summary>What prices are judged by: today's purchase prices, else the last filling.</summary>
    public ProductPlan? Plan => AtTodaysPrices ?? LastFill;

    /// <summary>Of a saleable unit, not rounded.</summary>
    public decimal? Cost => CostOf(Plan);

    public decimal? LastCost => CostOf(LastFill);

    private static decimal? CostOf(ProductPlan? plan) => plan is null || plan.Problem() is not null ? null : plan.Cost().PerSaleable;
}

public sealed record TagRow(Guid ChannelId, decimal Amount, DateOnly From);

/// <param name="Amount">Null where it was no longer sold from then on.</param>
public sealed record TagEntry(Guid ChannelId, string Channel, decimal? Amount, DateOnly From, string? Note, string Initials, DateTimeOffset At);

/// <param name="PerSaleable">Null when nothing was left to sell.</param>
/// <param name="Yield">A fraction of what was weighed in.</param>
public sealed record FillHistoryRow(string BatchCode, DateTimeOffset At, int Filled, decimal? PerSaleable, decimal? Yield);
