using System.Globalization;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Prices;

/// <summary>What a unit is taken to cost, carried behind the address of a file so that it holds what the page shows.</summary>
internal static class CostQuery
{
    public static string Of(decimal unitCost) => $"?cost={unitCost.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>What was asked for, else what the product costs; null when neither is known.</summary>
    public static decimal? Read(SheetAsked asked, ProductRow product) => asked.QueryNumber("cost") is >= 0 and var typed ? typed : product.Cost;
}
