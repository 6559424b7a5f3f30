using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>Amounts, costs and dates as they stand in sentences, in the marks of the culture that is set.</summary>
public static class AmountWords
{
    private const int GramsPerKilogram = 1000;

    /// <summary>"4,700.0 g" or "500 each"; finer than 0.1 g is shown where it is there.</summary>
    /// <param name="units">Milligrams or pieces.</param>
    public static string Amount(long units, StockUnit unit) =>
        $"{QuantityFormat.Amount(new StockAmount(units, unit), CultureInfo.CurrentCulture, DecimalsOf(units))} {(unit == StockUnit.Gram ? "g" : "each")}";

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

    /// <summary>"3 Oct 2026".</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.CurrentCulture);

    private static string Fine(decimal amount) => QuantityFormat.Number(amount, CultureInfo.CurrentCulture, Math.Clamp(Scale(amount, 6), 3, 6));

    private static int DecimalsOf(long milligrams) => milligrams % 100 == 0 ? 1 : milligrams % 10 == 0 ? 2 : 3;

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
