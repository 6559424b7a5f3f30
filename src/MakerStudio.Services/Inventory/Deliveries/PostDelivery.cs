using System.Globalization;
using FluentValidation;
using MakerStudio.Core.Costing;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Inventory;

/// <summary>Posts an invoice: a lot for each line, or nothing at all.</summary>
public sealed record PostDelivery : StudioRequest
{
    /// <summary>The draft this was typed in; it goes when the delivery is posted, so it cannot be posted twice.</summary>
    public Guid? DraftId { get; set; }
    public Guid SupplierId { get; set; }
    public string? InvoiceNumber { get; set; }
    public DateOnly ReceivedOn { get; set; }
    public decimal Freight { get; set; }
    public FreightBasis FreightBasis { get; set; }

    /// <summary>What the invoice says in all, recoverable tax left out; null when it is not to be checked.</summary>
    public decimal? InvoiceTotal { get; set; }
    public List<DeliveryLineTyped> Lines { get; set; } = [];
}

/// <summary>A line in the supplier's own units.</summary>
public sealed record DeliveryLineTyped
{
    public Guid MaterialId { get; set; }
    public decimal Quantity { get; set; }
    public AmountUnit Unit { get; set; }

    /// <summary>Of the whole line, before discount.</summary>
    public decimal Price { get; set; }
    public decimal? GrossKg { get; set; }
    public decimal Duty { get; set; }
    public decimal Surcharge { get; set; }
    public decimal Discount { get; set; }

    /// <summary>g/mL of this lot; null takes the material's.</summary>
    public decimal? Density { get; set; }
    public string? SupplierLot { get; set; }
    public DateOnly? ExpiresOn { get; set; }
    public DateOnly? RetestOn { get; set; }
    public string? Shelf { get; set; }
    public long? TareMilligrams { get; set; }

    /// <summary>The price per kg or piece that was confirmed as right though far from the last one.</summary>
    public decimal? ConfirmedUnitPrice { get; set; }

    /// <summary>The line of a purchase order that this came for; null when it was not ordered here.</summary>
    public Guid? OrderLineId { get; set; }
}

public sealed class PostDeliveryValidator : AbstractValidator<PostDelivery>
{
    /// <summary>Lines on one invoice; the house's own bound.</summary>
    public const int MostLines = 200;

    public PostDeliveryValidator()
    {
        RuleFor(r => r.SupplierId).NotEmpty().WithMessage("Choose the supplier.");
        RuleFor(r => r.ReceivedOn).NotEmpty().WithMessage("Give the day it arrived.");
        RuleFor(r => r.InvoiceNumber).MaximumLength(60).WithMessage("The invoice number has at most 60 characters.");
        RuleFor(r => r.Freight).InclusiveBetween(0, 1_000_000).WithMessage("Freight is from 0 to 1,000,000.");
        RuleFor(r => r.Lines).NotEmpty().WithMessage("The invoice has no lines yet.")
            .Must(l => l.Count <= MostLines).WithMessage("One delivery holds at most 200 lines; part it in two.");
        RuleForEach(r => r.Lines).SetValidator(new DeliveryLineValidator());
    }
}

public sealed class DeliveryLineValidator : AbstractValidator<DeliveryLineTyped>
{
    private const decimal MostMoney = 10_000_000m;

