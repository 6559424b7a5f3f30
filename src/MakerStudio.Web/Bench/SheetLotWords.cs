using MakerStudio.Core.Stock;

namespace MakerStudio.Web.Bench;

internal static class SheetLotWords
{
    /// <summary>What the date of a lot is called.</summary>
    public static string Until(ExpiryReason? reason) => reason switch
    {
        ExpiryReason.Retest => "retest",
        ExpiryReason.Opened => "use after opening by",
        _ => "expires",
    };
}
