using System.Globalization;
using FluentValidation;
using MakerStudio.Core.Buying;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>What a supplier's price is for, as it was typed.</summary>
public enum PriceIs
{
    /// <summary>All of the quantity: 290.00 for 5 kg.</summary>
    OfAll,

    /// <summary>One of its unit: 58.00 a kg from 5 kg on.</summary>
    OfOne,
}

/// <summary>Notes what a supplier of a material asks for a quantity; of the same quantity the one typed last holds.</summary>
public sealed record KeepPriceBreak : StudioRequest
{
    public Guid MaterialId { get; set; }
    public Guid? SupplierId { get; set; }
    public decimal? Quantity { get; set; }
    public AmountUnit Unit { get; set; }
    public decimal? Price { get; set; }
    public PriceIs PriceIs { get; set; }

    /// <summary>Money of the whole quantity, as <see cref="Charges"/>; empty when not said.</summary>
    public decimal? Freight { get; set; }

    /// <summary>Duty and surcharges.</summary>
    public decimal? Charges { get; set; }

    /// <summary>Day of the price list or the offer; empty for today.</summary>
    public DateOnly? AskedOn { get; set; }
    public string? Note { get; set; }
}

public sealed class KeepPriceBreakValidator : AbstractValidator<KeepPriceBreak>
{
    private const decimal MostMoney = 10_000_000m, MostQuantity = 1_000_000m;

    public KeepPriceBreakValidator()
    {
        RuleFor(r => r.SupplierId).NotEmpty().WithMessage("Choose whose price it is.");
        RuleFor(r => r.Quantity).NotNull().WithMessage("From which quantity on is this asked?")
            .Must(q => q is null or (> 0 and <= MostQuantity)).WithMessage(_ => $"The quantity is above 0 and at most {MostQuantity:N0}.");
        RuleFor(r => r.Unit).IsInEnum().WithMessage("Choose a unit from the list.");
        RuleFor(r => r.Price).NotNull().WithMessage("Type what is asked, without tax that is paid back to you.")
            .Must(p => p is null or (> 0 and <= MostMoney)).WithMessage(_ => $"The price is above 0 and at most {MostMoney:N0}.");
        RuleFor(r => r.PriceIs).IsInEnum();
        RuleFor(r => r.Freight).InclusiveBetween(0, MostMoney).WithMessage(_ => $"Freight is from 0 to {MostMoney:N0}.");
        RuleFor(r => r.Charges).InclusiveBetween(0, MostMoney).WithMessage(_ => $"Duty and surcharges are from 0 to {MostMoney:N0}.");
        RuleFor(r => r.Note).OneLine("The note", 200);
    }
}

/// <summary>Takes a price off the comparison: it is no longer asked. What was asked stays in the record.</summary>
public sealed record EndPriceBreak : StudioRequest
{
    public long PriceBreakId { get; set; }
}

/// <param name="Freight">Of the whole quantity, as <paramref name="Charges"/>; null when not said.</param>
/// <param name="Who">Who typed it.</param>
/// <param name="InStock">The quantity in grams or pieces; null where <paramref name="WhyNot"/> says why.</param>
public sealed record PriceBreakRow(
    long Id, Guid SupplierId, string Supplier, decimal Quantity, AmountUnit Unit, decimal Price, PriceIs PriceIs, decimal? Freight, decimal? Charges,
    DateOnly AskedOn, string? Note, string Who, DateTimeOffset At, decimal? InStock, string? WhyNot)
{
    /// <summary>Of all of it, before freight and charges.</summary>
    public decimal PriceOfAll => PriceIs == PriceIs.OfAll ? Price : Price * Quantity;

    public decimal Landed => PriceOfAll + (Freight ?? 0m) + (Charges ?? 0m);

    /// <summary>Landed, of one gram or one piece, not rounded.</summary>
    public decimal? UnitCost => InStock is { } quantity ? Landed / quantity : null;

    /// <exception cref="InvalidOperationException">The quantity cannot be said in the unit of stock.</exception>
    internal Offer Offer() => new(
        Supplier, InStock ?? throw new InvalidOperationException("It cannot be compared."), PriceOfAll, Freight ?? 0m, Surcharge: Charges ?? 0m);
}

public sealed partial class MaterialPrices
{
    private static readonly KeepPriceBreakValidator BreakShape = new();

    public Task<Outcome<Nothing>> KeepBreakAsync(Actor actor, KeepPriceBreak request, CancellationToken cancel = default) =>
        store.RunAsync<KeepPriceBreak, Nothing>(actor, request, BreakShape, async command =>
        {
            var material = await command.Db.Materials.AsNoTracking().SingleOrDefaultAsync(m => m.Id == request.MaterialId, cancel);
            if (material is null)
            {
                return new NotFound("This material");
            }

            var supplier = await command.Db.MaterialSuppliers.Where(s => s.MaterialId == material.Id && s.SupplierId == request.SupplierId)
                .Select(s => s.Supplier!.Name).SingleOrDefaultAsync(cancel);
            if (supplier is null)
            {
                return new Because($"{material.Name} is not bought from this supplier any more.", "Add the supplier to the material, or choose another.");
            }

            if (request.AskedOn > command.Today)
            {
                return new NotAcceptable([new FieldProblem("AskedOn", $"{AmountWords.Day(request.AskedOn.Value)} is still to come; give the day it was asked.")]);
            }

            if (DeliverySums.WhyNot(IntoStock(request.Quantity!.Value, request.Unit, material.StockedIn, material.Density)) is { } why)
            {
                return new NotAcceptable([new FieldProblem("Quantity", why)]);
            }

            var asked = RowOf(command, request);
            command.Db.PriceBreaks.Add(asked);
            command.Record("material", material.Id, $"{supplier} asks {Words(asked)} of {material.Name}", Topics.Materials);
            return Nothing.Value;
        }, cancel: cancel);

