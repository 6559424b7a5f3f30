using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace MakerStudio.Browser.Tests.Browsing;

/// <summary>Somebody with a browser of their own. Whatever the browser complains about is a fault of the page.</summary>
public sealed class Visitor : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> _troubles = new();
    private readonly List<Regex> _expected = [];

    private Visitor(string name, IBrowserContext context, IPage page) => (Name, Context, Page) = (name, context, page);

    public string Name { get; }
    public IBrowserContext Context { get; }
    public IPage Page { get; private set; }

    /// <summary>What the browser complained about so far and the test did not foresee.</summary>
    public IReadOnlyList<string> Troubles => [.. _troubles.Where(t => !_expected.Any(e => e.IsMatch(t)))];

    public static async Task<Visitor> ComeAsync(string name, Device device, Uri address, string? signIn = null)
    {
        var context = await (await Chromium.GetAsync()).NewContextAsync(device.Options(address, signIn));
        context.SetDefaultTimeout(Chromium.PatienceMilliseconds);
        var visitor = new Visitor(name, context, await context.NewPageAsync());
        visitor.Listen(visitor.Page);
        return visitor;
    }

    /// <summary>A trouble the test brings about itself, such as a line that is down.</summary>
    public void Expect(string troublePattern) => _expected.Add(new Regex(troublePattern));

    /// <summary>Another tab of the same browser; the first one stays open or is closed by the test.</summary>
    public async Task<IPage> NewTabAsync()
    {
        Page = await Context.NewPageAsync();
        Listen(Page);
        return Page;
    }

    /// <summary>Turns to a tab that was opened before.</summary>
    public void Return(IPage page) => Page = page;

    /// <summary>Goes to an address and waits until the page answers to clicks.</summary>
    public async Task GoAsync(string path)
    {
        await Page.GotoAsync(path);
        await Page.ReadyAsync();
    }

    public ValueTask DisposeAsync() => Context.DisposeAsync();

    private void Listen(IPage page)
    {
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                _troubles.Enqueue($"{Path(page)}: {message.Text} ({message.Location})");
            }
        };
        page.PageError += (_, error) => _troubles.Enqueue($"{Path(page)}: {error}");
        page.Response += (_, response) =>
        {
            if (response.Status >= 500)
            {
                _troubles.Enqueue($"{Path(page)}: {response.Status} from {new Uri(response.Url).AbsolutePath}");
            }
        };
    }

    private static string Path(IPage page) => Uri.TryCreate(page.Url, UriKind.Absolute, out var at) ? at.AbsolutePath : page.Url;
}
