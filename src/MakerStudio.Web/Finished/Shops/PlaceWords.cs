using MakerStudio.Core.Finished;
using MakerStudio.Services.Inventory;

namespace MakerStudio.Web.Finished.Shops;

public static class PlaceWords
{
    public static string Kind(PlaceKind kind) => kind switch
    {
        PlaceKind.Studio => "own shelf",
        PlaceKind.Consignment => "shop on consignment",
        _ => "stall",
    };

    /// <summary>Who to ask for and how; null when nothing is known.</summary>
    public static string? Reach(PlaceRow place)
    {
        ArgumentNullException.ThrowIfNull(place);
        var parts = new[] { place.Contact, place.Phone, place.Email }.Where(p => p is not null).ToList();
        return parts.Count == 0 ? null : string.Join(", ", parts);
    }
}
