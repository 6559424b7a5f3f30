using System.Net;
using System.Text.RegularExpressions;
using MakerStudio.Browser.Tests.Browsing;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MakerStudio.Browser.Tests.EveryPage;

/// <summary>
/// What holds for every page of the app: one title, nothing the browser complains about, no sideways scrolling, no serious
/// finding of axe in light and dark, every control within reach of the Tab key.
/// </summary>
public sealed partial class EveryPageTests(SampleHost host) : IClassFixture<SampleHost>
{
    public static TheoryData<string> Templates => [.. PageList.Templates.Intersect(PageList.WithInstance)];

    [Fact]
    public void Pages_AllOfTheApp_AreTriedHere() => Assert.Equal(PageList.Templates, PageList.WithInstance);

    [Theory]
    [MemberData(nameof(Templates))]
    public Task Page_SeenByAna_HoldsWhatEveryPageHolds(string template) => Scene.PlayAsync(host, async scene =>
    {
        var address = await PageList.AddressAsync(host, template);
        var ana = PageList.IsForStrangers(template) && template != "/not-found" ? await scene.StrangerAsync(Device.Desk) : await scene.AnaAsync();
        if (template == "/not-found")
        {
            ana.Expect("status of 404");
        }

        await ana.GoAsync(address);
        await ana.Page.HasOneH1Async();
        var findings = new List<string>();
        findings.AddRange(await ana.Page.SeriousAsync());
        findings.AddRange(await ana.Page.OutOfReachAsync());
        findings.AddRange(await ana.Page.SidewaysAsync());
        await ana.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await Expect(ana.Page.Locator("html")).ToHaveAttributeAsync("data-theme", "dark");
        findings.AddRange((await ana.Page.PaleAsync()).Select(f => "dark: " + f));
        Assert.True(findings.Count == 0, string.Join('\n', findings));
    }, $"EveryPage{template.Replace('/', '-')}");

    [Fact]
    public async Task Specimen_OutsideOfDevelopment_IsNotThere()
    {
        using var client = await host.ClientAsync("Ana");
        using var answer = await client.GetAsync(new Uri(PageList.ForBuilders, UriKind.Relative));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    /// <summary>Follows links from the first page, as Tab and Enter would; every page but those for strangers is come to.</summary>
    [Fact]
    public async Task Links_FromTheFirstPage_LeadToEveryPage()
    {
        using var client = await host.ClientAsync("Ana");
        var open = PageList.Templates.Where(t => !PageList.IsForStrangers(t)).ToHashSet();
        var waiting = new Queue<string>(["/"]);
        var seen = new HashSet<string>();
        while (open.Count > 0 && waiting.TryDequeue(out var path))
        {
            var template = PageList.Templates.FirstOrDefault(t => Matches(t, path));
            // Two instances of a page are enough to find what it leads to.
            if (template is null || (!open.Contains(template) && seen.Count(s => Matches(template, s)) > 2) || !seen.Add(path))
            {
                continue;
            }

            open.Remove(template);
            using var answer = await client.GetAsync(new Uri(path, UriKind.Relative));
            foreach (Match link in Links().Matches(await answer.Content.ReadAsStringAsync()))
            {
                waiting.Enqueue(WebUtility.HtmlDecode(link.Groups[1].Value).Split('?', '#')[0]);
            }

            if (answer.Headers.Location is { } elsewhere)
            {
                waiting.Enqueue(new Uri(host.Address, elsewhere).AbsolutePath);
            }
        }

        Assert.Empty(open);
    }

    /// <summary>The documented keys: g and a letter for each room, / for the finder, ? for the list.</summary>
    [Fact]
    public Task Keys_OfTheRooms_OpenThem() => Scene.PlayAsync(host, async scene =>
    {
        var ana = await scene.AnaAsync();
        await ana.GoAsync("/");
        foreach (var (letter, path) in new[] { ("l", "/library"), ("s", "/storeroom"), ("b", "/bench"), ("c", "/curing"), ("f", "/finished"), ("u", "/studio"), ("t", "/") })
        {
            await ana.Page.Keyboard.PressAsync("g");
            await ana.Page.Keyboard.PressAsync(letter);
            await Expect(ana.Page).ToHaveURLAsync(new Uri(host.Address, path).ToString());
            await ana.Page.ReadyAsync();
            await ana.Page.HasOneH1Async();
        }

        await ana.Page.Keyboard.PressAsync("?");
        await Expect(ana.Page.Locator("#key-list")).ToBeVisibleAsync();
        await ana.Page.Keyboard.PressAsync("Escape");
        await ana.Page.Keyboard.PressAsync("/");
        await ana.Page.Keyboard.TypeAsync("P-1");
        await ana.Page.Keyboard.PressAsync("Enter");
        await Expect(ana.Page).ToHaveURLAsync(FindOrLot());
    });

    /// <summary>A page opens with the focus on its title; from the top, the first Tab offers the way past the rooms.</summary>
    [Fact]
    public Task SkipLink_FirstTabFromTheTop_LeadsPastTheRooms() => Scene.PlayAsync(host, async scene =>
    {
        var ana = await scene.AnaAsync();
        await ana.GoAsync("/curing");
        await Expect(ana.Page.Locator("h1")).ToBeFocusedAsync();
        await ana.Page.StartAtTopAsync();
        await ana.Page.Keyboard.PressAsync("Tab");
        await Expect(ana.Page.Link("To the page")).ToBeFocusedAsync();
        await ana.Page.Keyboard.PressAsync("Enter");
        await ana.Page.Keyboard.PressAsync("Tab");
        Assert.True(await ana.Page.EvaluateAsync<bool>("document.querySelector('main').contains(document.activeElement)"));
    });

    private static bool Matches(string template, string path)
    {
        var pattern = Parameters().Replace(template, m => m.Groups[1].Value switch
        {
            ":guid" => "[0-9a-fA-F-]{36}", ":int" => "[0-9]+", _ => "(?!new$|plan$)[^/]+",
        });
        return Regex.IsMatch(path, $"^{pattern}$");
    }

    [GeneratedRegex("<a[^>]* href=\"(/[^\"]*)\"")]
    private static partial Regex Links();

    [GeneratedRegex("\\{[A-Za-z]+(:[a-z]+)?\\}")]
    private static partial Regex Parameters();

    [GeneratedRegex("/find\\?q=P-1$|/storeroom/lots/P-1$")]
    private static partial Regex FindOrLot();
}
