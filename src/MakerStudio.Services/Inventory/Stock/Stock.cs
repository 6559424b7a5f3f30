using System.Text.Json.Serialization;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Stock by material: what is there, what is spoken for, how long it lasts.</summary>
public sealed partial class Stock(StudioStore store)
{
    /// <summary>Use is averaged over this many days; the house's own span.</summary>
    public const int UseSpanDays = 60;

    /// <summary>One row for each material that is not archived, or still has stock, by name.</summary>
    public async Task<IReadOnlyList<StockRow>> ListAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await RowsAsync(db, store.Clock, null, cancel);
    }

    /// <summary>The row of one material; null when there is none.</summary>
    public async Task<StockRow?> FindAsync(Guid materialId, CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return (await RowsAsync(db, store.Clock, [materialId], cancel)).SingleOrDefault();
    }

    /// <param name="only">These materials, archived ones too; null for all that are not archived or still have stock.</param>
    internal static async Task<IReadOnlyList<StockRow>> RowsAsync(StudioDb db, TimeProvider clock, IReadOnlyCollection<Guid>? only, CancellationToken cancel)
    {
        var today = await StudioDay.TodayAsync(db, clock, cancel);
        var materials = await db.Materials.Where(m => only == null || only.Contains(m.Id))
            .Where(m => only != null || m.ArchivedAt == null || db.Lots.Any(l => l.MaterialId == m.Id && l.Balance!.OnHand > 0)).OrderBy(m => m.Name)
            .Select(m => new { m.Id, m.Name, m.Kind, m.StockedIn, m.LifeAfterOpeningDays, m.ReorderPoint, m.SafetyStock, m.OrderCoverDays }).ToListAsync(cancel);
        var lots = await ShelfAsync(db, only, cancel);
        var reserved = await ReservedAsync(db, only, cancel);
        var toFollow = await db.PendingReceipts.Where(p => p.MatchedAt == null && (only == null || only.Contains(p.MaterialId)))
            .GroupBy(p => p.MaterialId).Select(g => new { g.Key, Sum = g.Sum(p => p.Milligrams), Cost = g.Max(p => p.EstimatedUnitCost) })
            .ToDictionaryAsync(g => g.Key, g => (g.Sum, g.Cost), cancel);
        var used = await UsedAsync(db, clock, only, cancel);
        var terms = await TermsAsync(db, only, cancel);
        var onOrder = await OnOrder.OfAsync(db, only, cancel);
        return [.. materials.Select(m =>
        {
            var shelf = lots[m.Id].Select(l => l with { UseBy = LotDates.EffectiveExpiry(l.ExpiresOn, l.RetestOn, l.OpenedOn, m.LifeAfterOpeningDays) }).ToList();
            var last = shelf.OrderBy(l => l.ReceivedOn).ThenBy(l => l.LotId).LastOrDefault();
            var follow = toFollow.GetValueOrDefault(m.Id);
            return new StockRow(
                m.Id, m.Name, m.Kind, m.StockedIn,
                shelf.Sum(l => l.OnHand), reserved.GetValueOrDefault(m.Id),
                shelf.Where(l => l.Status != LotStatus.Released).Sum(l => l.OnHand),
                shelf.Where(l => l.Status == LotStatus.Released && l.UseBy < today).Sum(l => l.OnHand), follow.Sum,
                DailyUse.Over(new StockAmount(used.GetValueOrDefault(m.Id), m.StockedIn), UseSpanDays).PerDay, terms[m.Id].FirstOrDefault()?.LeadDays, m.ReorderPoint,
                last?.UnitCost ?? (follow.Sum > 0 ? follow.Cost : null), last is null && follow.Sum > 0, today,
                [.. shelf.Where(l => l.OnHand > 0).OrderBy(l => l.Status != LotStatus.Released).ThenBy(l => l.UseBy ?? DateOnly.MaxValue).Select(l => l.Code)])
            {
                OnItsWay = onOrder.GetValueOrDefault(m.Id), SafetyStock = m.SafetyStock ?? 0, OrderCoverDays = m.OrderCoverDays ?? StockRow.UsualOrderCoverDays,
                From = terms[m.Id].FirstOrDefault(), LongestLeadDays = terms[m.Id].Max(t => t.LeadDays),
            };
        })];
    }

    private static async Task<ILookup<Guid, StockLot>> ShelfAsync(StudioDb db, IReadOnlyCollection<Guid>? only, CancellationToken cancel) =>
        (await db.Lots.Where(l => only == null || only.Contains(l.MaterialId))
            .Select(l => new StockLot(l.Id, l.MaterialId, l.Code, l.Status, l.Balance!.OnHand, l.ReceivedOn, l.OpenedOn, l.ExpiresOn, l.RetestOn, l.UnitCost, null))
            .ToListAsync(cancel)).ToLookup(l => l.MaterialId);

    private static async Task<Dictionary<Guid, long>> ReservedAsync(StudioDb db, IReadOnlyCollection<Guid>? only, CancellationToken cancel) =>
        (await Outstanding.OfAsync(db, only, cancel)).GroupBy(row => row.MaterialId).ToDictionary(g => g.Key, g => g.Sum(row => row.Units));

    private static async Task<Dictionary<Guid, long>> UsedAsync(StudioDb db, TimeProvider clock, IReadOnlyCollection<Guid>? only, CancellationToken cancel) =>
        await Uses(db, clock).Where(m => only == null || only.Contains(m.Lot!.MaterialId))
            .GroupBy(m => m.Lot!.MaterialId).Select(g => new { g.Key, Used = -g.Sum(m => m.Change) })
            .ToDictionaryAsync(g => g.Key, g => Math.Max(g.Used, 0), cancel);

    /// <summary>Each use of the span, reversals of uses within it as less.</summary>
    internal static async Task<IReadOnlyList<MaterialUse>> UsesAsync(StudioDb db, TimeProvider clock, CancellationToken cancel) =>
        await Uses(db, clock).Select(m => new MaterialUse(m.Lot!.MaterialId, m.At, -m.Change)).ToListAsync(cancel);

    private static IQueryable<Movement> Uses(StudioDb db, TimeProvider clock)
    {
        var since = clock.GetUtcNow().ToUniversalTime().AddDays(-UseSpanDays);
        MovementKind[] uses = [MovementKind.Use, MovementKind.Packaging];
        return db.Movements.Where(m => m.At >= since)
            .Where(m => uses.Contains(m.Kind) || (m.ReversesId != null && db.Movements.Any(r => r.Id == m.ReversesId && r.At >= since && uses.Contains(r.Kind))));
    }

    /// <summary>How each supplier sells a material: the one that delivered last first, one without a lead time after those that have one.</summary>
    private static async Task<ILookup<Guid, BuyingTerms>> TermsAsync(StudioDb db, IReadOnlyCollection<Guid>? only, CancellationToken cancel)
    {
        var terms = await db.MaterialSuppliers.Where(s => only == null || only.Contains(s.MaterialId))
            .Select(s => new
            {
                s.MaterialId,
                Terms = new BuyingTerms(s.SupplierId, s.Supplier!.Name, s.SupplierCode, s.LeadTimeDays, s.Minimum, s.Pack),
                LastUsed = db.Lots.Where(l => l.MaterialId == s.MaterialId && l.SupplierId == s.SupplierId).Max(l => (DateOnly?)l.ReceivedOn),
            }).ToListAsync(cancel);
        return terms.OrderBy(t => t.Terms.LeadDays is null).ThenByDescending(t => t.LastUsed ?? DateOnly.MinValue).ThenByDescending(t => t.Terms.LeadDays)
            .ThenBy(t => t.Terms.Supplier, StringComparer.Ordinal).ToLookup(t => t.MaterialId, t => t.Terms);
    }

    private sealed record StockLot(
        Guid LotId, Guid MaterialId, string Code, LotStatus Status, long OnHand, DateOnly ReceivedOn, DateOnly? OpenedOn, DateOnly? ExpiresOn, DateOnly? RetestOn,
        decimal UnitCost, DateOnly? UseBy);
}

