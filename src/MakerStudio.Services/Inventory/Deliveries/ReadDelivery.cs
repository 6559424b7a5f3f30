using MakerStudio.Core.Quantities;
using static MakerStudio.Services.Inventory.TypedNumbers;

namespace MakerStudio.Services.Inventory;

/// <summary>What a draft says once its text is read, and which fields could not be read.</summary>
public sealed record DeliveryReading(PostDelivery Request, IReadOnlyList<FieldProblem> Problems);

/// <summary>Reads the text of a draft into a request, in the marks of the culture that is set.</summary>
public static class ReadDelivery
{
    public static DeliveryReading From(DeliveryDraft draft)
    {
        var problems = new List<FieldProblem>();
        var request = new PostDelivery
        {
            SupplierId = draft.SupplierId ?? Guid.Empty,
            InvoiceNumber = Tidy(draft.InvoiceNumber),
            ReceivedOn = draft.ReceivedOn ?? default,
            Freight = Number(draft.Freight, "Freight", MoneyDecimals, problems) ?? 0m,
            FreightBasis = draft.FreightBasis,
            InvoiceTotal = Number(draft.InvoiceTotal, "InvoiceTotal", MoneyDecimals, problems),
        };
        for (var i = 0; i < draft.Lines.Count; i++)
        {
            request.Lines.Add(Line(draft.Lines[i], $"Lines[{i}].", problems));
        }

        return new DeliveryReading(request, problems);
    }

    private static DeliveryLineTyped Line(DeliveryLineDraft line, string path, List<FieldProblem> problems)
    {
        var (quantity, unit) = Amount(line.Quantity, line.Unit, path + nameof(line.Quantity), problems);
        return new DeliveryLineTyped
        {
            MaterialId = line.MaterialId ?? Guid.Empty,
            Quantity = quantity ?? 0m,
            Unit = unit,
            Price = Number(line.Price, path + nameof(line.Price), MoneyDecimals, problems) ?? (string.IsNullOrWhiteSpace(line.Price) ? -1m : 0m),
            GrossKg = Kilograms(line.GrossKg, path + nameof(line.GrossKg), problems),
            Duty = Number(line.Duty, path + nameof(line.Duty), MoneyDecimals, problems) ?? 0m,
            Surcharge = Number(line.Surcharge, path + nameof(line.Surcharge), MoneyDecimals, problems) ?? 0m,
            Discount = Number(line.Discount, path + nameof(line.Discount), MoneyDecimals, problems) ?? 0m,
            Density = Number(line.Density, path + nameof(line.Density), AmountDecimals, problems),
            SupplierLot = Tidy(line.SupplierLot),
            ExpiresOn = line.ExpiresOn,
            RetestOn = line.RetestOn,
            Shelf = Tidy(line.Shelf),
            TareMilligrams = Milligrams(line.Tare, path + nameof(line.Tare), problems),
            ConfirmedUnitPrice = line.ConfirmedUnitPrice,
            OrderLineId = line.OrderLineId,
        };
    }
}
