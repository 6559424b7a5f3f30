using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>Reads numbers of a draft, in the marks of the culture that is set; what cannot be read is a problem under its field.</summary>
internal static class TypedNumbers
{
    public const int MoneyDecimals = 6;
    public const int AmountDecimals = 6;

    /// <summary>A number as it would be typed, for a draft that is made; null for nothing and for zero.</summary>
    public static string? Text(decimal? number) => number is { } value and not 0 ? QuantityFormat.Editable(value, CultureInfo.CurrentCulture) : null;

    public static string? Tidy(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    public static decimal? Number(string? text, string field, int decimals, List<FieldProblem> problems) =>
        Read(text, field, null, decimals, problems) is not { } read ? null
        : read.Unit is null ? read.Value
        : Refuse<decimal>(field, "A number without a unit is wanted here.", problems);

    public static decimal? Kilograms(string? text, string field, List<FieldProblem> problems) =>
        Read(text, field, "kg", AmountDecimals, problems) is not { } read ? null
        : read.Unit is null ? read.Value
        : read.AmountUnit is { } unit && AmountUnits.IsMass(unit) ? read.Value * AmountUnits.Factor(unit) / AmountUnits.Factor(AmountUnit.Kilogram)
        : Refuse<decimal>(field, "The gross weight is a mass, such as 5.6 kg.", problems);

    public static long? Milligrams(string? text, string field, List<FieldProblem> problems)
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

    public static (decimal? Quantity, AmountUnit Unit) Amount(string? text, string? shownUnit, string field, List<FieldProblem> problems)
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
