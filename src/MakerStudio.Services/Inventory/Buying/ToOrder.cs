using System.Globalization;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Begins an order to one supplier with what is due of the materials named. Nothing is sent before that is.</summary>
public sealed record DraftOrder : StudioRequest
{
    public Guid SupplierId { get; set; }
    public List<Guid> MaterialIds { get; set; } = [];
}

public sealed record OrderDrafted(Guid DraftId);

/// <param name="SafetySuggestion">Milligrams or pieces; null when too little is known.</param>
/// <param name="LastBuy">From the supplier it would be ordered from; null when that has not delivered it yet.</param>
public sealed record ToOrderRow(StockRow Stock, long? SafetySuggestion, LastBuy? LastBuy);

/// <param name="UnitPrice">Less discount, per <paramref name="Unit"/>, before freight.</param>
public sealed record LastBuy(AmountUnit Unit, decimal UnitPrice, DateOnly On);

public sealed partial class Purchasing
{
    /// <summary>A suggested quantity goes up to a thousandth of its unit: the gram, the millilitre.</summary>
    private const decimal Thousandths = 1000m;

    /// <summary>
    /// Every material that has a point to order at, the most urgent first; then those in use without a lead time. What is
    /// made here is not bought, unless it has a supplier.
    /// </summary>
    public async Task<IReadOnlyList<ToOrderRow>> ToOrderAsync(CancellationToken cancel = default)
    {
        await using var db = await store.ReadAsync(cancel);
        return await ToOrderAsync(db, store.Clock, cancel);
    }

    public Task<Outcome<OrderDrafted>> DraftAsync(Actor actor, DraftOrder request, CancellationToken cancel = default) =>
        store.RunAsync<DraftOrder, OrderDrafted>(actor, request, null, async command =>
        {
            if (await command.Db.Suppliers.SingleOrDefaultAsync(s => s.Id == request.SupplierId, cancel) is not { } supplier)
            {
                return new NotFound("This supplier");
            }

            var rows = (await ToOrderAsync(command.Db, store.Clock, cancel))
                .Where(r => r.Stock.From?.SupplierId == supplier.Id && request.MaterialIds.Contains(r.Stock.MaterialId) && r.Stock.Advice is { IsDue: true, Quantity.IsPositive: true }).ToList();
            if (rows.Count == 0)
            {
                return new Because($"Nothing of {supplier.Name} is due any more.", "Look at the list again; somebody may have ordered it.");
            }

            var densities = await command.Db.Materials.Where(m => request.MaterialIds.Contains(m.Id)).ToDictionaryAsync(m => m.Id, m => m.Density, cancel);
            var draft = new OrderDraft
            {
                SupplierId = supplier.Id,
                ExpectedOn = rows.Max(r => r.Stock.From!.LeadDays) is { } lead ? command.Today.AddDays(lead) : null,
                Lines = [.. rows.Select(r => DraftLine(r, densities[r.Stock.MaterialId]))],
            };
            var id = Guid.CreateVersion7();
            Typing.Put(command, null, id, draft);
            command.Record("order", id, $"Began an order to {supplier.Name}", Topics.Orders);
            return new OrderDrafted(id);
        }, cancel: cancel);

    private static OrderLineDraft DraftLine(ToOrderRow row, decimal? grams)
    {
        var advised = row.Stock.Advice!.Quantity;
        var usual = row.Stock.Unit == StockUnit.Each ? AmountUnit.Each : AmountUnit.Kilogram;
        var unit = row.LastBuy?.Unit ?? usual;
        var quantity = AmountConversion.FromStock(advised, unit, Density.WherePossible(grams));
        if (quantity is null)
        {
            (unit, quantity) = (usual, AmountConversion.FromStock(advised, usual, null));
        }

        return new OrderLineDraft
        {
            MaterialId = row.Stock.MaterialId, Unit = AmountUnits.Symbol(unit),
            Quantity = QuantityFormat.Editable(decimal.Ceiling(quantity!.Value * Thousandths) / Thousandths, CultureInfo.CurrentCulture),
            UnitPrice = row.LastBuy is { } last && last.Unit == unit ? QuantityFormat.Editable(last.UnitPrice, CultureInfo.CurrentCulture) : null,
        };
    }

    private static async Task<IReadOnlyList<ToOrderRow>> ToOrderAsync(StudioDb db, TimeProvider clock, CancellationToken cancel)
    {
        var stock = (await Stock.RowsAsync(db, clock, null, cancel))
            .Where(r => r.Advice is not null || (r.UsePerDay > 0 && (r.Kind != MaterialKind.PreBlend || r.From is not null))).ToList();
        var last = await LastBuysAsync(db, cancel);
        var busiest = await BusiestAsync(db, clock, stock, cancel);
        return [.. stock.Select(r => new ToOrderRow(
                r, Suggestion(r, busiest), r.From is { } from ? last.GetValueOrDefault((r.MaterialId, from.SupplierId)) : null))
            .OrderBy(r => r.Stock.Advice is null).ThenBy(r => r.Stock.Advice?.DaysLeft ?? int.MaxValue).ThenBy(r => r.Stock.CoverDays ?? decimal.MaxValue)
            .ThenBy(r => r.Stock.Name, StringComparer.CurrentCulture)];
    }

    private static async Task<Dictionary<(Guid Material, Guid Supplier), LastBuy>> LastBuysAsync(StudioDb db, CancellationToken cancel)
    {
        var lines = await (
            from line in db.DeliveryLines
            join delivery in Deliveries.Standing(db) on line.DeliveryId equals delivery.Id
            orderby delivery.ReceivedOn, delivery.PostedAt, line.Position
            select new { line.MaterialId, delivery.SupplierId, line.Unit, line.QuantityTyped, Value = line.Price - line.Discount, delivery.ReceivedOn }).ToListAsync(cancel);
        return lines.GroupBy(l => (l.MaterialId, l.SupplierId)).ToDictionary(
            g => g.Key, g => new LastBuy(g.Last().Unit, decimal.Round(g.Last().Value / g.Last().QuantityTyped, TypedNumbers.MoneyDecimals), g.Last().ReceivedOn));
    }

    /// <summary>The most that was used within any span as long as the lead time: milligrams or pieces.</summary>
    private static async Task<Dictionary<Guid, long>> BusiestAsync(StudioDb db, TimeProvider clock, IReadOnlyList<StockRow> rows, CancellationToken cancel)
    {
        var uses = (await Stock.UsesAsync(db, clock, cancel)).ToLookup(u => u.MaterialId);
        return rows.Where(r => r.LeadDays > 0).ToDictionary(r => r.MaterialId, r =>
        {
            var days = uses[r.MaterialId].OrderBy(u => u.At).ToList();
            return days.Count == 0 ? 0 : days.Max(first => days.Where(u => u.At >= first.At && u.At < first.At.AddDays(r.LeadDays!.Value)).Sum(u => u.Units));
        });
    }

    private static long? Suggestion(StockRow row, Dictionary<Guid, long> busiest)
    {
        if (row.LeadDays is not > 0 || row.UsePerDay == 0 || busiest.GetValueOrDefault(row.MaterialId) is not > 0)
        {
            return null;
        }

        var lead = row.LeadDays.Value;
        return Reorder.SafetySuggestion(
            new DailyUse(row.UsePerDay, row.Unit), lead,
            DailyUse.Over(new StockAmount(busiest[row.MaterialId], row.Unit), lead), row.LongestLeadDays ?? lead).Units;
    }
}
