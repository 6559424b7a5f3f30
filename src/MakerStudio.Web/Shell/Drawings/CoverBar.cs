using System.Globalization;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Web.Shell.Drawings;

/// <summary>How long a material lasts, against the days it takes to get more.</summary>
/// <param name="Days">0 or more, not rounded.</param>
public sealed record CoverBar(string Name, decimal Days, int? LeadDays)
{
    /// <summary>A rule of cover is usually so many days long.</summary>
    public const int UsualDays = 120;

    /// <inheritdoc cref="TooShort"/>
    public bool IsShort => TooShort(Days, LeadDays);

    /// <summary>An order placed today comes no sooner than the shelf is empty. Whole days, as orders are placed on a day.</summary>
    public static bool TooShort(decimal days, int? leadDays) => leadDays is { } lead && decimal.Floor(days) <= lead;

    public static string Whole(decimal days) => QuantityFormat.Number(decimal.Floor(days), CultureInfo.CurrentCulture, 0);
}
