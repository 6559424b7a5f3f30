using System.Globalization;
using MakerStudio.Core.Prices;
using MakerStudio.Web.Shell.Sheets;

namespace MakerStudio.Web.Prices;

/// <summary>What a ladder is priced for, as it is typed.</summary>
/// <param name="For">margin, markup, contribution or keystone.</param>
/// <param name="Amount">Per cent, or money for a contribution.</param>
internal sealed record TypedTarget(string? For, decimal? Amount)
{
    /// <summary>Null while something is missing or no price reaches it.</summary>
    public PriceTarget? Target => (For, Amount) switch
    {
        ("margin", >= 0 and < 100) => new PriceTarget.Margin(Amount.Value / 100m),
        ("markup", >= 0) => new PriceTarget.Markup(Amount.Value / 100m),
        ("contribution", >= 0) => new PriceTarget.Contribution(Amount.Value),
        ("keystone", _) => new PriceTarget.Keystone(),
        _ => null,
    };

    /// <summary>To stand behind an address, so that the file shows what the page shows.</summary>
    public string Query => $"?for={For}&amount={Amount?.ToString(CultureInfo.InvariantCulture)}";

    public static TypedTarget Of(SheetAsked asked) => new(asked.Query("for"), asked.QueryNumber("amount"));
}
