using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Services.Inventory;

/// <summary>Amounts and times as they stand in messages, in the studio's marks and zone.</summary>
internal static class MassText
{
    /// <summary>"130.0 g": one decimal, or as many as the milligrams need.</summary>
    public static string Grams(long milligrams)
    {
        var decimals = milligrams % 100 == 0 ? 1 : milligrams % 10 == 0 ? 2 : 3;
        return $"{QuantityFormat.Mass(Mass.FromMilligrams(milligrams), CultureInfo.CurrentCulture, decimals)} g";
    }

    /// <summary>Base units with their word: "130.0 g", "48 pieces".</summary>
    public static string Units(long units, StockUnit unit) => unit == StockUnit.Gram
        ? Grams(units)
        : $"{units.ToString("N0", CultureInfo.CurrentCulture)} {(units == 1 ? "piece" : "pieces")}";

    /// <summary>A fraction as "5.14 %".</summary>
    public static string Percent(decimal fraction, int decimals = 2) =>
        $"{QuantityFormat.Percent(fraction, CultureInfo.CurrentCulture, decimals)} %";

    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.CurrentCulture);

    public static string Clock(DateTimeOffset at, string timeZone) =>
        TimeZoneInfo.ConvertTime(at, TimeZoneInfo.FindSystemTimeZoneById(timeZone)).ToString("HH:mm", CultureInfo.CurrentCulture);
}
