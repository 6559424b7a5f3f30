using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>What a draft says once its text is read, and which fields could not be read.</summary>
public sealed record DeliveryReading(PostDelivery Request, IReadOnlyList<FieldProblem> Problems);

/// <summary>Reads the text of a draft into a request, in the marks of the culture that is set.</summary>
public static class ReadDelivery
{
    private const int MoneyDecimals = 6;
    private const int AmountDecimals = 6;

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
        };
    }

    private static string? Tidy(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static decimal? Number(string? text, string field, int decimals, List<FieldProblem> problems) =>
        Read(text, field, null, decimals, problems) is not { } read ? null
        : read.Unit is null ? read.Value
        : Refuse<decimal>(field, "A number without a unit is wanted here.", problems);

    private static decimal? Kilograms(string? text, string field, List<FieldProblem> problems) =>
        Read(text, field, "kg", AmountDecimals, problems) is not { } read ? null
        : read.Unit is null ? read.Value
        : read.AmountUnit is { } unit && AmountUnits.IsMass(unit) ? read.Value * AmountUnits.Factor(unit) / AmountUnits.Factor(AmountUnit.Kilogram)
        : Refuse<decimal>(field, "The gross weight is a mass, such as 5.6 kg.", problems);

    private static long? Milligrams(string? text, string field, List<FieldProblem> problems)
    {
        if (Read(text, field, "g", AmountDecimals, problems) is not { } read)
        {
            return null;
        }

        var unit = read.Unit is null ? AmountUnit.Gram : read.AmountUnit;
        return unit is { } known && AmountUnits.IsMass(known)
            ? Mass.RoundGrams(read.Value * AmountUnits.Factor(known)).Milligrams
            : Refuse<long>(field, "The tare is a mass, such as 912 g.", problems);
    }

    private static (decimal? Quantity, AmountUnit Unit) Amount(string? text, string? shownUnit, string field, List<FieldProblem> problems)
    {
        var shown = AmountUnits.Parse(shownUnit) ?? AmountUnit.Kilogram;
        if (Read(text, field, shownUnit, AmountDecimals, problems) is not { } read)
        {
            return (null, shown);
        }

        if (read.Unit is not null && read.AmountUnit is null)
        {
            problems.Add(new FieldProblem(field, $"{read.Unit} is no unit of an invoice. Use kg, g, L, mL, lb, oz (weight), fl oz (US), fl oz (imp) or each."));
            return (null, shown);
        }

        return (read.Value, read.AmountUnit ?? shown);
    }

    private static QuantityReading.Read? Read(string? text, string field, string? shownUnit, int decimals, List<FieldProblem> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var options = new QuantityTextOptions(QuantityFormat.DecimalMark(CultureInfo.CurrentCulture), shownUnit, decimals);
        switch (QuantityText.Parse(text, options))
        {
            case QuantityReading.Read read:
                return read;
            case QuantityReading.Asks asks:
                problems.Add(new FieldProblem(field, asks.Question));
                return null;
            case QuantityReading.Unreadable not:
                problems.Add(new FieldProblem(field, not.Why));
                return null;
            default:
                throw new InvalidOperationException("A quantity is read, asked about or not readable.");
        }
    }

    private static T? Refuse<T>(string field, string why, List<FieldProblem> problems)
        where T : struct
    {
        problems.Add(new FieldProblem(field, why));
        return null;
    }
}