/// <param name="Units">Milligrams or pieces; below zero when a use was taken back.</param>
internal sealed record MaterialUse(Guid MaterialId, DateTimeOffset At, long Units);

/// <summary>How a supplier sells a material.</summary>
/// <param name="Minimum">The least they sell, milligrams or pieces; null when anything.</param>
/// <param name="Pack">They sell whole packs of this; null when any amount.</param>
public sealed record BuyingTerms(Guid SupplierId, string Supplier, string? Code, int? LeadDays, long? Minimum, long? Pack);

/// <summary>All amounts in milligrams or pieces.</summary>
/// <param name="OnHand">In all its lots, whatever their status.</param>
/// <param name="Reserved">What open batches still need.</param>
/// <param name="NotReleased">On hand in quarantine, on hold or rejected.</param>
/// <param name="PastUse">Released, but past its expiry or retest date: not usable.</param>
/// <param name="ToFollow">Used before its receipt came.</param>
/// <param name="UsePerDay">Grams or pieces a day over the last 60 days.</param>
/// <param name="LastUnitCost">Landed, of one gram or one piece, of the lot received last; an estimate when <paramref name="IsEstimate"/>.</param>
/// <param name="LotCodes">Lots with something on hand, released ones first.</param>
public sealed record StockRow(
    Guid MaterialId, string Name, MaterialKind Kind, StockUnit Unit, long OnHand, long Reserved, long NotReleased, long PastUse, long ToFollow,
    decimal UsePerDay, int? LeadDays, long? ReorderPoint, decimal? LastUnitCost, bool IsEstimate, DateOnly Today, IReadOnlyList<string> LotCodes)
{
    /// <summary>On hand less reserved less not released, less what may not be used and what was used ahead of its receipt.</summary>
    public long Available => OnHand - Reserved - NotReleased - PastUse - ToFollow;

    /// <summary>Days what is available lasts at the use of the last 60 days; null when nothing is being used.</summary>
    public decimal? CoverDays => Reorder.CoverDays(new StockAmount(Available, Unit), new DailyUse(UsePerDay, Unit));

    /// <summary>The same in average months.</summary>
    public decimal? CoverMonths => Reorder.CoverMonths(new StockAmount(Available, Unit), new DailyUse(UsePerDay, Unit));

    /// <summary>Days an order is to last beyond its lead time, unless the material says otherwise. The house's own span.</summary>
    public const int UsualOrderCoverDays = 60;

    /// <summary>Ordered and not yet here; null when nothing is.</summary>
    public OnItsWay? OnItsWay { get; init; }

    public long SafetyStock { get; init; }

    public int OrderCoverDays { get; init; } = UsualOrderCoverDays;

    /// <summary>The supplier it would be ordered from: the one that delivered last.</summary>
    public BuyingTerms? From { get; init; }

    /// <summary>Of all its suppliers.</summary>
    public int? LongestLeadDays { get; init; }

    /// <summary>Available and on its way together.</summary>
    public long Coming => Available + (OnItsWay?.Units ?? 0);

    /// <summary>When to order and how much; null while neither a point of its own nor use and lead time are known.</summary>
    [JsonIgnore]
    public ReorderAdvice? Advice => ReorderPoint is null && (LeadDays is null || (UsePerDay == 0 && SafetyStock == 0)) ? null : Reorder.Advise(new ReorderState(
        new StockAmount(Available, Unit), new StockAmount(OnItsWay?.Units ?? 0, Unit), new DailyUse(UsePerDay, Unit), LeadDays ?? 0,
        new StockAmount(SafetyStock, Unit), OrderCoverDays, new StockAmount(From?.Minimum ?? 0, Unit), new StockAmount(From?.Pack ?? 0, Unit))
        { OwnPoint = ReorderPoint is { } own ? new StockAmount(own, Unit) : null });

    /// <summary>The last day on which an order still arrives in time, past when it is late; null when use or lead time is not known.</summary>
    public DateOnly? OrderBy => Advice is { } advice && UsePerDay > 0
        && new StockAmount(Coming - advice.Point.Units, Unit).Display / UsePerDay is var days && Math.Abs(days) < MostDays ? Today.AddDays((int)decimal.Floor(days)) : null;

    /// <summary>What is there and on its way no longer lasts until an order placed today arrives, or is down to the point.</summary>
    public bool OrderNow => Advice is { IsDue: true };

    private const decimal MostDays = 36_500m;
}
