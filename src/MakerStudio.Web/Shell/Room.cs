using MakerStudio.Web.Shell.Parts;

namespace MakerStudio.Web.Shell;

/// <summary>One room of the studio: a name on the waterline, an address, and the letter that follows <c>g</c>.</summary>
public sealed record Room(string Name, string Href, char Letter, string Glyph)
{
    public static Room Today { get; } = new("Today", "/", 't', Glyphs.Calendar);
    public static Room Library { get; } = new("Library", "/library", 'l', Glyphs.Book);
    public static Room Storeroom { get; } = new("Storeroom", "/storeroom", 's', Glyphs.Shelf);
    public static Room Bench { get; } = new("Bench", "/bench", 'b', Glyphs.Scale);
    public static Room Curing { get; } = new("Curing", "/curing", 'c', Glyphs.Hourglass);
    public static Room Finished { get; } = new("Finished", "/finished", 'f', Glyphs.Bottles);
    public static Room Prices { get; } = new("Prices", "/prices", 'p', Glyphs.Tag);
    public static Room Studio { get; } = new("Studio", "/studio", 'u', Glyphs.People);

    /// <summary>In the order of the walk through the work. A new room is one line here.</summary>
    public static IReadOnlyList<Room> All { get; } = [Today, Library, Storeroom, Bench, Curing, Finished, Prices, Studio];

    /// <summary>"Curing, 3 ask for a hand": what a screen reader says instead of the bare number.</summary>
    public static string SpokenCount(int count) => count == 1 ? "1 asks for a hand" : $"{count} ask for a hand";
}
