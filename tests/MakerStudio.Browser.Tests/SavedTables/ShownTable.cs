using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace MakerStudio.Browser.Tests.SavedTables;

/// <summary>A table of a page with the addresses under it at which it is saved.</summary>
/// <param name="Rows">Rows of data: without totals, names of groups, and remarks across the whole table.</param>
/// <param name="HasMore">The page offers more rows than those it shows: older ones, or those that can wait.</param>
internal sealed record ShownTable(string Headings, int Rows, bool HasMore, IReadOnlyList<string> SavedAt)
{
    /// <summary>Tables of the page, and all addresses of saved tables on it, those of lists too.</summary>
    public static (IReadOnlyList<ShownTable> Tables, IReadOnlyList<string> Saved) Of(string html)
    {
        var page = new HtmlParser().ParseDocument(html);
        return ([.. page.QuerySelectorAll("main table").Select(Of)], [.. page.QuerySelectorAll("main [data-save]").Select(AddressOf)]);
    }

    private static ShownTable Of(IElement table) => new(
        string.Join(" | ", table.QuerySelectorAll("thead th").Select(h => h.TextContent.Trim())),
        table.QuerySelectorAll("tbody > tr").Count(row => !row.ClassList.Contains("tot") && !row.ClassList.Contains("grp") && row.Children.Length > 1),
        table.Closest("section")?.QuerySelectorAll("button").Select(b => b.TextContent.Trim()).Any(t => t.StartsWith("Show ", StringComparison.Ordinal) || t.StartsWith("Older", StringComparison.Ordinal)) ?? false,
        [.. After(table).TakeWhile(e => e.HasAttribute("data-save")).Select(AddressOf)]);

    private static IEnumerable<IElement> After(IElement element)
    {
        for (var next = element.NextElementSibling; next is not null; next = next.NextElementSibling)
        {
            yield return next;
        }
    }

    private static string AddressOf(IElement save) => save.QuerySelector("a")!.GetAttribute("href")!;
}
