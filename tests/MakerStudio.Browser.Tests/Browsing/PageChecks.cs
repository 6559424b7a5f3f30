using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace MakerStudio.Browser.Tests.Browsing;

/// <summary>What every page is held to.</summary>
internal static class PageChecks
{
    /// <summary>Sub-pixel widths are rounded up by the browser.</summary>
    private const int RoundingPixels = 1;

    /// <summary>The browser also stops at what scrolls.</summary>
    private const int Spare = 20;

    /// <summary>Waits until the page answers to clicks: until its circuit has taken over from what the server drew. Plain pages have none.</summary>
    public static async Task ReadyAsync(this IPage page)
    {
        await page.WaitForLoadStateAsync(LoadState.Load);
        await Assertions.Expect(page.Locator("main[data-live=no]")).ToHaveCountAsync(0);
    }

    public static async Task HasOneH1Async(this IPage page) => await Assertions.Expect(page.Locator("h1:visible")).ToHaveCountAsync(1);

    /// <summary>Measures at each width and names what sticks out; leaves the page as wide as it was.</summary>
    public static async Task<IReadOnlyList<string>> SidewaysAsync(this IPage page)
    {
        var was = page.ViewportSize!;
        var found = new List<string>();
        foreach (var width in Device.Widths)
        {
            await page.SetViewportSizeAsync(width, was.Height);
            var over = await page.EvaluateAsync<string?>("""
                rounding => {
                  const root = document.documentElement, wide = root.clientWidth + rounding;
                  if (root.scrollWidth <= wide) return null;
                  const out = [...document.body.querySelectorAll('*')].filter(e => e.getBoundingClientRect().right > wide);
                  const names = out.slice(0, 5).map(e => `${e.tagName.toLowerCase()}.${e.className?.baseVal ?? e.className}`);
                  return `${root.scrollWidth} px: ${names.join(', ')}`;
                }
                """, RoundingPixels);
            if (over is not null)
            {
                found.Add($"{page.Url} at {width}: {over}");
            }
        }

        await page.SetViewportSizeAsync(was.Width, was.Height);
        return found;
    }

    /// <summary>Serious and critical findings of axe, one line each.</summary>
    public static async Task<IReadOnlyList<string>> SeriousAsync(this IPage page)
    {
        return Lines(page, await page.RunAxe(new AxeRunOptions { ResultTypes = [ResultType.Violations] }));
    }

    /// <summary>Only what another theme can change: contrast.</summary>
    public static async Task<IReadOnlyList<string>> PaleAsync(this IPage page) =>
        Lines(page, await page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "rule", Values = ["color-contrast"] } }));

    /// <summary>
    /// Presses Tab through the page from its start and names the controls that never got the focus. Of a group of radio
    /// buttons one is enough: the arrow keys do the rest.
    /// </summary>
    public static async Task<IReadOnlyList<string>> OutOfReachAsync(this IPage page)
    {
        var count = await page.EvaluateAsync<int>("""
            () => {
              const seen = e => e.checkVisibility({ visibilityProperty: true }) && !e.closest('[inert], [popover]:not(:popover-open), dialog:not([open])');
              const controls = [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]')]
                .filter(e => seen(e) && !e.disabled && e.type !== 'hidden' && e.tabIndex >= 0);
              window.unreached = new Set(controls);
              document.addEventListener('focusin', e => {
                window.unreached.delete(e.target);
                if (e.target.type === 'radio') for (const r of [...window.unreached].filter(r => r.name === e.target.name)) window.unreached.delete(r);
              });
              return controls.length;
            }
            """);
        await page.StartAtTopAsync();
        for (var press = 0; press < count + Spare && await page.EvaluateAsync<int>("window.unreached.size") > 0; press++)
        {
            await page.Keyboard.PressAsync("Tab");
        }

        return await page.EvaluateAsync<string[]>("[...window.unreached].map(e => `out of reach of Tab: ${e.outerHTML.slice(0, 160)}`)");
    }

    /// <summary>Puts the focus before everything on the page, wherever it was.</summary>
    public static Task StartAtTopAsync(this IPage page) => page.EvaluateAsync("""
        () => {
          document.body.tabIndex = -1;
          document.body.focus();
          document.body.removeAttribute('tabindex');
        }
        """);

    private static IReadOnlyList<string> Lines(IPage page, AxeResult result) =>
        [.. result.Violations.Where(v => v.Impact is "serious" or "critical").SelectMany(v => v.Nodes.Select(n =>
            $"{page.Url}: {v.Id} ({v.Impact}): {n.Html} | {string.Join("; ", n.Any.Concat(n.All).Concat(n.None).Select(c => c.Message))}"))];
}