    public Task<Outcome<Nothing>> EndBreakAsync(Actor actor, EndPriceBreak request, CancellationToken cancel = default) =>
        store.RunAsync<EndPriceBreak, Nothing>(actor, request, null, async command =>
        {
            var asked = await command.Db.PriceBreaks.AsNoTracking().SingleOrDefaultAsync(b => b.Id == request.PriceBreakId && b.Price != null, cancel);
            if (asked is null)
            {
                return new NotFound("This price");
            }

            var names = await command.Db.Materials.Where(m => m.Id == asked.MaterialId)
                .Select(m => new { Material = m.Name, Supplier = command.Db.Suppliers.Where(s => s.Id == asked.SupplierId).Select(s => s.Name).First() }).SingleAsync(cancel);
            command.Db.PriceBreaks.Add(new PriceBreak
            {
                MaterialId = asked.MaterialId, SupplierId = asked.SupplierId, Quantity = asked.Quantity, Unit = asked.Unit, Price = null, PriceIs = asked.PriceIs,
                AskedOn = command.Today, PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
            });
            command.Record("material", asked.MaterialId, $"{names.Supplier} no longer asks {Words(asked)} of {names.Material}", Topics.Materials);
            return Nothing.Value;
        }, cancel: cancel);

    private static PriceBreak RowOf(Command command, KeepPriceBreak request) => new()
    {
        MaterialId = request.MaterialId, SupplierId = request.SupplierId!.Value, Quantity = request.Quantity!.Value, Unit = request.Unit,
        Price = request.Price, PriceIs = request.PriceIs, Freight = request.Freight, Charges = request.Charges, AskedOn = request.AskedOn ?? command.Today,
        Note = string.IsNullOrWhiteSpace(request.Note) ? null : request.Note.Trim(),
        PersonId = command.PersonId, At = command.Now, RequestId = command.RequestId,
    };

    /// <summary>Those in force of suppliers it is still bought from, by supplier and quantity.</summary>
    private static async Task<List<PriceBreakRow>> BreaksAsync(StudioDb db, PricedMaterial material, CancellationToken cancel)
    {
        var all = await (
            from asked in db.PriceBreaks
            join link in db.MaterialSuppliers on new { asked.MaterialId, asked.SupplierId } equals new { link.MaterialId, link.SupplierId }
            join person in db.Users on asked.PersonId equals person.Id
            where asked.MaterialId == material.Id
            orderby asked.Id
            select new { Row = asked, Supplier = link.Supplier!.Name, person.DisplayName }).ToListAsync(cancel);
        return
        [
            .. all.GroupBy(a => (a.Row.SupplierId, a.Row.Quantity, a.Row.Unit)).Select(g => g.Last()).Where(a => a.Row.Price is not null)
                .Select(a => Shown(a.Row, a.Supplier, a.DisplayName, material))
                .OrderBy(b => b.Supplier, StringComparer.CurrentCultureIgnoreCase).ThenBy(b => b.InStock ?? 0m).ThenBy(b => b.Id),
        ];
    }

    private static PriceBreakRow Shown(PriceBreak row, string supplier, string who, PricedMaterial material)
    {
        var inStock = IntoStock(row.Quantity, row.Unit, material.Unit, material.Density);
        return new PriceBreakRow(
            row.Id, row.SupplierId, supplier, row.Quantity, row.Unit, row.Price!.Value, row.PriceIs, row.Freight, row.Charges, row.AskedOn, row.Note, who, row.At,
            (inStock as ConversionResult.Converted)?.Exact, DeliverySums.WhyNot(inStock));
    }

    private static ConversionResult IntoStock(decimal quantity, AmountUnit unit, StockUnit stockedIn, decimal? density) => AmountConversion.ToStock(
        quantity, unit, stockedIn, Density.WherePossible(density));

    /// <summary>"290.00 for 5 kg" or "58.00 per kg from 5 kg on".</summary>
    private static string Words(PriceBreak row)
    {
        var quantity = row.Unit == AmountUnit.Each
            ? AmountWords.Amount((long)row.Quantity, StockUnit.Each)
            : $"{QuantityFormat.Editable(row.Quantity, CultureInfo.CurrentCulture)} {AmountUnits.Symbol(row.Unit)}";
        var price = AmountWords.MoneyInFull(row.Price!.Value);
        return row.PriceIs == PriceIs.OfAll ? $"{price} for {quantity}" : $"{price} {(row.Unit == AmountUnit.Each ? "each" : "per " + AmountUnits.Symbol(row.Unit))} from {quantity} on";
    }
}