    public DeliveryLineValidator()
    {
        RuleFor(l => l.MaterialId).NotEmpty().WithMessage("Choose the material of this line.");
        RuleFor(l => l.Quantity).GreaterThan(0).WithMessage("Give the quantity as invoiced, above zero.");
        RuleFor(l => l.Price).InclusiveBetween(0, MostMoney).WithMessage("Give the price of the whole line, 0 for a free sample.");
        RuleFor(l => l.Duty).InclusiveBetween(0, MostMoney).WithMessage("Duty is zero or more.");
        RuleFor(l => l.Surcharge).InclusiveBetween(0, MostMoney).WithMessage("A surcharge is zero or more.");
        RuleFor(l => l.Discount).GreaterThanOrEqualTo(0).WithMessage("A discount is typed without a minus.")
            .LessThanOrEqualTo(l => l.Price).When(l => l.Price >= 0).WithMessage("The discount is above the price of the line.");
        RuleFor(l => l.GrossKg).GreaterThanOrEqualTo(0).WithMessage("The gross weight is zero or more.");
        RuleFor(l => l.Density).Must(d => d is not { } grams || Density.IsPossible(grams)).WithMessage("A density lies between 0.1 and 5 g/mL.");
        RuleFor(l => l.SupplierLot).MaximumLength(60).WithMessage("The supplier's lot has at most 60 characters.");
        RuleFor(l => l.Shelf).MaximumLength(60).WithMessage("The shelf has at most 60 characters.");
        RuleFor(l => l.TareMilligrams).GreaterThanOrEqualTo(0).WithMessage("The tare is zero or more.");
    }
}

public sealed record DeliveryPosted(Guid Id, string Code, decimal Total, IReadOnlyList<PostedLot> Lots);

/// <param name="Why">Why the lot is in quarantine, or on what ground it was released.</param>
public sealed record PostedLot(Guid LotId, string Code, string Material, LotStatus Status, string? Why);

/// <summary>The lines and freight do not add up to what the invoice says.</summary>
public sealed record TotalDiffers(decimal WorkedOut, decimal Invoice) : Refusal
{
    public decimal Difference => WorkedOut - Invoice;

    public override string Happened =>
        $"The lines and freight add up to {AmountWords.MoneyInFull(WorkedOut)}; the invoice says {AmountWords.MoneyInFull(Invoice)}, "
        + $"{AmountWords.MoneyInFull(Math.Abs(Difference))} {(Difference > 0 ? "less" : "more")}.";
    public override string ToDo => "Find the line that differs. Tax that is paid back to you is left out of both.";
}

public sealed partial class Deliveries
{
    private const string CodeCounter = "Delivery";
    private static readonly PostDeliveryValidator PostDeliveryShape = new();

    public Task<Outcome<DeliveryPosted>> PostAsync(Actor actor, PostDelivery request, CancellationToken cancel = default) =>
        store.RunAsync<PostDelivery, DeliveryPosted>(actor, request, PostDeliveryShape, async command =>
        {
            if (await WhyNotPostAsync(command, request, cancel) is { } refusal)
            {
                return refusal;
            }

            var facts = await MaterialFacts.LoadAsync(command.Db, request.Lines.Select(l => l.MaterialId), cancel);
            if (Problems(request, facts, out var stock) is { } problems)
            {
                return problems;
            }

            if (await NotOrderedAsync(command, request, cancel) is { } notOrdered)
            {
                return notOrdered;
            }

            var landed = LandedCost.Allocate(
                [.. request.Lines.Select((l, i) => DeliverySums.Invoice(l, stock[i]))], request.Freight, request.FreightBasis);
            if (request.InvoiceTotal is { } total && total != landed.Total)
            {
                return new TotalDiffers(landed.Total, total);
            }

            var questions = request.Lines.Select((l, i) => DeliverySums.Question(i, l, facts[l.MaterialId], stock[i])).OfType<PriceAsked>().ToList();
            return questions.Count > 0
                ? new PriceLooksFar(questions)
                : await ShelveAsync(command, request, facts, stock, landed);
        }, cancel: cancel);

