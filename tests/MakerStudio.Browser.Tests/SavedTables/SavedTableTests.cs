using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using MakerStudio.Browser.Tests.EveryPage;
using Microsoft.AspNetCore.Routing;

namespace MakerStudio.Browser.Tests.SavedTables;

/// <summary>
/// Every table that a page shows can be saved, holds what the page shows, and reads back as what it is: by CsvHelper and
/// ExcelDataReader, in a studio with German marks.
/// </summary>
public sealed partial class SavedTableTests(GermanStudio host) : IClassFixture<GermanStudio>
{
    /// <summary>Tables by their first headings, each with the reason why it is not saved.</summary>
    private static readonly Dictionary<string, string> NotSaved = new()
    {
        ["Part | Used up | On the shelf"] = "what a filling would use up, as it is typed; once recorded it stands in the batch's cost",
        ["Material | Target | Tolerance | Actual | Lot | Initials"] = "printed with empty boxes to weigh by hand; the page of the plan saves the same lines",
        ["Size | Cost | "] = "a ladder of sizes that are only thought of; that of the product's own sizes is saved",
    };

    private static readonly HashSet<string> Lengths = ["x", "y", "x1", "x2", "y1", "y2", "cx", "cy", "r", "rx", "dx", "dy", "width", "height", "stroke-width"];

    public static TheoryData<string> Templates => [.. PageList.Templates.Intersect(PageList.WithInstance).Where(t => !PageList.IsForStrangers(t))];

    [Theory]
    [MemberData(nameof(Templates))]
    public async Task Tables_OfAPage_AreSavedAsTheyAre(string template)
    {
        using var client = await host.ClientAsync("Ana");
        var (tables, saved) = await ReadAsync(client, template);
        var faults = new List<string>();
        foreach (var table in tables)
        {
            if (table.SavedAt.Count == 0)
            {
                if (NotSaved.Keys.Any(headings => table.Headings.StartsWith(headings, StringComparison.Ordinal)))
                {
                    continue;
                }

                faults.Add($"nothing is saved of {table.Headings}");
                continue;
            }

            var file = await SavedFile.DownloadAsync(client, table.SavedAt[0]);
            if (table.HasMore ? file.Csv.Count < table.Rows : file.Csv.Count != table.Rows)
            {
                faults.Add($"{table.SavedAt[0]} has {file.Csv.Count} rows, the page {table.Rows}");
            }
        }

        foreach (var address in saved)
        {
            faults.AddRange((await SavedFile.DownloadAsync(client, address)).Faults().Select(fault => $"{address}, {fault}"));
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    /// <summary>A comma in a length of a drawing is refused by browsers, and the line is not drawn.</summary>
    [Theory]
    [MemberData(nameof(Templates))]
    public async Task Drawings_OfAPage_HaveAPointInEveryLength(string template)
    {
        using var client = await host.ClientAsync("Ana");
        var page = new HtmlParser().ParseDocument(await PageAsync(client, template));
        Assert.Empty(page.QuerySelectorAll("svg, svg *").SelectMany(e => e.Attributes).Where(a => Lengths.Contains(a.Name) && !Length().IsMatch(a.Value)).Select(a => $"{a.Name}=\"{a.Value}\""));
    }

    /// <summary>Nothing is saved that no page offers, so the pages above try all there is.</summary>
    [Fact]
    public async Task SavedTables_All_StandOnSomePage()
    {
        using var client = await host.ClientAsync("Ana");
        var offered = new HashSet<string>();
        foreach (var template in PageList.WithInstance.Where(t => !PageList.IsForStrangers(t)))
        {
            offered.UnionWith((await ReadAsync(client, template)).Saved.Select(address => address.Split('?')[0]));
        }

        var mapped = host.Get<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Select(e => e.RoutePattern.RawText!).ToHashSet();
        var sheets = mapped.Where(path => path.EndsWith(".csv", StringComparison.Ordinal) && mapped.Contains(path.Replace(".csv", ".xlsx", StringComparison.Ordinal))).ToList();
        Assert.True(sheets.Count > 40, $"only {sheets.Count} are mapped");
        var alone = sheets.Where(path => !offered.Any(address => Matches(path, address))).ToList();
        Assert.True(alone.Count == 0, string.Join('\n', alone));
    }

    [Fact]
    public async Task Supplier_NamedLikeAFormula_IsTextInBothFiles()
    {
        using var client = await host.ClientAsync("Ana");
        var file = await SavedFile.DownloadAsync(client, "/storeroom/suppliers.csv");
        Assert.Contains(file.Csv, row => row[0] == "'" + GermanStudio.HostileSupplier);
        Assert.Contains(file.Workbook, row => (string?)row[0] == GermanStudio.HostileSupplier);
    }

    private async Task<(IReadOnlyList<ShownTable> Tables, IReadOnlyList<string> Saved)> ReadAsync(HttpClient client, string template) =>
        ShownTable.Of(await PageAsync(client, template));

    /// <summary>Of the page it leads to, where it leads on.</summary>
    private async Task<string> PageAsync(HttpClient client, string template)
    {
        using var first = await client.GetAsync(new Uri(await PageList.AddressAsync(host, template), UriKind.Relative));
        return first.Headers.Location is { } on ? await client.GetStringAsync(on) : await first.Content.ReadAsStringAsync();
    }

    private static bool Matches(string pattern, string address) => Regex.IsMatch(
        address, "^" + Parameter().Replace(Regex.Escape(pattern).Replace("\\}", "}", StringComparison.Ordinal), "[^/]+") + "$", RegexOptions.IgnoreCase);

    [GeneratedRegex(@"^(-?(\d+(\.\d+)?|\.\d+)(%|px)?|auto)$")]
    private static partial Regex Length();

    [GeneratedRegex(@"\\\{[^}]*\}")]
    private static partial Regex Parameter();
}
