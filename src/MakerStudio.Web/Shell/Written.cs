using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Web.Shell;

/// <summary>Numbers as pages write them, in the studio's marks; units stand beside them in markup.</summary>
public static class Written
{
    private static CultureInfo Culture => CultureInfo.CurrentCulture;

    /// <summary>Milligrams as grams: one decimal, or as many as they need.</summary>
    public static string Grams(long milligrams) =>
        QuantityFormat.Mass(Mass.FromMilligrams(milligrams), Culture, milligrams % 100 == 0 ? 1 : milligrams % 10 == 0 ? 2 : 3);

    /// <summary>Grams without decimals where there are none: "3,000".</summary>
    public static string RoundGrams(long milligrams) => milligrams % 1000 == 0 ? Count(milligrams / 1000) : Grams(milligrams);

    public static string Count(long count) => QuantityFormat.Number(count, Culture, 0);

    public static string Money(decimal amount, int decimals = 2) => QuantityFormat.Money(amount, decimals, Culture);

    /// <summary>A fraction as per cent without its sign; a difference keeps its plus or minus.</summary>
    public static string Percent(decimal fraction, int decimals = 1, bool withPlus = false)
    {
        var text = QuantityFormat.Percent(fraction, Culture, decimals);
        return withPlus && decimal.Round(fraction * 100m, decimals, MidpointRounding.AwayFromZero) > 0 ? "+" + text : text;
    }
}