    private static async Task<Refusal?> WhyNotPostAsync(Command command, PostDelivery request, CancellationToken cancel)
    {
        if (request.DraftId is { } draftId)
        {
            if (await Typing.LockAsync(command, draftId) is not { } draft)
            {
                return Typing.Gone;
            }

            command.Db.Drafts.Remove(draft);
        }

        if (request.ReceivedOn > command.Today)
        {
            return new NotAcceptable([new FieldProblem("ReceivedOn", $"{AmountWords.Day(request.ReceivedOn)} is still to come; give the day it arrived.")]);
        }

        if (!await command.Db.Suppliers.AnyAsync(s => s.Id == request.SupplierId, cancel))
        {
            return new NotFound("This supplier");
        }

        var invoice = request.InvoiceNumber?.Trim();
        var posted = string.IsNullOrEmpty(invoice) ? null : await Standing(command.Db)
            .Where(d => d.SupplierId == request.SupplierId && d.InvoiceNumber == invoice).Select(d => d.Code).FirstOrDefaultAsync(cancel);
        return posted is null ? null : new Because(
            $"Invoice {invoice} of this supplier is already posted as Delivery {posted}.", "If this is the rest of it, write it as a number of its own, such as " + invoice + "/2.");
    }

    /// <summary>A line may name a purchase order only when that asked this supplier for this material.</summary>
    private static async Task<NotAcceptable?> NotOrderedAsync(Command command, PostDelivery request, CancellationToken cancel)
    {
        var ids = request.Lines.Select(l => l.OrderLineId).OfType<Guid>().ToList();
        var ordered = await command.Db.PurchaseOrderLines.Where(l => ids.Contains(l.Id))
            .Select(l => new { l.Id, l.Order!.Code, l.Order.SupplierId, l.MaterialId }).ToDictionaryAsync(l => l.Id, cancel);
        var problems = request.Lines.Select((l, i) => (Line: l, Index: i)).Where(l => l.Line.OrderLineId is { } id
                && (ordered.GetValueOrDefault(id) is not { } asked || asked.SupplierId != request.SupplierId || asked.MaterialId != l.Line.MaterialId))
            .Select(l => new FieldProblem($"Lines[{l.Index}].MaterialId",
                $"Line {l.Index + 1}: {(ordered.GetValueOrDefault(l.Line.OrderLineId!.Value) is { } asked ? $"Order {asked.Code}" : "its order")} did not ask this supplier for this material. Take the order off the line, or put the material right.")).ToList();
        return problems.Count == 0 ? null : new NotAcceptable(problems);
    }

    private static NotAcceptable? Problems(PostDelivery request, Dictionary<Guid, MaterialFacts> facts, out IReadOnlyList<StockAmount> stock)
    {
        var amounts = new List<StockAmount>();
        var problems = new List<FieldProblem>();
        for (var i = 0; i < request.Lines.Count; i++)
        {
            var line = request.Lines[i];
            if (!facts.TryGetValue(line.MaterialId, out var material))
            {
                problems.Add(new FieldProblem($"Lines[{i}].MaterialId", "This material is not here any more; choose another."));
                continue;
            }

            var result = DeliverySums.IntoStock(line, material);
            amounts.Add(result is ConversionResult.Converted read ? read.Amount : StockAmount.Zero(material.StockedIn));
            if (DeliverySums.WhyNot(result) is { } why)
            {
                problems.Add(new FieldProblem($"Lines[{i}].Quantity", $"{material.Name}: {why}"));
            }
        }

        if (problems.Count == 0)
        {
            problems.AddRange(LandedCost.Problems([.. request.Lines.Select((l, i) => DeliverySums.Invoice(l, amounts[i]))], request.Freight, request.FreightBasis)
                .Select(p => new FieldProblem("Freight", p)));
        }

        stock = amounts;
        return problems.Count == 0 ? null : new NotAcceptable(problems);
    }

