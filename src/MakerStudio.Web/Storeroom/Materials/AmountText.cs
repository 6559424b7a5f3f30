using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Web.Storeroom;

/// <summary>An amount of base units with its unit, in the reader's marks.</summary>
internal static class AmountText
{
    public static string Number(long units, StockUnit unit) => QuantityFormat.Amount(new StockAmount(units, unit), CultureInfo.CurrentCulture);

    public static string Unit(StockUnit unit) => unit == StockUnit.Gram ? "g" : "each";

    public static string Of(long units, StockUnit unit) => $"{Number(units, unit)} {Unit(unit)}";

    /// <summary>Every decimal that was typed and no more, grouped: 1,500 or 0.7907.</summary>
    public static string AsStated(decimal value)
    {
        var plain = value / 1.0000000000000000000000000000m; // leaves out trailing zeros
        return QuantityFormat.Number(plain, CultureInfo.CurrentCulture, plain.Scale);
    }

    /// <summary>A day as the house writes it: 26 Oct 2026.</summary>
    public static string Day(DateOnly? day) => day?.ToString("d MMM yyyy", CultureInfo.CurrentCulture) ?? "–";
}
