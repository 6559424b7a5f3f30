using System.Globalization;

namespace MakerStudio.Web.Shell.Fields;

/// <summary>Numbers as they stand in a field: the reader's decimal mark, no thousands mark, every typed decimal kept.</summary>
public static class QuantityReadout
{
    public static char DecimalMark =>
        CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator == "," ? ',' : '.';

    public static string Plain(decimal? value) =>
        value?.ToString(CultureInfo.InvariantCulture).Replace('.', DecimalMark) ?? "";
}
