using FluentValidation;
using MakerStudio.Core.Buying;
using MakerStudio.Core.Quantities;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Gives an order its number and freezes it: from now on it is what the supplier has in hand.</summary>
public sealed record SendOrder : StudioRequest
{
    /// <summary>The draft this was typed in; it goes when the order is sent, so it cannot be sent twice.</summary>
    public Guid? DraftId { get; set; }
    public Guid SupplierId { get; set; }
    public DateOnly? ExpectedOn { get; set; }
    public decimal Freight { get; set; }

    /// <summary>A fraction, on goods and freight.</summary>
    public decimal TaxRate { get; set; }
    public string? Note { get; set; }
    public List<OrderLineTyped> Lines { get; set; } = [];
}

/// <summary>A line in the supplier's own units.</summary>
public sealed record OrderLineTyped
{
    public Guid MaterialId { get; set; }
    public decimal Quantity { get; set; }
    public AmountUnit Unit { get; set; }

    /// <summary>Per unit, before discount; null while none is typed.</summary>
    public decimal? UnitPrice { get; set; }

    /// <summary>A fraction of the line.</summary>
    public decimal Discount { get; set; }
}

public sealed class SendOrderValidator : AbstractValidator<SendOrder>
{
    /// <summary>Lines on one order; the house's own bound.</summary>
    public const int MostLines = 200;
    private const decimal MostMoney = 10_000_000m;

    public SendOrderValidator()
    {
        RuleFor(r => r.SupplierId).NotEmpty().WithMessage("Choose the supplier.");
        RuleFor(r => r.Freight).InclusiveBetween(0, MostMoney).WithMessage("Freight is zero or more.");
        RuleFor(r => r.TaxRate).InclusiveBetween(0, 1).WithMessage("Tax is between 0 % and 100 %.");
        RuleFor(r => r.Note).SeveralLines("The note", 1000);
        RuleFor(r => r.Lines).NotEmpty().WithMessage("The order has no lines yet.")
            .Must(l => l.Count <= MostLines).WithMessage($"One order holds at most {MostLines} lines; part it in two.");
        RuleForEach(r => r.Lines).ChildRules(line =>
        {
            line.RuleFor(l => l.MaterialId).NotEmpty().WithMessage("Choose the material of this line.");
            line.RuleFor(l => l.Quantity).GreaterThan(0).WithMessage("Give the quantity, above zero.");
            line.RuleFor(l => l.UnitPrice).NotNull().WithMessage("Give the price of one unit, 0 for a free sample.")
                .InclusiveBetween(0, MostMoney).WithMessage("The price is zero or more.");
            line.RuleFor(l => l.Discount).InclusiveBetween(0, 1).WithMessage("A discount is between 0 % and 100 %.");
        });
    }
}

public sealed record OrderSent(Guid Id, string Code, decimal Total);

public sealed partial class Purchasing
{
    private const string CodePrefix = "O";
    private static readonly SendOrderValidator SendShape = new();

    public Task<Outcome<OrderSent>> SendAsync(Actor actor, SendOrder request, CancellationToken cancel = default) =>
        store.RunAsync<SendOrder, OrderSent>(actor, request, SendShape, async command =>
        {
            if (request.DraftId is { } draftId)
            {
                if (await Typing.LockAsync(command, draftId) is not { } draft)
                {
                    return Typing.Gone;
                }

                command.Db.Drafts.Remove(draft);
            }

            if (await command.Db.Suppliers.SingleOrDefaultAsync(s => s.Id == request.SupplierId, cancel) is not { } supplier)
            {
                return new NotFound("This supplier");
            }

            if (request.ExpectedOn < command.Today)
            {
                return new NotAcceptable([new FieldProblem(nameof(request.ExpectedOn), $"{AmountWords.Day(request.ExpectedOn.Value)} is past; give the day it is expected, or leave it empty.")]);
            }

            var facts = await MaterialFacts.LoadAsync(command.Db, request.Lines.Select(l => l.MaterialId), cancel);
            var read = request.Lines.Select((l, i) => Read(l, i, facts)).ToList();
            if (read.Where(r => r.Problem is not null).Select(r => r.Problem!).ToList() is { Count: > 0 } problems)
            {
                return new NotAcceptable(problems);
            }

            var order = await WriteAsync(command, request, read.ConvertAll(r => r.Stock));
            var total = OrderSums.Of(request, facts)!.Total;
            command.Record("order", order.Id, $"Sent Order {order.Code} to {supplier.Name}: {request.Lines.Count} {(request.Lines.Count == 1 ? "line" : "lines")}, {AmountWords.Money(total)}", Topics.Orders);
            return new OrderSent(order.Id, order.Code, total);
        }, cancel: cancel);

    private static async Task<PurchaseOrder> WriteAsync(Command command, SendOrder request, IReadOnlyList<StockAmount> stock)
    {
        var order = new PurchaseOrder
        {
            Code = await command.NextCodeAsync(CodePrefix), SupplierId = request.SupplierId, OrderedOn = command.Today, ExpectedOn = request.ExpectedOn,
            Freight = request.Freight, TaxRate = request.TaxRate, Note = TypedNumbers.Tidy(request.Note), SentById = command.PersonId, SentAt = command.Now,
        };
        order.Lines.AddRange(request.Lines.Select((l, i) => new PurchaseOrderLine
        {
            Position = i + 1, MaterialId = l.MaterialId, Quantity = l.Quantity, Unit = l.Unit, Units = stock[i].Units, UnitPrice = l.UnitPrice!.Value, Discount = l.Discount,
        }));
        command.Db.PurchaseOrders.Add(order);
        return order;
    }

    private static (StockAmount Stock, FieldProblem? Problem) Read(OrderLineTyped line, int index, Dictionary<Guid, MaterialFacts> facts)
    {
        if (!facts.TryGetValue(line.MaterialId, out var material))
        {
            return (default, new FieldProblem($"Lines[{index}].MaterialId", "This material is not here any more; choose another."));
        }

        var result = OrderSums.IntoStock(line, material);
        return (
            result is ConversionResult.Converted { Amount: var amount } ? amount : default,
            DeliverySums.WhyNot(result) is { } why ? new FieldProblem($"Lines[{index}].Quantity", $"{material.Name}: {why}") : null);
    }
}

/// <summary>The sums of an order, worked out the same way for the page, for sending and for print.</summary>
internal static class OrderSums
{
    public static ConversionResult IntoStock(OrderLineTyped line, MaterialFacts material) => AmountConversion.ToStock(
        line.Quantity, line.Unit, material.StockedIn, Density.WherePossible(material.Density));

    /// <summary>Null while a line lacks its price or quantity.</summary>
    public static OrderTotals? Of(SendOrder typed, Dictionary<Guid, MaterialFacts> facts)
    {
        if (typed.Lines.Any(l => l.UnitPrice is null))
        {
            return null;
        }

        IReadOnlyList<OrderLine> lines = [.. typed.Lines.Select(l => new OrderLine(facts.GetValueOrDefault(l.MaterialId)?.Name ?? "", l.Quantity, l.UnitPrice!.Value, l.Discount))];
        return PurchaseOrders.Problems(lines, typed.Freight, typed.TaxRate).Count > 0 ? null : PurchaseOrders.Totals(lines, typed.Freight, typed.TaxRate);
    }
}
