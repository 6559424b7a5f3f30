using MakerStudio.Core.Finished;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Finished.Selling;

/// <summary>One thing that can be sold here: a product by its batches, or kits of one code.</summary>
public sealed class SellRow
{
    public required string Key { get; init; }
    public required string Name { get; init; }
    public Product? Product { get; init; }
    public Guid? KitLotId { get; init; }

    /// <summary>In the order in which they would be sold.</summary>
    public IReadOnlyList<GoodsRow> Batches { get; set; } = [];
    public int Available { get; set; }
    public decimal? Quantity { get; set; }
    public decimal? Tag { get; set; }

    /// <summary>What the price book or the last sale says; a tag that differs from it was typed.</summary>
    public decimal? Proposed { get; set; }

    /// <summary>Another batch than the first; null takes them as they expire.</summary>
    public Guid? Batch { get; set; }
    public string? Reason { get; set; }

    public void Step(int by) => Quantity = Math.Max(0, (Quantity ?? 0) + by);
}

/// <summary>A sale as it is typed. It outlives a reading of the shelf: what is there changes, what was typed stays.</summary>
public sealed class SellTyping
{
    private SaleForm? _form;

    public List<SellRow> Rows { get; private set; } = [];
    public string Channel { get; private set; } = "Stall";
    public string? Reference { get; set; }
    public Guid? Customer { get; set; }
    public decimal? TaxPercent { get; set; }
    public TaxBasis TaxBasis { get; set; }

    /// <summary>Of the whole sale; empty takes <see cref="UsualFees"/>.</summary>
    public decimal? Fees { get; set; }
    public DateOnly? SoldOn { get; set; }
    public string? Note { get; set; }

    public IEnumerable<SellRow> Taken => Rows.Where(r => r.Quantity > 0);

    public decimal Tags => Taken.Sum(r => (r.Quantity ?? 0) * (r.Tag ?? 0));

    public SalesTax Tax => new(Math.Clamp(TaxPercent ?? 0, 0, 100) / 100m, TaxBasis);

    /// <summary>What the channel takes of these units by the price book, not rounded; 0 where it says nothing.</summary>
    public decimal UsualFees => _form?.ChannelOf(Channel)?.Is is { } channel
        ? Taken.Sum(r => (r.Quantity ?? 0) * Pricing.At(r.Tag ?? 0, 0m, channel with { OurShare = 1m, Tax = Tax }).Fees.Sum(f => f.Amount)) : 0m;

    public void Start(SaleForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        _form = form;
        if (form.Last is { } last)
        {
            (Channel, TaxPercent, TaxBasis) = (last.Channel, last.TaxPercent, last.TaxBasis);
        }
        else if (form.Channels.Count > 0)
        {
            Choose(form.Channels[0].Name);
        }

        Follow(form);
    }

    /// <summary>Another channel brings its own tax and tags; a tag that was typed stays.</summary>
    public void Choose(string? channel)
    {
        Channel = channel?.Trim() ?? "";
        if (_form is not { } form)
        {
            return;
        }

        if (form.ChannelOf(Channel) is { } known)
        {
            (TaxPercent, TaxBasis) = (100m * known.Is.Tax.Rate, known.Is.Tax.Basis);
        }

        foreach (var row in Rows.Where(r => r.Product is not null))
        {
            Propose(row, form.TagOf(row.Product!, Channel));
        }
    }

    private static void Propose(SellRow row, decimal? tag)
    {
        if (row.Tag is null || row.Tag == row.Proposed)
        {
            row.Tag = tag;
        }

        row.Proposed = tag;
    }

    /// <summary>Takes over what is on the shelf now and keeps what was typed beside it.</summary>
    public void Follow(SaleForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        _form = form;
        var before = Rows.ToDictionary(r => r.Key);
        var rows = form.Goods.GroupBy(g => g.Product).Select(g => new SellRow
        {
            Key = $"{g.Key.FormulaId}|{g.Key.SizeName}", Name = g.Key.Name, Product = g.Key, Batches = InOrder(g, form.Today), Available = g.Sum(b => b.Count),
        }).Concat(form.Kits.Select(k => new SellRow { Key = k.Code, Name = $"{k.Name}, {k.Code}", KitLotId = k.Id, Available = k.Left })).ToList();
        foreach (var row in rows)
        {
            if (before.TryGetValue(row.Key, out var typed))
            {
                (row.Quantity, row.Tag, row.Proposed, row.Batch, row.Reason) = (typed.Quantity, typed.Tag, typed.Proposed, typed.Batch, typed.Reason);
            }

            if (row.Product is { } product)
            {
                Propose(row, form.TagOf(product, Channel));
            }
        }

        Rows = rows;
    }

    public RecordSale Request(Guid id, Guid place) => new()
    {
        RequestId = id, PlaceId = place, CustomerId = Customer, Channel = Channel, Reference = Reference, SoldOn = SoldOn, TaxPercent = TaxPercent ?? 0, TaxBasis = TaxBasis,
        Fees = Fees ?? decimal.Round(UsualFees, 2, MidpointRounding.AwayFromZero), Note = Note,
        Lines = [.. Taken.Select(r => new SoldLine
        {
            FormulaId = r.Product?.FormulaId, SizeName = r.Product?.SizeName, BatchId = r.Batch, KitLotId = r.KitLotId, Quantity = (int?)r.Quantity, Tag = r.Tag, Reason = r.Reason,
        })],
    };

    /// <summary>Nothing is left of what was sold; prices stay for the next buyer.</summary>
    public void Next()
    {
        foreach (var row in Rows)
        {
            (row.Quantity, row.Batch, row.Reason) = (null, null, null);
        }

        (Customer, Reference, Note, Fees) = (null, null, null, null);
    }

    /// <summary>Those that may be sold as they expire, then the others.</summary>
    private static IReadOnlyList<GoodsRow> InOrder(IEnumerable<GoodsRow> batches, DateOnly today)
    {
        var all = batches.ToList();
        var picks = UnitChoice.For(all.Sum(b => b.Count), all.Select(b => b.OnShelf()), today).Picks.Select(p => p.BatchId).ToList();
        return [.. all.OrderBy(b => picks.IndexOf(b.BatchId) is var at && at < 0 ? int.MaxValue : at)];
    }
}