    private static async Task<Outcome<DeliveryPosted>> ShelveAsync(
        Command command, PostDelivery request, Dictionary<Guid, MaterialFacts> facts, IReadOnlyList<StockAmount> stock, Landed landed)
    {
        var number = await command.NextCodeAsync(CodeCounter);
        var delivery = new Delivery
        {
            Code = "D" + number[CodeCounter.Length..], SupplierId = request.SupplierId, InvoiceNumber = request.InvoiceNumber?.Trim(), ReceivedOn = request.ReceivedOn,
            Freight = request.Freight, FreightBasis = request.FreightBasis, InvoiceTotal = request.InvoiceTotal,
            PostedById = command.PersonId, PostedAt = command.Now,
        };
        command.Db.Deliveries.Add(delivery);
        var lots = new List<PostedLot>();
        for (var i = 0; i < request.Lines.Count; i++)
        {
            var typed = request.Lines[i];
            var material = facts[typed.MaterialId];
            var line = LineOf(i, typed, material, stock[i], landed.Lines[i]);
            line.DeliveryId = delivery.Id;
            command.Db.DeliveryLines.Add(line);
            lots.Add(await ShelveLotAsync(command, delivery, line, typed, material));
        }

        command.Record("delivery", delivery.Id, $"Posted Delivery {delivery.Code}: {string.Join(", ", lots.Select(l => l.Code))}", Topics.Lots);
        return new DeliveryPosted(delivery.Id, delivery.Code, landed.Total, lots);
    }

    private static DeliveryLine LineOf(int index, DeliveryLineTyped typed, MaterialFacts material, StockAmount stock, LandedLine landed) => new()
    {
        Position = index + 1, MaterialId = typed.MaterialId, QuantityTyped = typed.Quantity, Unit = typed.Unit, Quantity = stock.Units,
        DensityUsed = AmountUnits.IsVolume(typed.Unit) ? typed.Density ?? material.Density : typed.Density,
        Price = typed.Price, GrossKilograms = typed.GrossKg, Duty = typed.Duty, Surcharge = typed.Surcharge, Discount = typed.Discount,
        FreightShare = landed.FreightShare, LandedTotal = landed.Total, UnitCost = landed.UnitCost,
        PriceAnswer = DeliverySums.Answer(typed, material, stock), OrderLineId = typed.OrderLineId,
    };

    private static async Task<PostedLot> ShelveLotAsync(Command command, Delivery delivery, DeliveryLine line, DeliveryLineTyped typed, MaterialFacts material)
    {
        var lot = new Lot
        {
            Code = await command.NextCodeAsync(MaterialKinds.LotPrefix(material.Kind)), MaterialId = material.Id, SupplierId = delivery.SupplierId,
            DeliveryLineId = line.Id, SupplierLot = typed.SupplierLot?.Trim(), ReceivedOn = delivery.ReceivedOn, ExpiresOn = typed.ExpiresOn,
            RetestOn = typed.RetestOn ?? (typed.ExpiresOn is null && material.ShelfLifeDays is { } days ? delivery.ReceivedOn.AddDays(days) : null),
            Density = typed.Density ?? material.Density, UnitCost = line.UnitCost, TareMilligrams = typed.TareMilligrams, Shelf = typed.Shelf?.Trim(),
            Balance = new LotBalance(),
        };
        lot.Status = material.Missing.Count > 0 ? LotStatus.Quarantine : LotStatus.Released;
        lot.StatusReason = material.Missing.Count > 0 ? LotPapers.Words(material.Missing) + " missing" : "Papers complete at receipt";
        command.Db.Lots.Add(lot);
        Ledger.Post(command, lot, MovementKind.Receipt, line.Quantity, m =>
        {
            m.DeliveryId = delivery.Id;
            m.Note = $"{QuantityFormat.Editable(typed.Quantity, CultureInfo.CurrentCulture)} {AmountUnits.Symbol(typed.Unit)} at {AmountWords.UnitCost(line.UnitCost, material.StockedIn)} landed";
        });
        LotLog.Add(command, lot, LotEventKind.StatusChanged, lot.Status == LotStatus.Released ? "Released" : "Quarantine", lot.StatusReason);
        return new PostedLot(lot.Id, lot.Code, material.Name, lot.Status, lot.StatusReason);
    }
}
