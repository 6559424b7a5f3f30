using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Web.Storeroom;

/// <summary>Counts in words of a sentence.</summary>
internal static class Written
{
    /// <summary>"1 lot", "61 lots", "0 lots".</summary>
    public static string Of(int count, string one) =>
        $"{QuantityFormat.Number(count, CultureInfo.CurrentCulture, 0)} {one}{(count == 1 ? "" : "s")}";
}
