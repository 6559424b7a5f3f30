using System.Globalization;

namespace MakerStudio.Core.Quantities;

/// <summary>
/// Numbers as the studio shows them: its culture's marks, a true minus sign (U+2212), no unit. Rounds for the eye
/// only, halves away from zero; zero never carries a minus.
/// </summary>
public static class QuantityFormat
{
    private const string TrueMinus = "\u2212";
    private const int MinusBeforeNumber = 1;

    /// <summary>Grams.</summary>
    public static string Mass(Mass mass, CultureInfo culture, int decimals = 1) => Number(mass.Grams, culture, decimals);

    /// <summary>Grams with as many decimals as its milligrams need, and no fewer than asked for.</summary>
    public static string MassInFull(Mass mass, CultureInfo culture, int atLeast = 1) =>
        Mass(mass, culture, Math.Max(atLeast, mass.Milligrams % 100 == 0 ? 1 : mass.Milligrams % 10 == 0 ? 2 : 3));

    /// <summary>Millilitres.</summary>
    public static string Volume(Volume volume, CultureInfo culture, int decimals = 1) => Number(volume.Millilitres, culture, decimals);

    /// <summary>Grams with the decimals asked for, or whole pieces.</summary>
    public static string Amount(StockAmount amount, CultureInfo culture, int decimals = 1) =>
        Number(amount.Display, culture, amount.Unit == StockUnit.Each ? 0 : decimals);

    /// <summary>Grams with every decimal they need, or whole pieces.</summary>
    public static string AmountInFull(StockAmount amount, CultureInfo culture) =>
        amount.Unit == StockUnit.Each ? Number(amount.Display, culture, 0) : MassInFull(amount.Mass, culture);

    /// <summary>Money without its currency sign.</summary>
    public static string Money(decimal amount, int decimals, CultureInfo culture) => Number(amount, culture, decimals);

    /// <summary>A fraction as per cent: 0.12 reads "12.00".</summary>
    public static string Percent(decimal fraction, CultureInfo culture, int decimals = 2) => Number(fraction * 100m, culture, decimals);

    /// <summary>Any number, grouped.</summary>
    public static string Number(decimal value, CultureInfo culture, int decimals)
    {
        ArgumentNullException.ThrowIfNull(culture);
        decimal rounded = decimal.Round(value, decimals, MidpointRounding.AwayFromZero);
        return rounded.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), Marks(culture));
    }

    /// <summary>A number for a field to be edited: every decimal it has, no grouping, so that it reads back as itself.</summary>
    public static string Editable(decimal value, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return value.ToString("0.############################", Marks(culture));
    }

    /// <summary>The mark a culture puts before decimals, for <see cref="QuantityTextOptions"/>: ',' or else '.'.</summary>
    public static char DecimalMark(CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return culture.NumberFormat.NumberDecimalSeparator == "," ? ',' : '.';
    }

    private static NumberFormatInfo Marks(CultureInfo culture)
    {
        var marks = (NumberFormatInfo)culture.NumberFormat.Clone();
        marks.NegativeSign = TrueMinus;
        marks.NumberNegativePattern = MinusBeforeNumber;
        return marks;
    }
}
