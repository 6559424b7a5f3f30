using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>Amounts, costs and dates as they stand in sentences, in the marks of the culture that is set.</summary>
public static class AmountWords
{
    private const int GramsPerKilogram = 1000;

    /// <summary>"130.0 g": one decimal, or as many as the milligrams need.</summary>
    public static string Grams(long milligrams) => $"{QuantityFormat.MassInFull(Mass.FromMilligrams(milligrams), CultureInfo.CurrentCulture)} g";

    /// <inheritdoc cref="Grams(long)"/>
    public static string Grams(decimal grams) => Grams(Mass.RoundGrams(grams).Milligrams);

    /// <summary>"4,700.0 g" or "500 pieces".</summary>
    /// <param name="units">Milligrams or pieces.</param>
    public static string Amount(long units, StockUnit unit) => unit == StockUnit.Gram
        ? Grams(units)
        : $"{QuantityFormat.Number(units, CultureInfo.CurrentCulture, 0)} {(units is 1 or -1 ? "piece" : "pieces")}";

    /// <summary>The same with a plus before what came in.</summary>
    public static string Change(long units, StockUnit unit) => (units > 0 ? "+" : "") + Amount(units, unit);

    /// <summary>"67.374/kg" or "0.8648 each": at least 3 and at most 6 decimals.</summary>
    /// <param name="unitCost">Of one gram or one piece.</param>
    public static string UnitCost(decimal unitCost, StockUnit unit) =>
        unit == StockUnit.Gram ? $"{Fine(unitCost * GramsPerKilogram)}/kg" : $"{Fine(unitCost)} each";

    /// <summary>Money with two decimals.</summary>
    public static string Money(decimal amount) => QuantityFormat.Money(amount, 2, CultureInfo.CurrentCulture);

    /// <summary>Money with the decimals it has, at least 2 and at most 6.</summary>
    public static string MoneyInFull(decimal amount) => QuantityFormat.Number(amount, CultureInfo.CurrentCulture, Math.Clamp(Scale(amount, 6), 2, 6));

    /// <summary>A fraction as "5.14 %".</summary>
    public static string Percent(decimal fraction, int decimals = 2) =>
        $"{QuantityFormat.Percent(fraction, CultureInfo.CurrentCulture, decimals)} %";

    /// <summary>"3 Oct 2026".</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.CurrentCulture);

    private static string Fine(decimal amount) => QuantityFormat.Number(amount, CultureInfo.CurrentCulture, Math.Clamp(Scale(amount, 6), 3, 6));

    private static int Scale(decimal amount, int most)
    {
        var rounded = decimal.Round(amount, most);
        var decimals = 0;
        while (decimals < most && rounded != decimal.Round(rounded, decimals))
        {
            decimals++;
        }

        return decimals;
    }
}
