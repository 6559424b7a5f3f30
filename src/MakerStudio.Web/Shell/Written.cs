using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Web.Shell;

/// <summary>Numbers as pages write them, in the studio's marks; units stand beside them in markup. For sentences see AmountWords.</summary>
public static class Written
{
    private static CultureInfo Culture => CultureInfo.CurrentCulture;

    /// <summary>Milligrams as grams: one decimal, or as many as they need.</summary>
    /// <param name="atLeast">Decimals shown even where they are zero: those of the scale.</param>
    public static string Grams(long milligrams, int atLeast = 1) => QuantityFormat.MassInFull(Mass.FromMilligrams(milligrams), Culture, atLeast);

    /// <summary>Grams without decimals where there are none: "3,000".</summary>
    public static string RoundGrams(long milligrams) => milligrams % 1000 == 0 ? Count(milligrams / 1000) : Grams(milligrams);

    /// <summary>Base units for a column of a table: grams to a tenth, or pieces. What would read as zero and is not is written in full.</summary>
    public static string Amount(long units, StockUnit unit)
    {
        var amount = new StockAmount(units, unit);
        return units != 0 && decimal.Round(amount.Display, 1, MidpointRounding.AwayFromZero) == 0 ? AmountInFull(units, unit) : QuantityFormat.Amount(amount, Culture);
    }

    /// <summary>Base units with every decimal they need.</summary>
    public static string AmountInFull(long units, StockUnit unit) => QuantityFormat.AmountInFull(new StockAmount(units, unit), Culture);

    /// <summary>What stands behind an amount of stock.</summary>
    public static string Unit(StockUnit unit) => unit == StockUnit.Gram ? "g" : "each";

    public static string Count(long count) => QuantityFormat.Number(count, Culture, 0);

    /// <summary>Every decimal that was typed and no more, grouped: 1,500 or 0.7907.</summary>
    public static string AsStated(decimal value)
    {
        var plain = value / 1.0000000000000000000000000000m; // leaves out trailing zeros
        return QuantityFormat.Number(plain, Culture, plain.Scale);
    }

    /// <summary>A day as the house writes it: 26 Oct 2026; "–" when there is none.</summary>
    public static string Day(DateOnly? day) => day is { } known ? Services.Inventory.AmountWords.Day(known) : "–";

    public static string Money(decimal amount, int decimals = 2) => QuantityFormat.Money(amount, decimals, Culture);

    /// <summary>A fraction as per cent without its sign; a difference keeps its plus or minus.</summary>
    public static string Percent(decimal fraction, int decimals = 1, bool withPlus = false)
    {
        var text = QuantityFormat.Percent(fraction, Culture, decimals);
        return withPlus && decimal.Round(fraction * 100m, decimals, MidpointRounding.AwayFromZero) > 0 ? "+" + text : text;
    }
}
